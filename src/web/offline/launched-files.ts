import { importFile } from "../frame/importing.ts";
import { takeSharedFile } from "./take-shared-file.ts";

interface LaunchQueue {
  setConsumer(consume: (launch: { files?: readonly { getFile(): Promise<File> }[] }) => void): void;
}

/** Opens the files with which the installed planner was started, one after another. */
export function openLaunchedFiles(): void {
  if (!("launchQueue" in window)) return;
  (window.launchQueue as LaunchQueue).setConsumer(async ({ files = [] }) => {
    for (const handle of files) await importFile(await handle.getFile());
  });
}

/** Opens the file that another app shared with the installed planner. */
export async function openSharedFile(): Promise<void> {
  const file = await takeSharedFile().catch(() => undefined);
  if (file !== undefined) await importFile(file);
}

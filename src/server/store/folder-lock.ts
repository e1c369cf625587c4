import { closeSync, mkdirSync, openSync, readFileSync, renameSync, rmSync, writeSync } from "node:fs";
import { join } from "node:path";

/** Another process has the folder of the embedded database open: two at once would each see half of it. */
export class FolderTaken extends Error {}

/**
 * Takes a folder for this process alone; gives back how to let it go. The embedded database itself lets a second opener in.
 * @throws {FolderTaken} while another process has it
 */
export function lockFolder(folder: string): () => void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, "in-use");
  for (let tries = 0; ; tries++) {
    try {
      const file = openSync(path, "wx", 0o600);
      writeSync(file, holderText(process.pid));
      closeSync(file);
      return () => rmSync(path, { force: true });
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EEXIST" || tries >= 3) throw error;
      const holder = read(path);
      const pid = Number(holder.split(" ")[0]);
      if (holder !== "" && holder === holderText(pid)) {
        throw new FolderTaken(
          `${folder} is in use by process ${pid}. Stop that one first, or give this one a folder of its own.`,
        );
      }
      // Its process was killed. Two who find that at once: one moves the file away, the other finds none to move.
      const stale = `${path}.${process.pid}`;
      try {
        renameSync(path, stale);
        rmSync(stale, { force: true });
      } catch {}
    }
  }
}

function read(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return "";
  }
}

/** A process by its number and when it began, since numbers come round again; empty where it does not run. */
function holderText(pid: number): string {
  if (!Number.isInteger(pid) || pid <= 0) return "";
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EPERM") return "";
  }
  const [state, ...more] = read(`/proc/${pid}/stat`).split(") ").at(-1)?.split(" ") ?? [];
  // Killed, and its parent has not taken notice yet.
  if (state === "Z") return "";
  return `${pid} ${more[18] ?? ""}`;
}

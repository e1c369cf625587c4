import { type JobIssue, LARGEST_JOB_CHARS } from "../../job/index.ts";
import { HANGS_MS } from "../workers/hangs.ts";
import { KeptWorker } from "../workers/kept-worker.ts";
import type { Importer } from "./importer-worker.ts";
import type { OpenedFile } from "./opened-file.ts";
import { isShelfText } from "./shelf-file.ts";

/** Bytes of the largest shelf that is read: what a browser's text can hold, with room to spare. */
const LARGEST_SHELF_BYTES = 400_000_000;

/** A shelf that is read whole takes a hundredth of that, ms. */
const HANGS_MS_A_CHAR = 0.002;

/** Reads a file off the main thread, so that a huge or hostile one cannot freeze the page. */
export async function openJobFile(file: File): Promise<OpenedFile> {
  const isShelf = isShelfText(
    await file
      .slice(0, 200)
      .text()
      .catch(() => ""),
  );
  // One character takes at most three bytes of a file for every one that counts here.
  const mostBytes = isShelf ? LARGEST_SHELF_BYTES : LARGEST_JOB_CHARS * 3;
  if (file.size > mostBytes) {
    return refused({
      field: "(file)",
      given: `${Math.round(file.size / 1e6)} million bytes`,
      wanted: `at most ${mostBytes / (isShelf ? 1 : 3) / 1e6} million characters; split ${isShelf ? "it" : "the job"} in two`,
    });
  }
  const worker = new KeptWorker<Importer>(
    () => new Worker(new URL("./importer-worker.ts", import.meta.url), { type: "module" }),
  );
  try {
    const text = await file.text();
    return await worker.ask(
      (importer): Promise<OpenedFile> => importer.open(text),
      HANGS_MS + HANGS_MS_A_CHAR * text.length,
    );
  } catch (error) {
    return refused({
      field: "(file)",
      given: error instanceof Error ? error.message : "a file that the browser could not read",
      wanted: "a job file that this device may open",
    });
  } finally {
    worker.end();
  }
}

function refused(issue: JobIssue): OpenedFile {
  return { job: { ok: false, issues: [issue] } };
}

import { wrap } from "comlink";
import { type JobIssue, LARGEST_JOB_CHARS, type OpenedJob } from "../../job/index.ts";
import type { Importer } from "./importer-worker.ts";

/** Reads a job file off the main thread, so that a huge or hostile one cannot freeze the page. */
export async function openJobFile(file: File): Promise<OpenedJob> {
  // One character takes at most three bytes of a file for every one that counts here.
  if (file.size > LARGEST_JOB_CHARS * 3) {
    return refused({
      field: "(file)",
      given: `${Math.round(file.size / 1e6)} million bytes`,
      wanted: `at most ${LARGEST_JOB_CHARS / 1e6} million characters; split the job in two`,
    });
  }
  const worker = new Worker(new URL("./importer-worker.ts", import.meta.url), { type: "module" });
  try {
    return await wrap<Importer>(worker).open(await file.text());
  } catch (error) {
    return refused({
      field: "(file)",
      given: error instanceof Error ? error.message : "a file that the browser could not read",
      wanted: "a job file that this device may open",
    });
  } finally {
    worker.terminate();
  }
}

function refused(issue: JobIssue): OpenedJob {
  return { ok: false, issues: [issue] };
}

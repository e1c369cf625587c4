import { type Job, jobText } from "../../job/index.ts";

export const JOB_FILE_ENDING = ".shadewright.json";

/** A file name from a job's name: letters and digits of any script, nothing that a file system minds. */
export function fileNameOf(name: string, ending: string): string {
  const base = name
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
  return `${base === "" ? "job" : base}${ending}`;
}

interface SavePicker {
  showSaveFilePicker(options: {
    suggestedName: string;
    types: { description: string; accept: Record<string, string[]> }[];
  }): Promise<{ createWritable(): Promise<{ write(data: string): Promise<void>; close(): Promise<void> }> }>;
}

/** Saves a job as a file: where the browser can, at a place of the maker's choice, else as a download. */
export async function saveJobFile(job: Job): Promise<"saved" | "downloaded" | "left"> {
  const name = fileNameOf(job.name, JOB_FILE_ENDING);
  if ("showSaveFilePicker" in window) {
    try {
      const handle = await (window as unknown as SavePicker).showSaveFilePicker({
        suggestedName: name,
        types: [{ description: "Shadewright job", accept: { "application/json": [".json"] } }],
      });
      const file = await handle.createWritable();
      await file.write(jobText(job));
      await file.close();
      return "saved";
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return "left";
    }
  }
  download(new Blob([jobText(job)], { type: "application/json" }), name);
  return "downloaded";
}

/** Hands a file to the browser's downloads. */
export function download(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The browser reads the address after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

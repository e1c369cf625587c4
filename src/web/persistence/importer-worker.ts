import "../no-code-from-text.ts";
import { expose } from "comlink";
import { openJobText } from "../../job/index.ts";
import { withLife } from "../workers/worker-life.ts";
import type { OpenedFile } from "./opened-file.ts";
import { isShelfText, openShelfText } from "./shelf-file.ts";

/** The file of one job, or of a whole shelf. */
const importer = {
  open: (text: string): OpenedFile =>
    isShelfText(text) ? { shelf: openShelfText(text, openJobText) } : { job: openJobText(text) },
};

export type Importer = typeof importer;

expose(withLife(importer));

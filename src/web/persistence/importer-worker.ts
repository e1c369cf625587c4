import { expose } from "comlink";
import * as z from "zod";
import { openJobText } from "../../job/index.ts";
import { withLife } from "../workers/worker-life.ts";
import type { OpenedFile } from "./opened-file.ts";
import { isShelfText, openShelfText } from "./shelf-file.ts";

// No code from text: a strict content policy forbids it.
z.config({ jitless: true });

/** The file of one job, or of a whole shelf. */
const importer = {
  open: (text: string): OpenedFile =>
    isShelfText(text) ? { shelf: openShelfText(text, openJobText) } : { job: openJobText(text) },
};

export type Importer = typeof importer;

expose(withLife(importer));

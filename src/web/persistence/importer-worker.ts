import { expose } from "comlink";
import * as z from "zod";
import { openJobText } from "../../job/index.ts";

// No code from text: a strict content policy forbids it.
z.config({ jitless: true });

const importer = { open: openJobText };

export type Importer = typeof importer;

expose(importer);

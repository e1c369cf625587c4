import type { OpenedJob } from "../../job/index.ts";
import type { OpenedShelf } from "./shelf-file.ts";

/** A job's file or a whole shelf's, as it was read. */
export type OpenedFile = { job: OpenedJob } | { shelf: OpenedShelf };

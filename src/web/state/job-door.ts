import { newJob, newWindow, openJob, withPartsFrom } from "../../job/index.ts";
import { isWithinFields } from "../../plan/index.ts";

/**
 * The schema's doors, apart from everything else: the validator is large, and the first screen stands without it.
 * Import this file on demand where nothing else needs the schema yet.
 */
export { isWithinFields, newJob, newWindow, openJob, withPartsFrom };

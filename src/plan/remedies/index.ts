export { proveRemedies } from "./prove-remedies.ts";
export { RemedyTrial } from "./remedy-trial.ts";
export { isWithinFields } from "./within-fields.ts";

export { proveRemedies } from "./prove-remedies.ts";
export { RemedyTrial } from "./remedy-trial.ts";

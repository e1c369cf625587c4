import { immutableJSONPatch, type JSONPatchDocument, type JSONValue } from "immutable-json-patch";
import type { PatchOperation } from "../figures/index.ts";
import type { Job } from "../job/index.ts";

/** The job with a change made that keeps to its schema. */
export function patched(job: Job, patch: readonly PatchOperation[]): Job {
  return immutableJSONPatch(job as unknown as JSONValue, patch as JSONPatchDocument) as unknown as Job;
}

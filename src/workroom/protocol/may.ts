import { SHOP_ID } from "../shop-id/index.ts";
import type { PathStep } from "./operation.ts";
import type { PersonRole } from "./people.ts";

/** What a role can be allowed to do. */
export type Deed =
  | "read-jobs"
  | "make-jobs"
  | "change-jobs"
  | "bin-jobs"
  | "change-shop"
  | "change-work"
  | "offer"
  | "ask-for-papers"
  | "run-workroom";

const DEEDS: Record<PersonRole, readonly Deed[]> = {
  owner: [
    "read-jobs",
    "make-jobs",
    "change-jobs",
    "bin-jobs",
    "change-shop",
    "change-work",
    "offer",
    "ask-for-papers",
    "run-workroom",
  ],
  maker: [
    "read-jobs",
    "make-jobs",
    "change-jobs",
    "bin-jobs",
    "change-shop",
    "change-work",
    "offer",
    "ask-for-papers",
  ],
  fitter: ["read-jobs", "change-jobs", "change-work", "ask-for-papers"],
  viewer: ["read-jobs"],
  class: ["read-jobs", "make-jobs", "change-jobs", "bin-jobs"],
};

export function may(role: PersonRole, deed: Deed): boolean {
  return DEEDS[role].includes(deed);
}

/** What a fitter writes: measures at the window, notes, ticks. */
const FITTERS_FIELDS: readonly string[] = ["opening", "ticks"];

/**
 * Whether a role may change this field of a job.
 * @param isOwn whether they made the job themselves
 */
export function mayChangeField(
  role: PersonRole,
  jobId: string,
  path: readonly PathStep[],
  isOwn: boolean,
): boolean {
  if (jobId === SHOP_ID) return may(role, "change-shop");
  if (role === "class") return isOwn;
  if (role !== "fitter") return may(role, "change-jobs");
  const [rooms, , windows, , field] = path;
  if (rooms !== "rooms" || windows !== "windows" || typeof field !== "string") return false;
  return FITTERS_FIELDS.includes(field) || (field === "shade" && path.length === 6 && path[5] === "note");
}

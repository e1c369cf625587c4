import type { JobIssue } from "../../job/index.ts";
import type { Json, Operation } from "../../workroom/protocol/index.ts";
import { encodeAgain, ownPicture, PictureUnfit } from "./encode-again.ts";

const PICTURE = /^data:image\//;
/** Pictures of one request: each takes some tenths of a second. */
const MOST_PICTURES = 60;

/** A document with every picture in it encoded anew, or what is wrong with them. */
export async function withOwnPictures(document: unknown): Promise<{ document: unknown; issues: JobIssue[] }> {
  const issues: JobIssue[] = [];
  const encode = encoder();
  const own = await mapped(document, "", (url, field) => encode(url, field, (issue) => issues.push(issue)));
  return { document: own, issues };
}

/** Operations with their pictures encoded anew; `unfit` tells what is wrong with which. */
export async function operationsWithOwnPictures(
  operations: readonly Operation[],
): Promise<{ operations: Operation[]; unfit: Map<string, JobIssue[]> }> {
  const unfit = new Map<string, JobIssue[]>();
  const encode = encoder();
  const made: Operation[] = [];
  for (const operation of operations) {
    const changes: Operation["changes"] = [];
    for (const change of operation.changes) {
      const field = change.path.map((step) => (typeof step === "string" ? step : step.id)).join(".");
      const to = await mapped(change.to, field, (url, at) =>
        encode(url, at, (issue) => unfit.set(operation.id, [...(unfit.get(operation.id) ?? []), issue])),
      );
      // What a device has just sent it still holds as it was: it means what became of it.
      const from = await mapped(change.from, field, async (url) => ownPicture(url));
      const isSame = to === change.to && from === change.from;
      changes.push(isSame ? change : changeOf(change.path, from as Json, to as Json));
    }
    made.push({ ...operation, changes });
  }
  return { operations: made, unfit };
}

function changeOf(
  path: Operation["changes"][number]["path"],
  from: Json | undefined,
  to: Json | undefined,
): Operation["changes"][number] {
  return { path, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

type WhyNot = Omit<JobIssue, "field">;

const TOO_MANY: WhyNot = { given: "a picture more", wanted: `at most ${MOST_PICTURES} pictures at once` };

/** Encodes the pictures of one request, no more than it may have: one that is unfit stays as it was, and is told. */
function encoder(): (url: string, field: string, tell: (issue: JobIssue) => void) => Promise<string> {
  let left = MOST_PICTURES;
  return async (url, field, tell) => {
    left--;
    const made = left < 0 ? TOO_MANY : await ownOrWhyNot(url);
    if (typeof made === "string") return made;
    tell({ ...made, field });
    return url;
  };
}

async function ownOrWhyNot(url: string): Promise<string | WhyNot> {
  try {
    return await encodeAgain(url);
  } catch (error) {
    if (!(error instanceof PictureUnfit)) throw error;
    return { given: `${url.slice(0, 30)}…`, wanted: error.message };
  }
}

/** A value with every picture in it put through `change`. What has none stays the same object. */
async function mapped(
  value: unknown,
  field: string,
  change: (url: string, field: string) => Promise<string>,
): Promise<unknown> {
  if (typeof value === "string") return PICTURE.test(value) ? await change(value, field) : value;
  if (typeof value !== "object" || value === null) return value;
  let after: Record<string, unknown> | undefined;
  for (const [key, inner] of Object.entries(value)) {
    const made = await mapped(inner, field === "" ? key : `${field}.${key}`, change);
    if (made === inner) continue;
    after ??= (Array.isArray(value) ? [...value] : { ...value }) as Record<string, unknown>;
    after[key] = made;
  }
  return after ?? value;
}

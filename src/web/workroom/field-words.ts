import type { Job } from "../../job/index.ts";
import { lengthText } from "../../units/index.ts";
import { ORDER } from "../../workroom/merge/index.ts";
import type { Conflict, Json } from "../../workroom/protocol/index.ts";

type Path = Conflict["path"];

/**
 * Where a field of a job is, in words: names of what it belongs to, then its own.
 * @param value what stands or stood there: what was taken away has its name from it
 */
export function fieldWords(job: Job, path: Path, value?: Json): string {
  const words: string[] = [];
  let here: unknown = job;
  for (const [at, step] of path.entries()) {
    if (typeof step === "string") {
      here = (here as Record<string, unknown> | undefined)?.[step];
      if (at === path.length - 1) words.push(step === ORDER ? "order" : plainWords(step));
      else if (!CONTAINERS.has(step) && typeof path[at + 1] === "string") words.push(plainWords(step));
    } else {
      here = Array.isArray(here) ? here.find((item) => item === step.id || item?.id === step.id) : undefined;
      words.push(nameOf(here) ?? (at === path.length - 1 ? nameOf(value) : undefined) ?? step.id);
    }
  }
  return words.join(" · ");
}

/** Steps that say nothing to who reads. */
const CONTAINERS = new Set(["rooms", "windows", "opening", "shade", "making", "hardware", "stock"]);

/** `sillAboveFloorMm` as `sill above floor`. */
function plainWords(key: string): string {
  return key
    .replace(/(?:Mm|Share|Min|N|G|Gsm)$/, "")
    .replace(/([a-z])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`);
}

function nameOf(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const { name } = value as { name?: unknown };
  return typeof name === "string" ? name : undefined;
}

/** A value as it is shown beside another: lengths on the job's ruler, things by their names. */
export function valueWords(job: Job, path: Path, value: Json | undefined): string {
  if (value === undefined) return "taken away";
  if (value === null) return "none";
  const last = path.findLast((step) => typeof step === "string");
  if (typeof value === "string" && value.startsWith("data:image/")) return "a picture";
  const isLength = last?.endsWith("Mm") === true;
  if (typeof value === "number") return isLength ? lengthText(value, job.units) : String(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value === "" ? "empty" : shortened(value);
  if (Array.isArray(value)) {
    return shortened(value.map((item) => valueWords(job, path, item)).join(", ")) || "none";
  }
  return (
    nameOf(value) ??
    Object.entries(value)
      .map(([key, inner]) => `${plainWords(key)} ${valueWords(job, [key], inner)}`)
      .join(", ")
  );
}

const MOST_SHOWN = 200;

function shortened(text: string): string {
  return text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text;
}

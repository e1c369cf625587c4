import type { Finding, Remedy } from "../figures/index.ts";
import { type Job, PLACE_NAMES, PLACES, PURPOSE_NAMES, PURPOSES } from "../job/index.ts";
import { cite } from "../sources/index.ts";

/** Place and purpose decide whose rules are read: asked once for the job, every answer ready to press. */
export function askPlace({ place, purpose }: Pick<Job, "place" | "purpose">): Finding[] {
  return [
    ...(place === undefined ? [PLACE_UNKNOWN] : []),
    ...(purpose === undefined ? [PURPOSE_UNKNOWN] : []),
  ];
}

function choices<C extends string>(path: string, values: readonly C[], names: Record<C, string>): Remedy[] {
  return values.map((value) => ({ label: names[value], patch: [{ op: "add", path, value }] }));
}

const PLACE_UNKNOWN: Finding = {
  id: "safety.place-unknown",
  severity: "unproven",
  stage: "safety",
  path: "/place",
  text: "Where will these shades hang? The rules on cords differ from place to place, and none can be read until it is said.",
  cite: cite("cord-rules-at-a-glance"),
  remedies: choices("/place", PLACES, PLACE_NAMES),
};

const PURPOSE_UNKNOWN: Finding = {
  id: "safety.purpose-unknown",
  severity: "unproven",
  stage: "safety",
  path: "/purpose",
  text: "Whom are these shades for? What is sold, given away or hung in a public building is held to rules that your own home is not. The hazard is the same everywhere.",
  cite: cite("cord-rules-at-a-glance"),
  remedies: choices("/purpose", PURPOSES, PURPOSE_NAMES),
};

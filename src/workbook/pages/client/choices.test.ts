import { expect, test } from "vitest";
import { jobWith } from "../../../../test/job-with.ts";
import { LIFT_KINDS, type LiftKind, PLACES, type Place, PURPOSES, type Purpose } from "../../../job/index.ts";
import { plan } from "../../../plan/index.ts";
import { childSafetyChoices } from "./choices.ts";

/** As a client says it. */
const WHERE: Record<Place, string> = {
  us: "the United States",
  ca: "Canada",
  eu: "the European Union",
  gb: "Great Britain",
  ni: "Northern Ireland",
  ie: "Ireland",
  eea: "Iceland, Liechtenstein, Norway or Switzerland",
  au: "Australia",
  nz: "New Zealand",
  jp: "Japan",
  kr: "Korea",
  elsewhere: "a place whose rules were not read",
};
const WHY: Record<Purpose, string> = {
  "own-home": "for your own home",
  gift: "as a gift",
  "for-sale": "for sale",
  "public-building": "for a public building",
};
/** Whether something hangs at the front that a child can pull. */
const HANGS: Record<LiftKind, boolean> = {
  "cord-lock": true,
  cleat: true,
  "tube-loop": true,
  spring: false,
  "tube-wand": false,
  motor: false,
};

function planned(kinds: readonly LiftKind[], place?: Place, purpose?: Purpose) {
  const job = jobWith({}, { ...(place && { place }), ...(purpose && { purpose }) });
  const [room] = job.rooms;
  const [window] = room?.windows ?? [];
  if (room === undefined || window === undefined) throw new Error("invalid test job: no window");
  const windows = kinds.map((kind, i) => ({
    ...window,
    id: `w${i}`,
    name: `Window ${i}`,
    shade: { ...window.shade, making: { lift: { kind } } },
  }));
  return plan({ ...job, rooms: [{ ...room, windows }] });
}

const everywhere = PLACES.flatMap((place) => PURPOSES.map((purpose) => [place, purpose] as const));

test.each(everywhere)("%s, %s: place and purpose are those of the plan, in plain words", (place, purpose) => {
  const made = planned(["spring"], place, purpose);
  expect(childSafetyChoices(made, made.shades)[0]).toBe(`Planned for ${WHERE[place]}, ${WHY[purpose]}.`);
});

test("what was not said is said to be so", () => {
  const made = planned(["spring"]);
  expect(childSafetyChoices(made, made.shades)[0]).toBe(
    "Planned for a place that was not said, for whom was not said.",
  );
});

test.each(LIFT_KINDS)(
  "%s: what hangs at the front, and whether a rule fails, are told as the plan has them",
  (kind) => {
    const made = planned([kind], "ca", "for-sale");
    const [, front = "", rules = ""] = childSafetyChoices(made, made.shades);
    expect(/^The shade has a cord or a loop that hangs at the front/.test(front)).toBe(HANGS[kind]);
    expect(front.startsWith("No cord hangs at the front.")).toBe(!HANGS[kind]);
    const fails = made.shades[0]?.safety.results.some(({ outcome }) => outcome === "failed");
    expect(/some failed for this shade: ask/.test(rules)).toBe(fails);
    expect(/^None of the rules .* was shown to fail; that proves nothing/.test(rules)).toBe(!fails);
    expect(/ask for a lift without free cords/.test(rules)).toBe(HANGS[kind]);
  },
);

test("of several shades those with cords are named", () => {
  const made = planned(["spring", "cord-lock", "motor", "tube-loop"], "us", "own-home");
  const [, front = "", rules = ""] = childSafetyChoices(made, made.shades);
  expect(front).toMatch(/^Window 1 and Window 3 have a cord or a loop that hangs at the front/);
  const failing = made.shades.filter(({ safety }) =>
    safety.results.some(({ outcome }) => outcome === "failed"),
  );
  for (const { windowName } of made.shades) {
    const isNamed = rules.includes(windowName) || rules.includes("every shade");
    expect(isNamed, windowName).toBe(failing.some((shade) => shade.windowName === windowName));
  }
});

import { describe, expect, test } from "vitest";
import { drawAction, type PlacedText, place } from "../../src/drawing/index.ts";
import { LIFT_KINDS, STYLES } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import type { StepAction } from "../../src/shade-plan/index.ts";
import { lengthText, type UnitSystem } from "../../src/units/index.ts";
import { jobWith } from "../job-with.ts";

const SYSTEMS: readonly UnitSystem[] = ["imperial", "metric"];
/** Where an action is drawn, mm: beside a step on paper, and on the bench's screen. */
const PLACES = [
  { maxWidthMm: 54, maxHeightMm: 35 },
  { maxWidthMm: 110, maxHeightMm: 90 },
];

function planned(system: UnitSystem, shade: object) {
  const job = jobWith(
    {
      id: "east",
      name: "East window",
      opening: { widthsMm: [1100], heightsMm: [1500], sillAboveFloorMm: 800, recessDepthMm: 120 },
      shade,
    } as Parameters<typeof jobWith>[0],
    { units: { system, ruler: system === "imperial" ? "1/8 in" : "1 mm" } },
  );
  const made = plan(job);
  return { units: made.units, steps: made.shades[0]?.steps ?? [] };
}

const CASES = [
  ...STYLES.map((style) => ({ style, making: { lift: { kind: "cord-lock" } } })),
  ...LIFT_KINDS.map((kind) => ({
    style: "flat",
    mount: "inside",
    making: { hems: { corner: "mitred" }, lift: { kind, controlSide: "left", rearCords: "enclosed" } },
  })),
  {
    style: "ribbed",
    mount: "outside",
    making: { board: { attachment: "hook-and-loop" }, lift: { kind: "cord-lock" } },
  },
];

/** Boxes of words, mm of paper: lower-case height above the line, a little below it. */
function overlapping(texts: readonly PlacedText[]): [string, string][] {
  const boxes = texts.map(({ at, text, sizeMm, anchor, widthMm }) => {
    const left = at[0] - (anchor === "middle" ? widthMm / 2 : anchor === "end" ? widthMm : 0);
    return {
      text,
      left: left + 0.4,
      right: left + widthMm - 0.4,
      top: at[1] - 0.62 * sizeMm,
      bottom: at[1] + 0.1 * sizeMm,
    };
  });
  return boxes.flatMap((one, i) =>
    boxes
      .slice(i + 1)
      .filter(
        (other) =>
          one.left < other.right &&
          other.left < one.right &&
          one.top < other.bottom &&
          other.top < one.bottom,
      )
      .map((other): [string, string] => [one.text, other.text]),
  );
}

/** Lengths that must be read in the drawing itself. */
function lengthsShown(action: StepAction): number[] {
  switch (action.kind) {
    case "measure-opening":
      return [action.widthMm, action.heightMm];
    case "press-hem":
      return [action.turnMm];
    case "mitre-corner":
      return [action.aboveMm, action.inMm];
    case "mark-rows":
      return action.fromHemMm.slice(0, 1);
    case "baste-layers":
      return [action.everyMm];
    case "slide-in":
      return action.lengthMm === undefined ? [] : [action.lengthMm];
    case "cover-board":
      return [action.widthMm, action.lengthMm];
    case "fix-shade":
      return [action.beyondMm];
    case "set-eye":
      return [action.fromWallMm];
    case "screw-lock":
      return [action.fromEndMm];
    case "wind-cleat":
      return [action.aboveFloorMm];
    case "level-hem":
      return [action.withinMm];
    case "join-tails":
      return [action.belowMm];
    case "dress-folds":
      return [action.raisedMm];
    default:
      return [];
  }
}

describe.each(SYSTEMS)("in %s", (system) => {
  test.each(CASES)(
    "every action of $style over $making.lift.kind shows its figures, no word on another",
    (shade) => {
      const { units, steps } = planned(system, shade);
      const drawn = steps.flatMap(({ action }) => (action === undefined ? [] : [action]));
      expect(drawn.length).toBeGreaterThan(4);
      for (const action of drawn) {
        for (const room of PLACES) {
          const placed = place(drawAction(action, units), room);
          expect(JSON.stringify(placed), action.kind).not.toMatch(/null|NaN/);
          const texts = placed.items.filter((item) => item.kind === "text");
          const words = texts.map(({ text }) => text).join(" | ");
          for (const mm of lengthsShown(action)) expect(words, action.kind).toContain(lengthText(mm, units));
          expect(overlapping(texts), `${action.kind}: ${words}`).toEqual([]);
        }
      }
    },
  );

  test("a lock is threaded in the order of the plan, each cord from its own end, and mirrored for the other hand", () => {
    for (const controlSide of ["left", "right"]) {
      const { steps } = planned(system, {
        style: "flat",
        making: { lift: { kind: "cord-lock", controlSide } },
      });
      const thread = steps.find(({ id }) => id === "string-thread")?.action;
      const screw = steps.find(({ id }) => id === "string-screw-lock")?.action;
      if (thread?.kind !== "thread-lock" || screw?.kind !== "screw-lock") throw new Error("no lock");
      expect(screw.facing).toBe(controlSide);
      const drawing = drawAction(thread, {
        system,
        ruler: system === "imperial" ? "1/8 in" : "1 mm",
      } as never);
      for (const { number, from } of thread.cords) {
        const path = drawing.primitives.find((one) => one.kind === "polyline" && one.cord === number);
        if (path?.kind !== "polyline") throw new Error(`cord ${number} is not drawn`);
        const [start, end] = [path.points[0]?.[0] ?? 0, path.points.at(-1)?.[0] ?? 0];
        expect(Math.sign(end - start)).toBe(from === "left" ? 1 : -1);
      }
    }
  });
});

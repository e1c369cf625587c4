import { figureRule, figureRuleOf, type Worked } from "../../figures/index.ts";
import { turnsBetween, type Winding, woundRadiusMm } from "../../mechanics/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { FIT_SLACK } from "../../units/index.ts";
import type { TubeInput } from "../lift-input.ts";

/** Wraps that stay on a spool with the shade lowered, so that its knot carries nothing. */
const WRAPS_LEFT = sourced(3, "count", cite("common-practice", "two or three wraps stay on a drum"));

const woundCite = cite("geometry", "Archimedean spiral that grows by one cord for each layer");

/** How the cord lies on its spool, lowered and raised. All spools of a shade are alike and turn together. */
export interface Wound {
  winding: Winding;
  wrapsLeft: number;
  wrapsMm: number;
  loweredMm: number;
  raisedMm: number;
  turns: number;
}

const ABREAST = figureRule({
  id: "lift.wraps-side-by-side",
  label: "Wraps side by side on a spool",
  symbol: "s",
  unit: "count",
  formula: "max(1, floor(b / d))",
  inputs: { b: ["mm", "clear width between the flanges", "lift/tube"], d: ["mm", "cord", "lift/cord"] },
  cite: cite("geometry"),
  compute: ({ b, d }) => wrapsAbreast(b, d),
});

const LEFT_ON = figureRule({
  id: "rig.wraps-left",
  label: "Cord that stays on a spool, shade lowered",
  symbol: "w",
  unit: "mm",
  formula: "m·π·(c + d)",
  inputs: {
    m: ["count", "wraps that stay"],
    c: ["mm", "core of the spool", "lift/tube"],
    d: ["mm", "cord", "lift/cord"],
  },
  cite: WRAPS_LEFT.cite,
  compute: ({ c, d }) => wrapsLeftMm(c, d),
});

const RADIUS = figureRuleOf<{ state: "lowered" | "raised" }>()({
  id: ({ state }) => `lift.wound-${state}`,
  label: ({ state }) => `Axis to the cord on its spool, ${state}`,
  symbol: "ρ",
  unit: "mm",
  formula: "sqrt(((c + d) / 2)^2 + d·l / (π·s))",
  inputs: ({ state }) => ({
    c: ["mm", "core of the spool", "lift/tube"],
    d: ["mm", "cord", "lift/cord"],
    l: [
      "mm",
      `cord on the spool, ${state}`,
      "figure:rig.wraps-left",
      ...(state === "raised" ? ["figure:shape.travel"] : []),
    ],
    s: ["count", "wraps side by side", "figure:lift.wraps-side-by-side"],
  }),
  cite: woundCite,
  compute: ({ c, d, l, s }) => woundRadiusMm({ coreRadiusMm: c / 2, cordDiameterMm: d, sideBySide: s }, l),
});

const TURNS = figureRule({
  id: "lift.turns",
  label: "Turns of the tube from lowered to raised",
  symbol: "N",
  unit: "count",
  formula: "(R − r)·s / d",
  inputs: {
    R: ["mm", "axis to cord, raised", "figure:lift.wound-raised"],
    r: ["mm", "axis to cord, lowered", "figure:lift.wound-lowered"],
    s: ["count", "wraps side by side", "figure:lift.wraps-side-by-side"],
    d: ["mm", "cord", "lift/cord"],
  },
  cite: woundCite,
  compute: ({ R, r, s, d }) => turnsBetween({ cordDiameterMm: d, sideBySide: s }, r, R),
});

export function windCords({
  shade,
  grid,
  liftParts: { spool },
}: Pick<TubeInput, "shade" | "grid" | "liftParts">): Worked<Wound> {
  const d = shade.cord.diameterMm;
  // Where nobody measured the spool, the cord is taken to wind upon itself: then it grows fastest.
  const abreast = spool.windMm === undefined ? undefined : ABREAST.figure({ b: spool.windMm, d });
  const s = abreast?.value ?? 1;
  const wraps = LEFT_ON.figure({ m: WRAPS_LEFT.value, c: spool.coreMm, d });
  const at = (state: "lowered" | "raised", l: number) =>
    RADIUS.figure({ c: spool.coreMm, d, l, s }, { state });
  const lowered = at("lowered", wraps.value);
  const raised = at("raised", wraps.value + Math.max(0, grid.travelMm));
  const turns = TURNS.figure({ R: raised.value, r: lowered.value, s, d });
  return {
    values: {
      winding: { coreRadiusMm: spool.coreMm / 2, cordDiameterMm: d, sideBySide: s },
      wrapsLeft: WRAPS_LEFT.value,
      wrapsMm: wraps.value,
      loweredMm: lowered.value,
      raisedMm: raised.value,
      turns: turns.value,
    },
    workings: [...(abreast === undefined ? [] : [abreast]), wraps, lowered, raised, turns],
  };
}

/** Cord that stays on a spool of this core, mm. */
export function wrapsLeftMm(coreMm: number, cordDiameterMm: number): number {
  return WRAPS_LEFT.value * Math.PI * (coreMm + cordDiameterMm);
}

/** So many wraps lie side by side between the flanges. */
export function wrapsAbreast(windMm: number, cordDiameterMm: number): number {
  return Math.max(1, Math.floor(windMm / cordDiameterMm + FIT_SLACK));
}

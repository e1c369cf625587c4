import type { WorkingBook } from "../../figures/index.ts";
import { turnsBetween, type Winding, woundRadiusMm } from "../../mechanics/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { FIT_SLACK } from "../../units/index.ts";
import type { TubeInput } from "./tube-input.ts";

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

export function windCords({ resolved, grid, liftParts }: TubeInput, book: WorkingBook): Wound {
  const cordDiameterMm = resolved.cord.diameterMm;
  const winding: Winding = {
    coreRadiusMm: liftParts.spool.coreMm / 2,
    cordDiameterMm,
    sideBySide: sideBySide(liftParts.spool.windMm, cordDiameterMm, book),
  };
  const wrapsMm = book.figure("rig.wraps-left", {
    label: "Cord that stays on a spool, shade lowered",
    symbol: "w",
    unit: "mm",
    formula: "m·π·(c + d)",
    given: {
      m: [WRAPS_LEFT.value, "count", "wraps that stay"],
      c: [liftParts.spool.coreMm, "mm", "core of the spool"],
      d: [cordDiameterMm, "mm", "cord"],
    },
    cite: WRAPS_LEFT.cite,
    compute: ({ c, d }) => wrapsLeftMm(c, d),
  });
  const travelMm = Math.max(0, grid.travelMm);
  const loweredMm = radius("lift.wound-lowered", "lowered", winding, wrapsMm, book);
  const raisedMm = radius("lift.wound-raised", "raised", winding, wrapsMm + travelMm, book);
  const turns = book.figure("lift.turns", {
    label: "Turns of the tube from lowered to raised",
    symbol: "N",
    unit: "count",
    formula: "(R − r)·s / d",
    given: {
      R: [raisedMm, "mm", "axis to cord, raised"],
      r: [loweredMm, "mm", "axis to cord, lowered"],
      s: [winding.sideBySide, "count", "wraps side by side"],
      d: [cordDiameterMm, "mm", "cord"],
    },
    cite: woundCite,
    compute: ({ R, r }) => turnsBetween(winding, r, R),
  });
  return { winding, wrapsLeft: WRAPS_LEFT.value, wrapsMm, loweredMm, raisedMm, turns };
}

/** Cord that stays on a spool of this core, mm. */
export function wrapsLeftMm(coreMm: number, cordDiameterMm: number): number {
  return WRAPS_LEFT.value * Math.PI * (coreMm + cordDiameterMm);
}

/** So many wraps lie side by side between the flanges. */
export function wrapsAbreast(windMm: number, cordDiameterMm: number): number {
  return Math.max(1, Math.floor(windMm / cordDiameterMm + FIT_SLACK));
}

/** Where nobody measured the spool, the cord is taken to wind upon itself: then it grows fastest. */
function sideBySide(windMm: number | undefined, cordDiameterMm: number, book: WorkingBook): number {
  if (windMm === undefined) return 1;
  return book.figure("lift.wraps-side-by-side", {
    label: "Wraps side by side on a spool",
    symbol: "s",
    unit: "count",
    formula: "max(1, floor(b / d))",
    given: {
      b: [windMm, "mm", "clear width between the flanges"],
      d: [cordDiameterMm, "mm", "cord"],
    },
    cite: cite("geometry"),
    compute: ({ b, d }) => wrapsAbreast(b, d),
  });
}

function radius(id: string, state: string, winding: Winding, woundMm: number, book: WorkingBook): number {
  return book.figure(id, {
    label: `Axis to the cord on its spool, ${state}`,
    symbol: "ρ",
    unit: "mm",
    formula: "sqrt(((c + d) / 2)^2 + d·l / (π·s))",
    given: {
      c: [2 * winding.coreRadiusMm, "mm", "core of the spool"],
      d: [winding.cordDiameterMm, "mm", "cord"],
      l: [woundMm, "mm", `cord on the spool, ${state}`],
      s: [winding.sideBySide, "count", "wraps side by side"],
    },
    cite: woundCite,
    compute: ({ l }) => woundRadiusMm(winding, l),
  });
}

import type { Making, MakingGroup, Window } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";

/** What decides whether a setting has anything to do with the shade as it is. */
interface Chosen {
  plan: ShadePlan;
  window: Window;
  workshop: Making | undefined;
}

type Test = (chosen: Chosen) => boolean;

/** What a shade's own making, or the workshop's, says of a setting. */
function said(group: MakingGroup, name: string, { window, workshop }: Chosen): unknown {
  const at = (making: Making | undefined) => (making?.[group] as Record<string, unknown> | undefined)?.[name];
  return at(window.shade.making) ?? at(workshop);
}

const hasLayer =
  (layer: "lining" | "interlining" | "blackout"): Test =>
  ({ plan }) =>
    plan.cloth.layers.some((one) => one.layer === layer);
const hasInner: Test = (chosen) => hasLayer("interlining")(chosen) || hasLayer("blackout")(chosen);
const isInside: Test = ({ plan }) => plan.mount === "inside";
const isOutside: Test = ({ plan }) => plan.mount === "outside";
const showsEnds: Test = (chosen) => !isInside(chosen);
const isBanded: Test = (chosen) => (said("banding", "where", chosen) ?? "none") !== "none";
const isRibbed: Test = (chosen) =>
  chosen.plan.style === "ribbed" || (said("ribs", "kind", chosen) ?? "none") !== "none";
const standsFree: Test = (chosen) => said("pattern", "place", chosen) === "free";
const screwedInto =
  (...kinds: string[]): Test =>
  (chosen) =>
    kinds.includes(String(said("board", "substrate", chosen) ?? "unknown"));

/**
 * Settings that have nothing to do with some shades: they are not shown there unless the maker has set them. What is
 * not named here has to do with every shade. A test changes each hidden one and sees that no plan changes.
 */
const APPLIES: Partial<Record<MakingGroup, Record<string, Test>>> = {
  mount: {
    insideWidthOffMm: isInside,
    insideLengthOffMm: isInside,
    overlapSideMm: isOutside,
    overlapAboveMm: isOutside,
    overlapBelowMm: isOutside,
  },
  lining: {
    widthOverFinishedMm: hasLayer("lining"),
    lengthOverFinishedMm: hasLayer("lining"),
    squaringMm: hasLayer("lining"),
    interliningCut: hasLayer("interlining"),
    blackoutCut: hasLayer("blackout"),
    innerNarrowerMm: hasInner,
    innerLongerMm: hasInner,
  },
  ribs: { face: isRibbed, at: isRibbed, rib: isRibbed, pocketMm: isRibbed, shorterMm: isRibbed },
  pattern: { offsetMm: standsFree, acrossMm: (chosen) => said("pattern", "across", chosen) === "offset" },
  banding: { widthMm: isBanded, insetMm: isBanded, turnMm: isBanded, corners: isBanded },
  board: {
    wallWood: screwedInto("timber"),
    fixingRatedN: screwedInto("masonry", "hollow-wall"),
    returnDropMm: showsEnds,
    returns: showsEnds,
  },
};

/** Whether a setting has to do with the shade as it is, or was set by its maker and must stay in sight. */
export function settingApplies(group: MakingGroup, name: string, chosen: Chosen): boolean {
  const own = (chosen.window.shade.making?.[group] as Record<string, unknown> | undefined)?.[name];
  return own !== undefined || (APPLIES[group]?.[name]?.(chosen) ?? true);
}

/** Settings that are hidden somewhere, for the test of this table. */
export function hiddenSettings(): [MakingGroup, string][] {
  return (Object.entries(APPLIES) as [MakingGroup, Record<string, Test>][]).flatMap(([group, tests]) =>
    Object.keys(tests).map((name): [MakingGroup, string] => [group, name]),
  );
}

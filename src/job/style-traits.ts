import type { StyleKind } from "./job.ts";

/** What rooms that know no style's ways ask of a style. */
export interface StyleTraits {
  /** Its rows follow the fold rules alone; elsewhere cloth, tape and pattern have a say. */
  followsFoldRules: boolean;
  /** It hangs straight between its rows, so that a rib can lie there. */
  carriesRibs: boolean;
  /** Its flat cloth hangs from a rail as it hangs from a board, so that the top can be let down. */
  takesTopRail: boolean;
  /** Its rows stay level and its cloth lies flat under a head that is not level. */
  hangsUnderShapedHead: boolean;
}

const FOLDS_FLAT: StyleTraits = {
  followsFoldRules: true,
  carriesRibs: true,
  takesTopRail: true,
  hangsUnderShapedHead: true,
};

const NONE: StyleTraits = {
  followsFoldRules: false,
  carriesRibs: false,
  takesTopRail: false,
  hangsUnderShapedHead: false,
};

/** The traits of every style; the compiler names each new one that is missing. */
export const STYLE_TRAITS: Record<StyleKind, StyleTraits> = {
  flat: FOLDS_FLAT,
  ribbed: FOLDS_FLAT,
  hobbled: NONE,
  tucked: NONE,
  relaxed: { ...NONE, followsFoldRules: true },
  tailed: NONE,
  "pleated-balloon": NONE,
  "gathered-balloon": NONE,
  austrian: NONE,
  festoon: NONE,
};

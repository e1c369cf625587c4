import type { StyleKind } from "./job.ts";

/** What rooms that do not know the ways of a style have to know of it all the same. */
export interface StyleTraits {
  /** Its rows follow the fold rules alone; elsewhere cloth, tape and pattern have a say. */
  followsFoldRules: boolean;
  /** Its rows part what hangs below the headrail into half folds: one below the first row, two between rows. */
  partsIntoHalfFolds: boolean;
  /** It hangs straight between its rows, so that a rib can lie there. */
  carriesRibs: boolean;
  /** A rib at every row is what makes it. */
  madeWithRibs: boolean;
  /** Its flat cloth hangs from a rail as it hangs from a board, so that the top can be let down. */
  takesTopRail: boolean;
  /** Its rows stay level and its cloth lies flat under a head that is not level. */
  hangsUnderShapedHead: boolean;
  /** Its rows sit at the marks of tapes, shorter than the cloth on them. */
  hangsOnTapes: boolean;
}

const NONE: StyleTraits = {
  followsFoldRules: false,
  partsIntoHalfFolds: false,
  carriesRibs: false,
  madeWithRibs: false,
  takesTopRail: false,
  hangsUnderShapedHead: false,
  hangsOnTapes: false,
};

const FOLDS_FLAT: StyleTraits = {
  ...NONE,
  followsFoldRules: true,
  partsIntoHalfFolds: true,
  carriesRibs: true,
  takesTopRail: true,
  hangsUnderShapedHead: true,
};

/** The traits of every style; the compiler names each new one that is missing. */
export const STYLE_TRAITS: Record<StyleKind, StyleTraits> = {
  flat: FOLDS_FLAT,
  ribbed: { ...FOLDS_FLAT, madeWithRibs: true },
  hobbled: { ...NONE, hangsOnTapes: true },
  tucked: NONE,
  relaxed: { ...NONE, followsFoldRules: true },
  tailed: NONE,
  "pleated-balloon": NONE,
  "gathered-balloon": NONE,
  austrian: NONE,
  festoon: NONE,
};

import { cite, type Sourced, sourced } from "../sources/index.ts";
import { inches } from "../units/index.ts";
import type { StyleKind } from "./job.ts";
import type { Making } from "./making.ts";

type Groups = { [G in keyof Making]-?: NonNullable<Making[G]> };
type StyleTable = {
  [G in keyof Groups]?: { [K in keyof Groups[G]]?: Sourced<NonNullable<Groups[G][K]>> };
};

/** What a style takes otherwise than `DEFAULTS`, where neither the shade nor the workshop said. */
export const STYLE_DEFAULTS: Partial<Record<StyleKind, StyleTable>> = {
  ribbed: {
    ribs: {
      kind: sourced(
        "lining-pocket",
        "",
        cite("pocket-spacing", "pockets in the lining; strips where it is unlined"),
      ),
    },
    columns: {
      largestSpacingMm: sourced(inches(14), "mm", cite("ring-spacing-faq", "12 to 14 in with ribs")),
    },
  },
  "pleated-balloon": {
    pleat: {
      foldedMm: sourced(inches(8), "mm", cite("box-pleat-valance", "one 8 in pleat")),
      held: sourced("pressed", "", cite("our-choice", "so that the poufs open")),
      bar: sourced("none", "", cite("our-choice", "the hem hangs soft")),
    },
  },
  "gathered-balloon": {
    columns: { edgeInsetMm: sourced(inches(1), "mm", cite("balloon-2009", "rings 1 in from the edges")) },
    board: { bar: sourced("rod-steel-10", "", cite("austrian-2008", "3/8 in rod")) },
    gather: {
      widthFullness: sourced(2.5, "ratio", cite("balloon-2009")),
      hemExtraMm: sourced(inches(10), "mm", cite("from-memory", "10 to 15 in for a pouf that stays")),
    },
  },
  austrian: {
    mount: {
      boardShorterMm: sourced(
        0,
        "mm",
        cite("our-choice", "what the edge tapes hang by stands over them, on the board"),
      ),
    },
    columns: {
      edgeInsetMm: sourced(inches(0.5), "mm", cite("austrian-2008", "a tape at each edge, on its hem")),
    },
    board: { bar: sourced("rod-steel-10", "", cite("austrian-2008", "3/8 in rod")) },
    gather: {
      drawInMm: sourced(
        inches(1),
        "mm",
        cite("austrian-workroom", "the sides bow in a little; how much is our choice"),
      ),
    },
  },
  festoon: {
    columns: { edgeInsetMm: sourced(inches(1), "mm", cite("balloon-2009", "rings 1 in from the edges")) },
    board: { bar: sourced("rod-steel-10", "", cite("austrian-2008", "3/8 in rod")) },
    gather: {
      hemExtraMm: sourced(inches(20), "mm", cite("austrian-uk", "the length and 50 cm (20 in)")),
    },
  },
};

/** The default of one setting in one style; undefined where the style has none of its own. */
export function styleDefault(
  style: StyleKind,
  group: keyof Making,
  key: string,
): Sourced<unknown> | undefined {
  const table = STYLE_DEFAULTS[style]?.[group] as Record<string, Sourced<unknown> | undefined> | undefined;
  return table?.[key];
}

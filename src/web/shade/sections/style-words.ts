import { STYLE_NAMES, type StyleKind } from "../../../job/index.ts";

/** What tells a style from the others, for whoever chooses. */
export const STYLE_WORDS: Record<StyleKind, string> = {
  flat: "Smooth when lowered. Raised, it folds behind rings in even folds, in folds that grow smaller upwards, or in a cascade.",
  ribbed:
    "Folds as the flat one, on rods, laths or battens at every row: crisp folds, and columns further apart.",
  hobbled: "Longer than the tapes behind it, so that soft folds hang also when it is lowered.",
  tucked: "Narrow tucks sewn across from edge to edge; the folds break on every second one.",
  relaxed: "No bar and cords only near the edges: the lower edge dips in the middle.",
  tailed: "An inverted pleat near each side, and the cloth beyond it hangs as a tail.",
  "pleated-balloon": "Inverted pleats at every column; raised, the cloth between them fills into poufs.",
  "gathered-balloon":
    "Gathered at the head and full across; the lower edge is drawn up in soft poufs, lowered as well. Also called a cloud.",
  austrian:
    "Shirred along every tape over its whole length, in scallops from head to hem. In the United Kingdom it is called a festoon.",
  festoon:
    "Gathered at the head, with scallops at the hem alone; full only when it is drawn up. In the United Kingdom it is called an Austrian.",
};

/** The name of a style where it begins a line. */
export function styleTitle(style: StyleKind): string {
  const name = STYLE_NAMES[style];
  return name.charAt(0).toUpperCase() + name.slice(1);
}

import type { Step } from "../shade-plan/index.ts";
import { IRON } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { sentences } from "./wording.ts";

/** Strips over the rings, sewn along one edge now and closed over the cords once those are in. */
export function sleeveSteps({ cloth, grid, back, about, fine }: Bench): Step[] {
  if (cloth.sleeves === undefined) return [];
  const { besideMm } = cloth.sleeves;
  return [
    {
      id: "make-sleeves",
      chapter: "make",
      action: { kind: "sew-sleeve", rings: grid.rows.length, besideMm },
      title: "Sew on the sleeves, one edge",
      text: sentences(
        `Press ${about("stripTurn")} under along both long edges and both ends of each sleeve.`,
        `Lay one over each column of rings on the ${back}, its lower end at the bottom ring, its upper end at the board, and sew its left edge down from end to end, ${fine(besideMm)} beside the rings.`,
        "Leave the other edge open: the cords go in first.",
      ),
      check: "Lifted by its open edge each sleeve shows all the rings of its column.",
      caution: IRON,
      sheet: "back",
      figures: ["cloth.sleeve-width", "cloth.sleeve-length"],
    },
  ];
}

import type { LiftKind } from "../job/index.ts";
import type { Caution } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";

const BUTTON_CELLS: Caution = {
  id: "button-cells",
  title: "Button cells",
  text: "A swallowed button cell burns a child’s gullet within two hours. Keep remote controls with such cells, and spare and empty cells, out of reach; take none whose lid opens without a tool. Some places have rules of their own on them, which were not read here.",
  cite: cite("from-memory", "warnings of agencies on button cells"),
};

/** The usual cautions of the bench and the ladder. */
export function workCautions(kind: LiftKind): Caution[] {
  return [
    ...(kind === "motor" ? [BUTTON_CELLS] : []),
    {
      id: "ladder-and-drill",
      title: "Ladder, drill and wall",
      text: "Stand on a steady ladder, with someone to hand you the shade. Look for electric cables, pipes and gas before you drill, above and beside every opening. Wear eye protection. If you cannot tell what is in the wall, ask someone licensed for that work.",
      cite: cite("common-practice"),
    },
    {
      id: "board-can-fall",
      title: "A board can fall",
      text: "A board that comes off the wall falls on whoever pulls the cord. Fix it into solid timber or masonry, or with anchors whose own instructions allow the load, and pull hard on the cords yourself before anyone else does.",
      cite: cite("common-practice"),
    },
    {
      id: "defer",
      title: "What comes before this plan",
      text: "Local codes, the instructions that came with each part, and the judgement of those licensed to do the work come before anything printed here.",
      cite: cite("our-choice"),
    },
  ];
}

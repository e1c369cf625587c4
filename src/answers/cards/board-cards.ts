import { cite } from "../../sources/index.ts";
import { counted } from "../../words/index.ts";
import type { QuestionCard } from "../card.ts";

export const BOARD_CARDS: readonly QuestionCard[] = [
  {
    id: "hold-up",
    question: "What holds it up?",
    also: "board brackets screws wall plugs anchors fixing weight fall drill",
    asks: ["widthMm", "lengthMm", "massGsm"],
    answer: (facts) => {
      const { shade } = facts;
      const { board } = shade;
      return {
        text: `${counted(board.brackets.length, board.fixing === "brackets" ? "bracket" : "screw")}, for ${facts.force(board.loadN)} with a hand at work. It is judged with a child hanging on it.`,
        figures: [
          ...facts.figure(shade, "board.load"),
          ...facts.figure(shade, "board.fixing-load"),
          ...facts.figure(shade, "board.screw-pull"),
          ...facts.figure(shade, "board.screw-length"),
          ...facts.figure(shade, "board.deflection"),
        ],
        reason:
          "The hand’s pull counts as much as the weight, and the upper screw of a bracket is drawn out of the wall by what hangs in front of it. Find out what is behind the wall: timber, masonry or a hollow. Use a steady ladder, keep clear of electric cables, and put local codes, the instructions of the fixings and licensed practice before this.",
        cite: cite("beam-theory"),
      };
    },
  },
  {
    id: "how-heavy",
    question: "How heavy is the shade?",
    also: "weight mass kilograms pounds cloth bar",
    asks: ["widthMm", "lengthMm", "massGsm"],
    answer: (facts) => {
      const { shade } = facts;
      const masses = shade.workings.filter(({ id }) => /^cloth\..+-mass$/.test(id));
      return {
        text: `${facts.force(shade.lift.heldN)} hang on the cords when it is raised.`,
        figures: [
          ...masses.flatMap(({ id }) => facts.figure(shade, id)),
          ...facts.figure(shade, "lift.held"),
        ],
        reason:
          "Area by weight of each layer, with hems, and the bar. Lowered, the board carries most of it; raised, the cords do.",
        cite: cite("arithmetic"),
      };
    },
  },
];

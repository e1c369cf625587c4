import type { Caution } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { CautionInput } from "./caution-input.ts";

const BUTTON_CELLS: Caution = {
  id: "button-cells",
  title: "Button cells",
  text: "A swallowed button cell burns a child’s gullet within two hours. Keep remote controls with such cells, and spare and empty cells, out of reach; take none whose lid opens without a tool.",
  cite: cite("from-memory", "warnings of agencies on button cells"),
};

const fire = ({ system }: UnitChoice): Caution => ({
  id: "fire",
  title: "Cloth burns",
  text: `Keep the cloth at least ${system === "imperial" ? "3 ft" : "1 m"} from heaters, open fires and stoves, lowered and raised, and as far from lamps as their own instructions say. Let no hem lie on a radiator, a socket or a candle’s sill.`,
  cite: cite("heater-distance"),
});

const FLAME_TESTS: Caution = {
  id: "flame-tests",
  title: "Fire in a public building",
  text: "Ask the fire authority and the owner which test of the cloth they ask for, before it is bought. Usual are, as reported: BS 5867-2, types B and C, in the United Kingdom; NFPA 701 in the United States; EN 13773, classes 1 to 5, in Europe. Ask for the test report of your own batch, lining and trims as well, and whether it holds after washing. Local codes come first; nothing here shows that a cloth passes.",
  cite: cite("flame-tests"),
};

/** Weights that hang at the hem for as long as the shade does. */
const WEIGHTS: Caution = {
  id: "weights",
  title: "Weights in the hem",
  text: "The weights are steel, as planned; old ones may be lead, which poisons whoever swallows or handles it. Whatever comes out of a torn bag or hem chokes a small child: mend it at once. Take the weights out before the shade is washed.",
  cite: cite("from-memory", "warnings of agencies on lead and on small parts"),
};
const WEIGHT_IDS = ["shot-bags", "hem-weights"];

/** For the maker alone: what is handed over names no law. */
const BUTTON_CELL_RULES: Caution = {
  id: "button-cell-rules",
  title: "Rules on button cells",
  text: "The United States (16 CFR 1263) and Australia have laws on button cells in what is sold, the United Kingdom a published specification; those of other places were not read.",
  cite: cite("from-memory", "rules on button cells, place by place"),
};

/** The usual cautions of the bench, the ladder and the room. */
export function workCautions({
  shade,
  form,
  lift,
}: Pick<CautionInput, "shade" | "form" | "lift">): Caution[] {
  const { kind } = lift;
  return [
    fire(shade.units),
    ...(form.haberdashery.some(({ id }) => WEIGHT_IDS.includes(id)) ? [WEIGHTS] : []),
    ...(shade.purpose === "public-building" ? [FLAME_TESTS] : []),
    ...(kind === "motor" ? [BUTTON_CELLS, BUTTON_CELL_RULES] : []),
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

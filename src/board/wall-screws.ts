import { figureRuleOf, type Worked } from "../figures/index.ts";
import { SCREW_SHANK_MM } from "../mechanics/index.ts";
import type { MountedBoard } from "../shade-plan/index.ts";
import { type Cite, cite, sourced } from "../sources/index.ts";
import { inches, type UnitSystem } from "../units/index.ts";
import type { BoardShade } from "./board-input.ts";

type Substrate = BoardShade["making"]["board"]["substrate"];

/** Penetration, in shank diameters, at which the published lateral load holds. */
const PENETRATION = sourced(7, "ratio", cite("wood-handbook", "eq. 8-13, p. 8-11: at least 7 diameters"));
/** Plaster or board on the wall, which holds nothing. */
const WALL_SKIN = sourced(12.7, "mm", cite("from-memory", "1/2 in of plaster or plasterboard"));
const BRACKET_THICKNESS = sourced(2, "mm", cite("from-memory"));
const PLUG_LENGTH = sourced(40, "mm", cite("from-memory", "a common wall plug; its maker’s length prevails"));
const ANCHOR_GRIP = sourced(
  25,
  "mm",
  cite("from-memory", "behind a hollow wall; the maker’s length prevails"),
);
/** Wall screws in one bracket. */
const PER_BRACKET = sourced(2, "count", cite("from-memory"));

/** Lengths in which screws are commonly sold, from memory, mm. */
const SOLD: Record<UnitSystem, readonly number[]> = {
  metric: [16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120],
  imperial: [0.625, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 5].map(inches),
};

const INTO: Record<Substrate, string> = {
  timber: "solid wood",
  masonry: "rated wall plugs in masonry",
  "hollow-wall": "rated hollow-wall anchors",
  unknown: "a wall that is not known yet",
};

/** How far a screw must reach behind the skin of the wall. */
export function gripMm({ making }: Pick<BoardShade, "making">): { value: number; label: string } {
  const { substrate, screwGauge } = making.board;
  if (substrate === "masonry") return { value: PLUG_LENGTH.value, label: "length of the plug" };
  if (substrate === "hollow-wall")
    return { value: ANCHOR_GRIP.value, label: "room for the anchor behind the wall" };
  return {
    value: PENETRATION.value * SCREW_SHANK_MM[screwGauge],
    label: `7 diameters of a No. ${screwGauge} screw in the wood`,
  };
}

/** Screws that hold the board, all alike; `into` is their ground in words. */
export interface WallScrews {
  count: number;
  lengthMm: number;
  into: string;
  /** No screw sold is as long. */
  tooLong: boolean;
}

const SCREW_LENGTH = figureRuleOf<{ fixing: MountedBoard["fixing"]; grip: string; from: Cite }>()({
  id: "board.screw-length",
  label: "Length that the wall screws need",
  symbol: "l",
  unit: "mm",
  formula: "t + s + p",
  inputs: ({ fixing, grip }) => ({
    t: [
      "mm",
      fixing === "brackets" ? "thickness of a bracket" : "thickness of the board",
      "shade/mount",
      "board/section",
    ],
    s: ["mm", "plaster or board on the wall"],
    p: ["mm", grip, "board/substrate", "board/screwGauge"],
  }),
  cite: ({ from }) => from,
  note: "raised to the next length that is sold",
  compute: ({ t, s, p }) => t + s + p,
});

/** Count, length and ground of the screws that hold the board. */
export function wallScrews(
  shade: BoardShade,
  fixing: MountedBoard["fixing"],
  places: number,
): Worked<WallScrews> {
  const { substrate } = shade.making.board;
  const brackets = fixing === "brackets";
  const grip = gripMm(shade);
  const needed = SCREW_LENGTH.figure(
    {
      t: brackets ? BRACKET_THICKNESS.value : shade.board.thicknessMm,
      s: WALL_SKIN.value,
      p: grip.value,
    },
    {
      fixing,
      grip: grip.label,
      from: substrate === "timber" || substrate === "unknown" ? PENETRATION.cite : cite("from-memory"),
    },
  );
  const sold = SOLD[shade.units.system].find((length) => length >= needed.value - 1e-6);
  return {
    values: {
      count: brackets ? PER_BRACKET.value * places : places,
      lengthMm: sold ?? needed.value,
      into: INTO[substrate],
      tooLong: sold === undefined,
    },
    workings: [needed],
  };
}

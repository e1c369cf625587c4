import { fineText, forceText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import type { Drawing, Fact, Point, Primitive } from "../model.ts";
import type { CleatSheetInput } from "./lift-input.ts";
import { callout, cordTag, line, note, rect } from "./shapes.ts";
import { lengthFact } from "./sheet-input.ts";

/** A cleat as it is drawn: from horn to horn, its foot, and how thick it is, mm. */
const CLEAT_MM = 100;
const FOOT_MM = 34;
const THICK_MM = 9;
/** Turns of the figure of eight that are drawn, and by how much each is larger than the one below it, mm. */
const DRAWN_EIGHTS = 3;
const EIGHT_STEP_MM = 3;
const STEPS = 48;
/** Board and last eye stand beside the cleat. */
const BESIDE_MM = 120;
const BOARD_SHOWN_MM = 90;
const CORD_SHOWN_MM = 70;

/** The end of the board with the last eye, seen from the room, and beside it the cleat with its figures of eight. */
export function drawCleatSheet(input: CleatSheetInput): Drawing {
  const { lift } = input.shade;
  return {
    id: "lock",
    title: "Last eye and cleat",
    caption: `Seen from the room. The cleat is fixed straight below the last eye on the ${lift.controlSide}; how far below stands beside it. It is drawn ${fineText(CLEAT_MM)} long: measure your own.`,
    primitives: [...boardEnd(input), ...cleat(), ...eights(), ...words(input)],
    facts: facts(input),
  };
}

/** All cords come along under the board and turn down over the last eye, side by side. */
function boardEnd({ shade }: CleatSheetInput): Primitive[] {
  const { lift, board } = shade;
  const side = lift.controlSide === "right" ? 1 : -1;
  const eyeX = -BESIDE_MM;
  const top = -CLEAT_MM / 2 - 40;
  const under = top + board.thicknessMm;
  const radius = lift.turn.diameterMm / 2;
  const endX = eyeX + side * (radius + 8);
  const from = Math.min(endX, endX - side * BOARD_SHOWN_MM);
  const eyeY = under + radius;
  const inward = lift.controlSide === "right" ? lift.cords : [...lift.cords].reverse();
  const stepMm = Math.min(lift.cordDiameterMm * 1.6, (radius * 1.2) / Math.max(1, inward.length));
  return [
    rect("board", { x: from, y: top, width: BOARD_SHOWN_MM, height: board.thicknessMm }, { part: "board" }),
    // Its ring stands across the board: from the room it is seen edge on.
    rect(
      "eye",
      { x: eyeX - radius / 5, y: under, width: (2 * radius) / 5, height: 2 * radius },
      { part: "last-eye" },
    ),
    ...inward.map((cord, i): Primitive => {
      const shift = ((inward.length - 1) / 2 - i) * stepMm;
      const x = eyeX - side * shift;
      const points: Point[] = [
        [endX - side * BOARD_SHOWN_MM, eyeY + shift],
        [x, eyeY + shift],
        [x, eyeY + CORD_SHOWN_MM],
      ];
      return line("cord", points, { cord: cord.number, part: `cord-${cord.number}` });
    }),
    ...inward.map(
      (cord, i): Primitive => ({
        ...cordTag(
          [eyeX - side * ((inward.length - 1) / 2 - i) * stepMm, eyeY + CORD_SHOWN_MM],
          cord.number,
          [0, 4],
        ),
        stack: "cords",
      }),
    ),
    callout([eyeX + (side * radius) / 5, eyeY], "last eye", [side * 6, -3], { part: "last-eye" }),
  ];
}

/** Upright, its foot in the middle with a screw above and below. */
function cleat(): Primitive[] {
  const half = CLEAT_MM / 2;
  const screw = (y: number): Primitive => ({
    kind: "marker",
    role: "screw",
    shape: "cross",
    at: [0, y],
    paperMm: 2.2,
    part: "cleat",
  });
  return [
    rect("bracket", { x: -THICK_MM / 2, y: -half, width: THICK_MM, height: CLEAT_MM }, { part: "cleat" }),
    rect(
      "bracket",
      { x: -THICK_MM, y: -FOOT_MM / 2, width: 2 * THICK_MM, height: FOOT_MM },
      { part: "cleat" },
    ),
    screw(-FOOT_MM / 4),
    screw(FOOT_MM / 4),
  ];
}

/** Down to the foot, once round it, then over one horn and under the other; the bundle is drawn as one line. */
function eights(): Primitive[] {
  const points: Point[] = [
    [THICK_MM + 3, -CLEAT_MM],
    [THICK_MM + 3, FOOT_MM / 2 + 2],
  ];
  for (let eight = 0; eight < DRAWN_EIGHTS; eight++) {
    const wide = THICK_MM + 5 + eight * EIGHT_STEP_MM;
    const high = CLEAT_MM * 0.36 + eight * EIGHT_STEP_MM;
    for (let i = 0; i <= STEPS; i++) {
      const t = (2 * Math.PI * i) / STEPS;
      points.push([wide * Math.sin(2 * t), -high * Math.sin(t + Math.PI / 2) * -1]);
    }
  }
  return [line("cord", points, { part: "tail" })];
}

function words({ shade }: CleatSheetInput): Primitive[] {
  const { lift } = shade;
  return [
    callout([THICK_MM / 2, CLEAT_MM / 2], "cleat", [6, 3], { part: "cleat", yields: true }),
    note([THICK_MM + 3, -CLEAT_MM], lift.cords.length === 1 ? "the cord" : "all cords together", {
      anchor: "start",
      shiftPaperMm: [2, 0],
      yields: true,
    }),
  ];
}

function facts({ shade, units }: CleatSheetInput): Fact[] {
  const { lift } = shade;
  const { turn, toCleatMm, windMm, figureEights, tailEndAboveFloorRaisedMm } = lift;
  return [
    {
      label: "Last eye",
      text: turn.column === undefined ? turn.name : `${turn.name}, above column ${turn.column}`,
    },
    { label: "Control side", text: lift.controlSide },
    { label: "Cord", text: `${lift.cordName}, ${fineText(lift.cordDiameterMm)}` },
    ...(toCleatMm === undefined ? [] : [lengthFact("Cleat below the last eye", toCleatMm, units)]),
    lengthFact("Cords below the last eye, lowered", lift.tailLoweredMm, units),
    lengthFact("Cords below the last eye, raised", lift.tailRaisedMm, units),
    ...(windMm === undefined ? [] : [lengthFact("To wind on the cleat, raised", windMm, units)]),
    ...(figureEights === undefined
      ? []
      : [{ label: "That makes about", text: `${counted(figureEights, "figure")} of eight` }]),
    ...(tailEndAboveFloorRaisedMm === undefined
      ? []
      : [
          lengthFact(
            "Their end above the floor before they are wound, raised",
            tailEndAboveFloorRaisedMm,
            units,
          ),
        ]),
    { label: "Raised, the cleat holds", text: forceText(lift.holdN, units) },
  ];
}

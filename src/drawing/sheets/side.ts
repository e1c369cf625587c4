import type { RaisedShape } from "../../styles/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Drawing, Point, Primitive } from "../model.ts";
import { isLockSheet, isTubeSheet, type LockSheetInput, type TubeSheetInput } from "./lift-input.ts";
import { shapeNow } from "./shape-now.ts";
import { callout, dimensionOf, line, rect } from "./shapes.ts";
import { figureRef, lengthFact, raiseName, type SheetInput } from "./sheet-input.ts";
import { whereSlanted } from "./slanted.ts";

/** Depth of wall that is drawn, and how far above the board, mm. */
const WALL_MM = 45;
const ABOVE_MM = 45;
const BELOW_MM = 60;
/** Between face and lining in the drawing, mm: enough to tell them apart. */
const LAYER_MM = 4;
/** Folds more closed than this leave no room for a second line. */
const OPEN_SHARE = 0.35;
const RING_RADIUS_MM = 5;

/**
 * A section through the shade near the control side, seen from the left end: wall on the left, room on the right.
 * The same function draws it lowered, raised and anywhere between.
 */
export function drawSide(input: SheetInput): Drawing {
  const { shade, units, raise } = input;
  const { board, grid } = shade;
  const { section: shape, lowestYMm = shape.hemYMm, swagSection = [] } = shapeNow(input);
  const { id, words } = raiseName(raise);
  const gathered = shape.folds.filter((fold) => fold.state === "gathered").length;
  const isMoving = shape.outMm > 0;
  return {
    id: `side${id}`,
    title: "Side",
    caption: `Section seen from the left end: wall on the left, room on the right. ${words}${
      input.near === true ? ", drawn no further down than it hangs" : ""
    }.${
      isMoving ? foldWords(input, shape) : ""
    }${swagSection.length > 0 ? " The thin line is the cloth midway between two columns." : ""}${whereSlanted(shade)}`,
    primitives: [
      ...(input.near === true ? drawBehind(input, lowestYMm) : drawSurroundings(input, shape)),
      ...drawHead(input),
      ...drawCord(input, shape),
      ...drawSwag(input, swagSection),
      ...drawCloth(input, shape),
      ...drawRings(input, shape),
      ...drawMeasures(input, shape, {
        lowestYMm,
        outMm: Math.max(shape.outMm, ...swagSection.map(([out]) => out)),
      }),
    ],
    facts: [
      lengthFact("Top line to hem now", lowestYMm, units),
      lengthFact("Bottom row risen by", shape.liftMm, units),
      { label: "Folds gathered", text: `${gathered} of ${grid.rows.length}` },
      lengthFact("Board depth", board.depthMm, units),
      lengthFact("Headrail allowance", grid.headrailMm, units),
      ...(isMoving ? [lengthFact("Folds stand out from the cloth by about", shape.outMm, units)] : []),
      ...(shade.folds === undefined
        ? []
        : [
            lengthFact("Raised folds stand out, as sewn, by", shade.folds.outMm, units),
            lengthFact("Raised folds press the hem back by", shade.folds.behindMm, units),
          ]),
    ],
  };
}

/** How true the folds are. */
function foldWords({ shade: { folds }, units }: SheetInput, { hung }: RaisedShape): string {
  if (hung !== true || folds === undefined) {
    return " Folds are drawn as limp cloth; how far they stand out is approximate.";
  }
  const known = folds.measured ? "as given" : "a guess";
  return ` Folds hang as sewn, for cloth with a bending length of ${lengthText(folds.bendingMm, units)} (${known}).`;
}

/** What stands behind it as far down as it hangs: glass in a recess, or the wall. */
function drawBehind({ shade: { mount, board } }: SheetInput, lowestYMm: number): Primitive[] {
  const height = lowestYMm + BELOW_MM;
  if (mount !== "inside")
    return [rect("wall", { x: -WALL_MM, y: -ABOVE_MM, width: WALL_MM, height: ABOVE_MM + height })];
  const width = 2 * WALL_MM + board.depthMm;
  return [
    rect("wall", { x: -WALL_MM, y: -ABOVE_MM, width, height: ABOVE_MM }, { part: "opening" }),
    rect("glass", { x: -10, y: 0, width: 6, height }),
  ];
}

/** Wall or recess round the shade, glass where the opening is known. Wall face (or back of the recess) is x = 0. */
function drawSurroundings({ shade }: SheetInput, shape: RaisedShape): Primitive[] {
  const { size, board, mount } = shade;
  const bottom = Math.max(size.finishedLengthMm, shape.bottomYMm) + BELOW_MM;
  if (mount === "inside") {
    const sillY = size.openingHeightMm;
    const reach = board.depthMm + WALL_MM;
    return [
      rect(
        "wall",
        { x: -WALL_MM, y: -ABOVE_MM, width: WALL_MM + reach, height: ABOVE_MM },
        { part: "opening" },
      ),
      rect("wall", { x: -WALL_MM, y: sillY, width: WALL_MM + reach, height: BELOW_MM }, { part: "opening" }),
      rect("glass", { x: -10, y: 0, width: 6, height: sillY }),
    ];
  }
  const top = size.openingTopMm;
  if (top === undefined) {
    return [rect("wall", { x: -WALL_MM, y: -ABOVE_MM, width: WALL_MM, height: bottom + ABOVE_MM })];
  }
  const sillY = top + size.openingHeightMm;
  const floor = Math.max(bottom, sillY + BELOW_MM);
  return [
    rect("wall", { x: -WALL_MM, y: -ABOVE_MM, width: WALL_MM, height: ABOVE_MM + top }),
    rect("wall", { x: -WALL_MM, y: sillY, width: WALL_MM, height: floor - sillY }, { part: "opening" }),
    rect("glass", { x: -WALL_MM * 0.6, y: top, width: 6, height: sillY - top }),
  ];
}

/** Board, and eye and lock or tube and drive at the head. */
function drawHead(input: SheetInput): Primitive[] {
  const { board } = input.shade;
  return [
    rect("board", { x: 0, y: 0, width: board.depthMm, height: board.thicknessMm }, { part: "board" }),
    ...(isLockSheet(input) ? lockEnd(input) : []),
    ...(isTubeSheet(input) ? tubeEnd(input) : []),
  ];
}

/** The section runs through the highest place of the head. */
function axisInSectionMm({ shade }: TubeSheetInput): number {
  return shade.board.thicknessMm + shade.lift.tube.axisMm;
}

/** Drive behind, then the spool with its tube through it. */
function tubeEnd(input: TubeSheetInput): Primitive[] {
  const { tube, drive, spools } = input.shade.lift;
  const axis = axisInSectionMm(input);
  const circle = (role: "spool" | "tube", diameterMm: number, part: string): Primitive => ({
    kind: "circle",
    role,
    centre: [tube.zMm, axis],
    radiusMm: diameterMm / 2,
    part,
  });
  const [spool] = spools;
  return [
    rect(
      "drive",
      {
        x: drive.zMm - drive.depthMm / 2,
        y: axis - drive.heightMm / 2,
        width: drive.depthMm,
        height: drive.heightMm,
      },
      { part: "drive" },
    ),
    ...(spool === undefined
      ? []
      : [circle("spool", spool.flangeMm, "spool-1"), circle("spool", spool.coreMm, "spool-1")]),
    circle("tube", tube.diameterMm, "tube"),
  ];
}

function lockEnd({ shade }: LockSheetInput): Primitive[] {
  const { board, lift } = shade;
  const eyeZ = board.eyes[0]?.zMm ?? board.depthMm / 2;
  return [
    rect(
      "housing",
      {
        x: lift.seat.zMm - lift.housingWidthMm / 2,
        y: board.thicknessMm,
        width: lift.housingWidthMm,
        height: lift.housingHeightMm,
      },
      { part: "lock" },
    ),
    {
      kind: "circle",
      role: "eye",
      centre: [eyeZ, board.thicknessMm + lift.eyeDiameterMm / 2],
      radiusMm: lift.eyeDiameterMm / 2,
      part: "eye-1",
    },
  ];
}

/** Up from the bottom row to the eye, or onto the side of the spool that is nearer to the cloth. */
function drawCord(input: SheetInput, shape: RaisedShape): Primitive[] {
  const { board } = input.shade;
  const ringZ = ringPlane(input.shade);
  const { lift } = input.shade;
  const eyeMm = lift.takeUp !== "tube" ? lift.eyeDiameterMm / 2 : 0;
  const upper: Point = isTubeSheet(input)
    ? [input.shade.lift.tube.zMm + woundNow(input), axisInSectionMm(input)]
    : [board.eyes[0]?.zMm ?? board.depthMm / 2, board.thicknessMm + eyeMm];
  const bottom = shape.rows[0]?.yMm ?? 0;
  const top = shape.rows.at(-1)?.yMm ?? 0;
  return [line("cord", [[ringZ, bottom], [ringZ, top], upper], { part: "cord-1" })];
}

/** Axis to cord at this height, mm: its square grows evenly with the cord that is wound up. */
function woundNow({ shade, raise }: TubeSheetInput): number {
  const { woundLoweredMm: lowered, woundRaisedMm: raised } = shade.lift;
  return Math.sqrt(lowered ** 2 + Math.min(1, Math.max(0, raise)) * (raised ** 2 - lowered ** 2));
}

function ringPlane({ board }: SheetInput["shade"]): number {
  return board.depthMm - LAYER_MM - RING_RADIUS_MM;
}

/** Face outside, lining inside it; the face runs over the board's front and top. */
function drawCloth({ shade }: SheetInput, shape: RaisedShape): Primitive[] {
  const { board, cloth } = shade;
  const plane = board.depthMm;
  const hanging: Point[] = [[plane, 0]];
  const fromTop = [...shape.folds].reverse();
  for (const fold of fromTop) for (const [out, y] of fold.outline) append(hanging, [plane + out, y]);
  append(hanging, hemPoint(shape, plane));
  const face = line("faceCloth", [[0, 0], ...hanging], { part: "face" });
  const isLined = cloth.layers.some((cut) => cut.layer === "lining");
  return [...(isLined ? linings(openStretches(shape, plane), board.thicknessMm) : []), face];
}

/** The cloth midway between two columns, where it hangs otherwise than at a column. */
function drawSwag({ shade }: SheetInput, swagSection: readonly Point[]): Primitive[] {
  const plane = shade.board.depthMm;
  return swagSection.length === 0
    ? []
    : [
        line(
          "gather",
          swagSection.map(([out, y]): Point => [plane + out, y]),
          { part: "swag" },
        ),
      ];
}

function hemPoint({ hemEnd, hemYMm }: RaisedShape, plane: number): Point {
  const [out, y] = hemEnd ?? [0, hemYMm];
  return [plane + out, y];
}

/** Where the lining shows beside the face. */
function openStretches(shape: RaisedShape, plane: number): Point[][] {
  const open = [...shape.folds]
    .reverse()
    .filter((fold) => fold.lowerYMm - fold.upperYMm > OPEN_SHARE * fold.arcMm);
  const upper: Point[] = [[plane, 0]];
  for (const fold of open) for (const [out, y] of fold.outline) append(upper, [plane + out, y]);
  const bottomRowY = shape.rows[0]?.yMm ?? 0;
  return [upper, [[plane, bottomRowY], hemPoint(shape, plane)]];
}

function linings(stretches: Point[][], below: number): Primitive[] {
  return stretches.flatMap((points) => {
    const seen = inwards(points, LAYER_MM).filter(([, y]) => y > below);
    // Of what hangs behind the board there is no line to see.
    return seen.length < 2 ? [] : [line("liningCloth", seen, { part: "lining" })];
  });
}

function append(path: Point[], point: Point): void {
  const last = path.at(-1);
  if (last !== undefined && Math.hypot(last[0] - point[0], last[1] - point[1]) < 1e-6) return;
  path.push(point);
}

/** The same line moved to its right-hand side: on a cloth drawn from the top down that is the glass side. */
function inwards(path: readonly Point[], byMm: number): Point[] {
  return path.map((point, i): Point => {
    const before = path[i - 1] ?? point;
    const after = path[i + 1] ?? point;
    const length = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
    const normal: Point = [(after[1] - before[1]) / length, -(after[0] - before[0]) / length];
    return [point[0] - normal[0] * byMm, point[1] - normal[1] * byMm];
  });
}

function drawRings({ shade }: SheetInput, shape: RaisedShape): Primitive[] {
  const x = ringPlane(shade);
  return shape.rows.map((row) => ({
    kind: "circle",
    role: "ring",
    centre: [x, row.yMm],
    radiusMm: RING_RADIUS_MM,
    part: `row-${row.number}`,
  }));
}

function drawMeasures(
  input: SheetInput,
  shape: RaisedShape,
  { lowestYMm, outMm }: { lowestYMm: number; outMm: number },
): Primitive[] {
  const { shade, units, raise } = input;
  const { board, grid } = shade;
  const right = board.depthMm + outMm;
  return [
    dimensionOf(
      {
        from: [right, 0],
        to: [right, lowestYMm],
        offset: raise > 0 ? 7 : 15,
        ...figureRef(input, raise >= 1 ? "shape.raised-height" : "measure.finished-length"),
      },
      units,
    ),
    dimensionOf({ from: [0, -ABOVE_MM], to: [board.depthMm, -ABOVE_MM], offset: 4, part: "board" }, units),
    ...(raise > 0
      ? [
          dimensionOf(
            {
              from: [right, 0],
              to: [right, grid.headrailMm],
              offset: 15,
              label: "headrail",
              part: "headrail",
            },
            units,
          ),
        ]
      : []),
    ...(raise > 0 ? [] : names(input, shape)),
  ];
}

function names({ shade }: SheetInput, shape: RaisedShape): Primitive[] {
  const plane = shade.board.depthMm;
  const y = (shape.rows.at(-1)?.yMm ?? 0) * 0.55;
  return [
    callout([plane, y], "face", [4, 0], { part: "face" }),
    ...(shade.cloth.layers.some((cut) => cut.layer === "lining")
      ? [callout([plane - LAYER_MM, y * 1.3], "lining", [4.5, 4], { part: "lining" })]
      : []),
  ];
}

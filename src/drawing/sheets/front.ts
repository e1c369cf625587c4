import { headLine } from "../../shade-plan/index.ts";
import type { VisibleShape } from "../../styles/index.ts";
import type { Drawing, Point, Primitive } from "../model.ts";
import { bandsOn } from "./bands.ts";
import { boardLine } from "./board-line.ts";
import { controlFacts, hangingControl } from "./hanging-control.ts";
import { openingBox } from "./opening-box.ts";
import { shapeNow } from "./shape-now.ts";
import { type DrawnRect, dimensionOf, line, note } from "./shapes.ts";
import { figureRef, lengthFact, raiseName, type SheetInput } from "./sheet-input.ts";
import { drawVisibleLine, seenFrom } from "./visible-lines.ts";

/** The shade seen from the room, anywhere between lowered and raised, in its opening where that is known. */
export function drawFront(input: SheetInput): Drawing {
  const { shade, units, raise } = input;
  const { size, grid, lift } = shade;
  const shape = shapeNow(input);
  const { id, words } = raiseName(raise);
  return {
    id: `front${id}`,
    title: "Front",
    caption: `Seen from the room. ${words}.${drapeNote(shade.form, raise)}`,
    primitives: [
      ...drawOpening(input),
      ...drawCloth(input, shape),
      ...drawHiddenBoard(input),
      // An outside mount hides its opening: its outline shows through.
      ...(shade.mount === "outside"
        ? openingOf(shade).map((opening) => line("ghost", openingLine(shade, opening), { closed: true }))
        : []),
      ...hangingControl(input, raise),
      ...drawMeasures(input, lowestNow(shape)),
    ],
    facts: [
      lengthFact("Finished width", size.finishedWidthMm, units),
      lengthFact("Finished length", size.finishedLengthMm, units),
      lengthFact("Top line to hem now", lowestNow(shape), units),
      lengthFact("Top line to hem when raised", grid.raisedHeightMm, units),
      { label: "Rows of rings", text: String(grid.rows.length) },
      { label: "Columns of rings", text: String(grid.columns.length) },
      { label: "Control side", text: lift.controlSide },
      ...controlFacts(input),
      ...(size.hemAboveFloorMm === undefined
        ? []
        : [lengthFact("Hem above the floor when lowered", size.hemAboveFloorMm, units)]),
    ],
  };
}

/** What a strip that bends one way only leaves out of a swag. */
function drapeNote({ ease = [], pouf }: SheetInput["shade"]["form"], raise: number): string {
  if (ease.length === 0 || (raise <= 0 && pouf === undefined)) return "";
  return " Curves are those of a cord as long as the cloth there; limp cloth hangs a little lower and further in.";
}

function openingOf(shade: SheetInput["shade"]): DrawnRect[] {
  const box = openingBox(shade);
  return box === undefined ? [] : [box];
}

/** Outline of the opening, its head as it was measured. */
function openingLine({ size }: SheetInput["shade"], { x, y, width, height }: DrawnRect): Point[] {
  const head = headLine({ finishedWidthMm: width, ...(size.head === undefined ? {} : { head: size.head }) });
  return [
    ...head.map(([along, down]): Point => [x + along, y + down]),
    [x + width, y + height],
    [x, y + height],
  ];
}

/** Glass and edge of the opening behind the shade, and the floor. */
function drawOpening({ shade }: SheetInput): Primitive[] {
  const { size } = shade;
  const primitives: Primitive[] = openingOf(shade).flatMap((opening) => [
    line("glass", openingLine(shade, opening), { closed: true }),
    line("opening", openingLine(shade, opening), { closed: true, part: "opening" }),
  ]);
  const floor = size.topAboveFloorMm;
  if (floor !== undefined) {
    const overhang = size.finishedWidthMm * 0.12;
    primitives.push(
      line("floor", [
        [-overhang, floor],
        [size.finishedWidthMm + overhang, floor],
      ]),
      note([size.finishedWidthMm / 2, floor], "Floor", { shiftPaperMm: [0, 2.4] }),
    );
  }
  return primitives;
}

/** The board behind the cloth, level or along its head: its ends and underside. */
function drawHiddenBoard({ shade }: SheetInput): Primitive[] {
  const upper = boardLine(shade);
  const under = upper.map(([x, y]): Point => [x, y + shade.board.thicknessMm]);
  return [line("hidden", [...upper.slice(0, 1), ...under, ...upper.slice(-1)], { part: "board" })];
}

/** Piece over piece, from behind to the front. */
function drawCloth(input: SheetInput, { pieces, lines }: VisibleShape): Primitive[] {
  const { shade } = input;
  return [
    ...pieces.flatMap(({ outline, edges, clothShiftMm }): Primitive[] => [
      {
        ...line("faceCloth", outline, { closed: true }),
        ...(clothShiftMm === undefined ? {} : { clothShiftMm }),
      },
      ...bandsOn(input, outline),
      ...seamsOn(shade, outline),
      ...edges
        .filter(seenFrom("front"))
        .map((edge) =>
          edge.row === undefined && edge.kind === "edge"
            ? { ...drawVisibleLine(edge), part: "hem" }
            : drawVisibleLine(edge),
        ),
    ]),
    ...lines.filter(seenFrom("front")).map((one) => drawVisibleLine(one)),
  ];
}

/** Joins of the face on one stretch of it; pleats and gathers swallow them, on a smooth shade they show. */
function seamsOn({ cloth, form }: SheetInput["shade"], outline: readonly Point[]): Primitive[] {
  const face = cloth.layers.find((cut) => cut.layer === "face");
  if (face === undefined || form.across !== "flat") return [];
  const ys = outline.map(([, y]) => y);
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  return face.seamsMm.map((x, i) =>
    line(
      "seam",
      [
        [x, top],
        [x, bottom],
      ],
      { part: `seam-${i + 1}` },
    ),
  );
}

/** Where the shade ends now: at its hem, or where that droops between the columns. */
function lowestNow({ section, lowestYMm }: VisibleShape): number {
  return lowestYMm ?? section.hemYMm;
}

function drawMeasures(input: SheetInput, hemYMm: number): Primitive[] {
  const { shade, units, raise } = input;
  const { size, grid } = shade;
  const width = size.finishedWidthMm;
  const primitives: Primitive[] = [
    dimensionOf(
      { from: [0, 0], to: [width, 0], offset: 6, ...figureRef(input, "measure.finished-width") },
      units,
    ),
    dimensionOf(
      {
        from: [0, 0],
        to: [0, hemYMm],
        offset: -7,
        ...figureRef(input, raise > 0 ? "shape.raised-height" : "measure.finished-length"),
      },
      units,
    ),
  ];
  if (raise <= 0) {
    const raisedY = grid.raisedHeightMm;
    primitives.push(
      line("ghost", [
        [0, raisedY],
        [width, raisedY],
      ]),
      note([width / 2, raisedY], "hem when raised", {
        shiftPaperMm: [0, -2.2],
        yields: true,
        alongMm: width,
        ground: "faceCloth",
      }),
      dimensionOf(
        { from: [width, 0], to: [width, raisedY], offset: 6, ...figureRef(input, "shape.raised-height") },
        units,
      ),
    );
  }
  const rail = shade.lift.topRail;
  if (raise <= 0 && rail !== undefined) {
    primitives.push(
      line("ghost", [
        [0, rail.dropMm],
        [width, rail.dropMm],
      ]),
      note([width / 2, rail.dropMm], "top let down", {
        shiftPaperMm: [0, 2.6],
        yields: true,
        ground: "faceCloth",
      }),
    );
  }
  if (grid.skirtMm > 0) {
    const bottom = raise <= 0 ? grid.raisedHeightMm : hemYMm;
    primitives.push(
      dimensionOf(
        { from: [width, bottom - grid.skirtMm], to: [width, bottom], offset: 13, label: "skirt" },
        units,
      ),
    );
  }
  if (size.topAboveFloorMm !== undefined && hemYMm < size.topAboveFloorMm) {
    primitives.push(
      dimensionOf({ from: [0, hemYMm], to: [0, size.topAboveFloorMm], offset: -7, part: "floor" }, units),
    );
  }
  return primitives;
}

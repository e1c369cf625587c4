import type { ShadePoint } from "../../shade-plan/index.ts";
import type { ShapeInput, VisibleLine, VisibleShape } from "../visible-shape.ts";
import { flatShape } from "./flat-shape.ts";

/** A rib, or its pocket, as it is drawn: half its face, mm. */
const HALF_FACE_MM = 3.5;
const MOST_INSET_MM = 12;

/** The flat shape, with the ribs where they are seen: those at the rows from behind are drawn with the rig. */
export function ribbedShape(input: ShapeInput, raise: number): VisibleShape {
  const shape = flatShape(input, raise);
  const { ribs } = input.form;
  if (ribs.rows.length === 0) return shape;
  const own =
    ribs.face === "front" ? [...atRows(input, shape), ...between(input, shape)] : between(input, shape);
  const ribbed = new Set(ribs.face === "front" ? ribs.rows : []);
  const flat = new Set(shape.section.folds.filter(({ state }) => state === "flat").map(({ row }) => row));
  return {
    ...shape,
    // A rib at the front stands where the line of its row would be.
    pieces: shape.pieces.map((piece) => ({
      ...piece,
      edges: piece.edges.filter(({ row }) => row === undefined || !ribbed.has(row) || !flat.has(row)),
    })),
    lines: [...shape.lines, ...own],
  };
}

/** A row that has gathered lies behind the fold that hangs from it. */
function atRows({ form, size }: ShapeInput, { section }: VisibleShape): VisibleLine[] {
  const onRow = new Set(form.ribs.rows);
  return section.rows.flatMap(({ number, yMm }, i) => {
    const [own, above] = [section.folds[i], section.folds[i + 1]];
    const isHidden = own?.state !== "flat" || (above !== undefined && above.state !== "flat");
    return onRow.has(number) && !isHidden ? rib(form, number, yMm, size.finishedWidthMm) : [];
  });
}

/** A rib between two rows comes forward into the front edge of its fold, and goes behind the folds above. */
function between({ form, size }: ShapeInput, { section }: VisibleShape): VisibleLine[] {
  const midway = new Set(form.ribs.between);
  const isFront = form.ribs.face === "front";
  return section.folds.flatMap((fold, i) => {
    if (!midway.has(fold.row)) return [];
    if (fold.state === "flat")
      return rib(form, fold.row, (fold.upperYMm + fold.lowerYMm) / 2, size.finishedWidthMm);
    const edgeYMm = fold.bottomYMm - HALF_FACE_MM;
    const isCovered = section.folds.slice(i + 1).some(({ bottomYMm }) => bottomYMm > edgeYMm);
    return isCovered || !isFront ? [] : rib(form, fold.row, edgeYMm, size.finishedWidthMm);
  });
}

/** A batten of its own, or the two edges of its pocket. */
function rib({ ribs }: ShapeInput["form"], row: number, yMm: number, widthMm: number): VisibleLine[] {
  const seenFrom = ribs.face;
  const [top, bottom] = [yMm - HALF_FACE_MM, yMm + HALF_FACE_MM];
  const across = (fromMm: number, y: number): ShadePoint[] => [
    [fromMm, y],
    [widthMm - fromMm, y],
  ];
  if (ribs.bare !== true && ribs.face === "front")
    return [
      { kind: "stitch", points: across(0, top), row, seenFrom },
      { kind: "crease", points: across(0, bottom), row, seenFrom },
    ];
  const inMm = Math.min(widthMm / 8, MOST_INSET_MM);
  return [{ kind: "rib", points: [...across(inMm, top), ...across(inMm, bottom).reverse()], row, seenFrom }];
}

import type {
  Placed,
  PlacedCircle,
  PlacedFacets,
  PlacedItem,
  PlacedPath,
  PlacedText,
  Point,
} from "../../drawing/index.ts";
import { onOneLine } from "../../letters/index.ts";
import { PT_PER_MM } from "./paper.ts";
import { type Pen, rgb, rgbOfHex } from "./pen.ts";
import { num, onPage, pathThrough } from "./set-text.ts";
import type { TextStyle } from "./type-scale.ts";

/** Control points that make a quarter circle of a Bézier curve: 4/3·(√2 − 1). */
const QUARTER = 0.5522847498;

/**
 * Draws a placed drawing with its top left corner at (x, y) pt, `zoom` times its size on paper.
 * Looks are the drawing's own: line weights, dashes, hatching and cord colours as every other renderer has them.
 */
export function drawPlaced(pen: Pen, placed: Placed, x: number, y: number, zoom = 1): void {
  const perMm = PT_PER_MM * zoom;
  const at = ([xMm, yMm]: Point): [number, number] => [x + xMm * perMm, y + yMm * perMm];
  for (const item of placed.items) drawItem(pen, item, at, perMm);
}

type ToPage = (point: Point) => [number, number];

function drawItem(pen: Pen, item: PlacedItem, at: ToPage, perMm: number): void {
  switch (item.kind) {
    case "facets":
      drawFacets(pen, item, at, perMm);
      break;
    case "path":
      drawShape(pen, item, pathOf(item.lines, item.closed, at), perMm);
      break;
    case "circle":
      drawShape(pen, item, circleOf(item, at, perMm), perMm);
      break;
    case "text":
      drawText(pen, item, at, perMm);
      break;
  }
}

function drawFacets(pen: Pen, { faces, edgeMm }: PlacedFacets, at: ToPage, perMm: number): void {
  const parts = [`q 1 J 1 j ${num(edgeMm * perMm)} w`];
  for (const { lines, hex } of faces) {
    const ink = rgbOfHex(hex);
    parts.push(`${ink} rg ${ink} RG`, pathOf(lines, true, at), "B");
  }
  pen.doc.addContent([...parts, "Q"].join(" "));
}

function pathOf(lines: PlacedPath["lines"], closed: boolean, at: ToPage): string {
  return lines.map((line) => `${pathThrough(line.map(at))}${closed ? " h" : ""}`).join(" ");
}

function circleOf(item: PlacedCircle, at: ToPage, perMm: number): string {
  const [x, y] = at(item.centre);
  const r = item.radiusMm * perMm;
  const k = r * QUARTER;
  const curve = (...points: number[]) => `${points.map(onPage).join(" ")} c`;
  return [
    `${onPage(x + r)} ${onPage(y)} m`,
    curve(x + r, y + k, x + k, y + r, x, y + r),
    curve(x - k, y + r, x - r, y + k, x - r, y),
    curve(x - r, y - k, x - k, y - r, x, y - r),
    curve(x + k, y - r, x + r, y - k, x + r, y),
    "h",
  ].join(" ");
}

function drawShape(pen: Pen, item: PlacedPath | PlacedCircle, path: string, perMm: number): void {
  const { fill, stroke } = item;
  if (path === "" || (fill === undefined && stroke === undefined)) return;
  // Butt caps on dashes, as `Placed` says: a round cap would close the gaps of a fine rhythm.
  const parts = [stroke?.dashMm === undefined ? "q 1 J 1 j" : "q 0 J 1 j"];
  if (fill !== undefined) parts.push(`${rgb(fill)} rg`);
  if (stroke !== undefined) {
    parts.push(`${rgb(stroke.paint)} RG ${num(stroke.widthMm * perMm)} w`);
    if (stroke.dashMm !== undefined)
      parts.push(`[${stroke.dashMm.map((d) => num(d * perMm)).join(" ")}] 0 d`);
  }
  parts.push(path, fill === undefined ? "S" : stroke === undefined ? "f" : "B", "Q");
  pen.doc.addContent(parts.join(" "));
}

function drawText(pen: Pen, item: PlacedText, at: ToPage, perMm: number): void {
  const style = {
    face: item.strong ? "semibold" : "regular",
    sizePt: item.sizeMm * perMm,
    leadingPt: 0,
    paint: item.paint,
  } as const;
  const [x, y] = at(item.at);
  if (item.haloMm !== undefined) drawHalo(pen, item, style, x, y, item.haloMm * perMm);
  pen.text(item.text, x, y, style, item.anchor, item.angleDeg);
}

/**
 * A border of paper round the letters. Set from their outlines rather than as text,
 * so that the words stand in the document once.
 */
function drawHalo(pen: Pen, item: PlacedText, style: TextStyle, x: number, y: number, widthPt: number): void {
  const face = pen.faces[style.face];
  const text = onOneLine(item.text, face);
  const share = item.anchor === "start" ? 0 : item.anchor === "middle" ? 0.5 : 1;
  const back = share * face.widthOf(text, style.sizePt);
  const turn = (item.angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const scale = style.sizePt / face.font.unitsPerEm;
  const matrix = [
    ...[cos, sin, sin, -cos].map((part) => (part * scale).toFixed(6)),
    onPage(x - back * cos),
    onPage(y - back * sin),
  ].join(" ");
  const ink = rgb(item.haloPaint ?? "paper");
  pen.doc.addContent(`q ${ink} RG ${matrix} cm ${pen.halos.operators(face, text, style.sizePt, widthPt)} Q`);
}

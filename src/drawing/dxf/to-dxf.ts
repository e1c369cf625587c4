import {
  Colors,
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  TrueColor,
  Units,
} from "@tarikjabiri/dxf";
import { CASING_MM, cordStyle } from "../cord-style.ts";
import type { Drawing, Point } from "../model.ts";
import { paintHex } from "../paints.ts";
import type { Fit, Placed, PlacedItem, PlacedPath, PlacedText } from "../placed.ts";
import { breakWords } from "../placing/break-words.ts";
import { place } from "../placing/place.ts";
import { LOOKS } from "../style.ts";

/** Letters and ticks get the size that they would have on a sheet of A3. */
const SHEET: Fit = { maxWidthMm: 400, maxHeightMm: 277 };

/** Capitals of a CAD font fill its text height; ours is that of the em. */
const CAP_SHARE = 0.66;

/**
 * A drawing as DXF text: one unit is one millimetre of the real thing, y upwards, one layer for each role
 * (`FINISHED-EDGE`, `FOLD`, `CORD-1` …) with its line type. Tints are left out; hatching is lines.
 * A stamp stands above the drawing on a layer of its own.
 * What is made to be used at full size is given `{ scale: 1 }`: then its letters too are as large as on paper.
 */
export function toDxf(drawing: Drawing, fit: Fit = SHEET, stamp?: string): string {
  const placed = place(drawing, fit);
  const file = new DxfWriter();
  file.setUnits(Units.Millimeters);
  file.setVariable("$LASTSAVEDBY", { 1: "Shadewright" });
  const layers = new Set<string>();
  for (const item of placed.items) {
    const layer = layerOf(item);
    if (!layers.has(layer)) {
      layers.add(layer);
      addLayer(file, item, layer, placed.scale);
    }
    addItem(file, item, layer, placed);
  }
  if (stamp !== undefined) addStamp(file, placed, stamp);
  return file.stringify();
}

const STAMP_LAYER = "STAMP";
const STAMP_MM = 5;
const LEAST_STAMP_WIDTH_MM = 100;

/** Above the drawing, on a layer of its own. */
function addStamp(file: DxfWriter, { widthMm, originMm, scale }: Placed, stamp: string): void {
  file.addLayer(STAMP_LAYER, Colors.Red, "Continuous");
  const lines = breakWords(stamp, Math.max(widthMm, LEAST_STAMP_WIDTH_MM) / STAMP_MM);
  lines.forEach((line, i) => {
    const upMm = originMm[1] + STAMP_MM * (1 + 1.3 * (lines.length - 1 - i));
    const at = point3d(-originMm[0] / scale, upMm / scale, 0);
    file.addText(at, (STAMP_MM * CAP_SHARE) / scale, plainText(line), { layerName: STAMP_LAYER });
  });
}

function layerOf(item: PlacedItem): string {
  const { layer } = LOOKS[item.role];
  return item.cord === undefined ? layer : `${layer}-${item.cord}`;
}

function addLayer(file: DxfWriter, item: PlacedItem, name: string, scale: number): void {
  const look = LOOKS[item.role];
  const dashMm = item.cord === undefined ? look.stroke?.dashMm : cordStyle(item.cord).core.dashMm;
  let lineType = "Continuous";
  if (dashMm !== undefined) {
    lineType = `${name}-LINE`;
    // In DXF a gap is a negative length.
    const elements = dashMm.map((length, i) => ((i % 2 === 0 ? 1 : -1) * length) / scale);
    file.addLType(lineType, look.legend, elements);
  }
  const layer = file.addLayer(name, Colors.White, lineType);
  if (item.cord !== undefined && item.role === "cord") {
    layer.trueColor = TrueColor.fromHex(paintHex(cordStyle(item.cord).paint, "light"));
  }
}

function addItem(file: DxfWriter, item: PlacedItem, layerName: string, placed: Placed): void {
  const { scale } = placed;
  const real = ([x, y]: Point) => ({
    x: (x - placed.originMm[0]) / scale,
    // Subtracted rather than negated, so that zero stays a plain zero.
    y: 0 - (y - placed.originMm[1]) / scale,
  });
  switch (item.kind) {
    case "path":
      if (item.stroke === undefined || isCasing(item)) return;
      for (const line of item.lines)
        file.addLWPolyline(
          line.map((point) => ({ point: point2d(real(point).x, real(point).y) })),
          { layerName, flags: item.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
        );
      return;
    case "facets":
      // A picture has no lines to cut or draw by.
      return;
    case "circle": {
      if (item.stroke === undefined && item.fill === undefined) return;
      const { x, y } = real(item.centre);
      file.addCircle(point3d(x, y, 0), item.radiusMm / scale, { layerName });
      return;
    }
    case "text":
      addText(file, item, layerName, real(item.at), scale);
  }
}

/** A cord is drawn twice on paper, casing under colour; here its layer has the colour. */
function isCasing(item: PlacedPath): boolean {
  return item.role === "cord" && item.cord !== undefined && item.stroke?.widthMm === CASING_MM;
}

const ALIGNMENT = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
};

function addText(
  file: DxfWriter,
  text: PlacedText,
  layerName: string,
  { x, y }: { x: number; y: number },
  scale: number,
): void {
  const at = point3d(x, y, 0);
  file.addText(at, (text.sizeMm * CAP_SHARE) / scale, plainText(text.text), {
    layerName,
    rotation: 0 - text.angleDeg,
    horizontalAlignment: ALIGNMENT[text.anchor],
    verticalAlignment: TextVerticalAlignment.BaseLine,
    secondAlignmentPoint: at,
  });
}

/** Letters that every CAD font has; nothing that could end a line of the file. */
function plainText(text: string): string {
  return text
    .replaceAll("⁄", "/")
    .replaceAll("\u00a0", " ")
    .replaceAll("−", "-")
    .replaceAll("×", "x")
    .replaceAll("→", ">")
    .replace(/[‘’]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/\p{Cc}/gu, " ");
}

import type { Text } from "../model.ts";
import type { PlacedItem } from "../placed.ts";
import { type LineOfText, lineOfText } from "./line-of-text.ts";
import { commonOf, type Scaling, toPaper } from "./scaling.ts";
import { type TakenSpots, textBox } from "./text-box.ts";
import { ASCENT_EM, DESCENT_EM, textWidthEm } from "./text-width.ts";

/** The smallest share of its size that a text may shrink to before it is left out. */
const SMALLEST_SHARE = 0.8;

/** A free text; nothing where its room is too small or where it yields to other words. */
export function placeText(text: Text, scaling: Scaling, taken: TakenSpots): PlacedItem[] {
  const sizeMm = text.paperMm * scaling.textScale;
  const line: LineOfText = {
    at: toPaper(text.at, scaling, text.shiftPaperMm),
    text: text.text,
    sizeMm,
    anchor: text.anchor ?? "start",
    baseline: text.baseline ?? "middle",
    angleDeg: text.angleDeg ?? 0,
    ...(text.strong === undefined ? {} : { strong: text.strong }),
    ...(text.ground === undefined ? {} : { ground: text.ground }),
  };
  const fitted = text.roomMm === undefined ? line : fitToRoom(line, text.roomMm, scaling.scale);
  if (fitted === undefined) return [];
  const placed = lineOfText(fitted, commonOf(text));
  const box = textBox(placed);
  const isTooLong = placed.widthMm > (text.alongMm ?? Number.POSITIVE_INFINITY) * scaling.scale;
  if (text.yields === true && (isTooLong || !taken.isFree(box))) return [];
  taken.take(box);
  return [placed];
}

function fitToRoom(
  line: LineOfText,
  roomMm: readonly [number, number],
  scale: number,
): LineOfText | undefined {
  const across = roomMm[0] * scale;
  const down = roomMm[1] * scale;
  const width = textWidthEm(line.text) * line.sizeMm;
  const height = (ASCENT_EM + DESCENT_EM) * line.sizeMm;
  const level = Math.min(across / width, down / height, 1);
  if (level >= SMALLEST_SHARE) return { ...line, sizeMm: line.sizeMm * level };
  const turned = Math.min(across / height, down / width, 1);
  if (turned >= SMALLEST_SHARE) return { ...line, sizeMm: line.sizeMm * turned, angleDeg: -90 };
  return undefined;
}

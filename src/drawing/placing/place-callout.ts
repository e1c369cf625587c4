import type { Callout, Point } from "../model.ts";
import type { PlacedItem, PlacedText } from "../placed.ts";
import { LOOKS } from "../style.ts";
import { lineOfText } from "./line-of-text.ts";
import { commonOf, type Scaling, toPaper } from "./scaling.ts";
import { type TakenSpots, textBox } from "./text-box.ts";

/** Places to try for a callout, mm beyond the wished one. */
const STEPS = [0, -4, 4, -8, 8, -12, 12];

export function placeCallout(callout: Callout, scaling: Scaling, taken: TakenSpots): PlacedItem[] {
  const common = commonOf(callout);
  const shift = callout.shiftPaperMm ?? [0, 0];
  const from = toPaper(callout.at, scaling, shift);
  const sizeMm = callout.paperMm * scaling.textScale;
  const [dx, dy] = callout.offsetPaperMm;
  const right = dx >= 0;
  const tryAt = (step: number): { end: Point; text: PlacedText } => {
    const end = toPaper(callout.at, scaling, [dx + shift[0], dy + step + shift[1]]);
    const at: Point = [end[0] + (right ? 0.8 : -0.8) * scaling.textScale, end[1]];
    const anchor = right ? "start" : "end";
    return {
      end,
      text: lineOfText(
        {
          at,
          text: callout.text,
          sizeMm,
          anchor,
          baseline: "middle",
          angleDeg: 0,
          ground: callout.ground ?? "label",
        },
        common,
      ),
    };
  };
  const tries = STEPS.map((step) => tryAt(step));
  const free = tries.find(({ text }) => taken.isFree(textBox(text))) ?? tries[0];
  if (free === undefined) return [];
  taken.take(textBox(free.text));
  const leader = LOOKS.leader.stroke;
  return [
    {
      kind: "path",
      ...common,
      role: "leader",
      lines: [[from, free.end]],
      closed: false,
      ...(leader === undefined ? {} : { stroke: leader }),
    },
    {
      kind: "circle",
      ...common,
      role: "leader",
      centre: from,
      radiusMm: 0.45 * scaling.textScale,
      fill: "pencil",
    },
    free.text,
  ];
}

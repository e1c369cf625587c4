import type { Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, figureName, lengthsIn, word } from "./action-input.ts";
import { arrow, shape, stroke } from "./kit.ts";

const [LEFT, RIGHT, HEM, TOP] = [26, 78, 66, 8];
const MOST = 7;

/** A tape from the hem line up, every row read from its end; never from row to row. */
export function drawMarkRows({ action, units }: ActionInput<"mark-rows">): ActionDrawing {
  const length = lengthsIn(units);
  const rows = action.fromHemMm;
  const last = rows.at(-1) ?? 1;
  const shown = rows.length <= MOST ? rows : [...rows.slice(0, MOST - 1), last];
  const y = (mm: number) => HEM - ((HEM - TOP - 6) * mm) / last;
  return {
    title: "Mark the rows from the hem up",
    primitives: [
      shape("liningCloth", [
        [LEFT, 2],
        [RIGHT, 2],
        [RIGHT, HEM],
        [LEFT, HEM],
      ]),
      stroke("finishedEdge", [
        [LEFT, 2],
        [LEFT, HEM],
        [RIGHT, HEM],
        [RIGHT, 2],
      ]),
      ...shown.flatMap((mm): Primitive[] => [
        stroke("markLine", [
          [LEFT, y(mm)],
          [RIGHT, y(mm)],
        ]),
        ...[LEFT, (LEFT + RIGHT) / 2, RIGHT].map(
          (x): Primitive => ({ kind: "marker", role: "ring", shape: "dot", at: [x, y(mm)], paperMm: 1.2 }),
        ),
      ]),
      ...tape(),
      ...arrow([
        [LEFT - 14, HEM - 2],
        [LEFT - 14, TOP],
      ]),
      ...[rows[0], rows.length > 1 ? last : undefined].flatMap((mm) =>
        mm === undefined ? [] : [figureName([RIGHT + 2, y(mm)], length(mm), "start")],
      ),
      word([RIGHT + 2, HEM + 1], "hem", "start"),
      word([50, 74], "always from the hem, at both sides and the middle"),
    ],
    facts: [{ label: "Rows from the hem", text: rows.map(length).join(", ") }],
  };
}

function tape(): Primitive[] {
  const marks = Array.from({ length: 15 }, (_, i): Primitive => {
    const at = HEM - i * 4;
    return stroke("dimension", [
      [LEFT - 8, at],
      [LEFT - (i % 2 === 0 ? 4.6 : 6), at],
    ]);
  });
  return [
    shape("tool", [
      [LEFT - 8, HEM + 1.4],
      [LEFT - 2, HEM + 1.4],
      [LEFT - 2, 4],
      [LEFT - 8, 4],
    ]),
    ...marks,
  ];
}

import { hemYMm } from "../../shade-plan/index.ts";
import { STYLE_SHAPES } from "../../styles/shapes/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Fact, Point, Primitive, Role } from "../model.ts";
import { flatFace } from "./cloth-marks.ts";
import { dimensionOf, line, name, note } from "./shapes.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";

/** The lower edge of the shade laid flat, seen from the back, left to right: straight but where it is cut in a curve. */
export function lowerEdge({ shade }: SheetInput): Point[] {
  const { size, grid, form } = shade;
  const width = size.finishedWidthMm;
  if (form.panel === undefined || form.panel.dipMm === 0)
    // Drawn from behind: what is left from the room lies on the right.
    return [
      [0, hemYMm(grid, size, width)],
      [width, hemYMm(grid, size, 0)],
    ];
  // As it hangs with the shade down: the first edge of the hindmost piece is the hem.
  const [hem] = STYLE_SHAPES[shade.style]({ size, grid, form }, 0).pieces;
  return (hem?.edges[0]?.points ?? []).map(([x, y]): Point => [width - x, y]).reverse();
}

export function panelFacts({ shade, units }: SheetInput): Fact[] {
  const { panel } = shade.form;
  if (panel === undefined) return [];
  return [
    ...(panel.taperMm > 0
      ? [lengthFact("Panel wider at the hem than at the top line, at each side", panel.taperMm, units)]
      : []),
    ...(panel.dipMm > 0
      ? [
          lengthFact("Ends of the lower edge above its lowest point", panel.dipMm, units),
          ...panel.curve.map(({ outMm, upMm }) =>
            lengthFact(
              `Lower edge ${lengthText(outMm, units)} from its middle, above its lowest point`,
              upMm,
              units,
            ),
          ),
        ]
      : []),
  ];
}

/** The panel between its hems, before it is drawn in between the columns: below the finished shade, one centre line. */
export function drawShapedPanel(input: SheetInput, role: Role, beyondMm: number): Primitive[] {
  const { shade, units } = input;
  const { panel } = shade.form;
  const { widthMm, lengthMm } = flatFace(shade);
  if (panel === undefined || (panel.taperMm === 0 && panel.dipMm === 0)) return [];
  const middle = shade.size.finishedWidthMm / 2;
  const topLine = shade.size.finishedLengthMm + beyondMm;
  const base = topLine + lengthMm;
  const halfHem = widthMm / 2;
  const halfTop = widthMm / 2 - panel.taperMm;
  // The flat curve is as wide as the panel; its depth stays.
  const stretch = widthMm / shade.size.finishedWidthMm;
  const curve = lowerEdge(input).map(
    ([x, y]): Point => [middle + (x - middle) * stretch, y - shade.size.finishedLengthMm + base],
  );
  const end = base - panel.dipMm;
  const outline: Point[] = [
    [middle - halfTop, topLine - beyondMm],
    ...curve,
    [middle + halfTop, topLine - beyondMm],
  ];
  return [
    line(role, outline, { closed: true }),
    line("finishedEdge", outline),
    line(
      "markLine",
      [
        [middle - halfTop, topLine],
        [middle + halfTop, topLine],
      ],
      { part: "top-line" },
    ),
    line("hidden", [
      [middle, topLine - beyondMm],
      [middle, base],
    ]),
    name([middle, topLine - beyondMm], "The panel laid flat", { shiftPaperMm: [0, -12] }),
    dimensionOf(
      { from: [middle - halfTop, topLine - beyondMm], to: [middle + halfTop, topLine - beyondMm], offset: 5 },
      units,
    ),
    dimensionOf(
      { from: [middle - halfHem, end], to: [middle - halfTop, topLine], offset: 7, part: "side" },
      units,
    ),
    dimensionOf({ from: [middle + halfHem, base], to: [middle - halfHem, base], offset: 10 }, units),
    ...(panel.dipMm > 0
      ? [
          dimensionOf(
            { from: [middle + halfHem, end], to: [middle + halfHem, base], offset: 6, label: "dip" },
            units,
          ),
        ]
      : []),
    note([middle - halfHem, end], "hem", { anchor: "end", shiftPaperMm: [-9, 3], yields: true }),
  ];
}

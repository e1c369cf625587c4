import { LAYER_NAMES, type Lay, type Layer, type LayerCut } from "../../shade/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Drawing, Fact, Point, Primitive, Role } from "../model.ts";
import { line, measure, movedOnPaper, name, note, rect } from "./shapes.ts";
import { figure, type SheetInput } from "./sheet-input.ts";

const CLOTH_ROLE: Record<Layer, Role> = {
  face: "faceCloth",
  interlining: "wrongSide",
  blackout: "wrongSide",
  lining: "liningCloth",
};

/** Between two bolts, mm on paper: their measures and names stand there. */
const GAP_PAPER_MM = 25;

/** More repeats than this would only blacken the cloth. */
const MOST_REPEATS = 200;

/** Every layer's cloth as it lies on the table, bolt end on the left: panels, cuts, grain, repeats, what is left. */
export function drawCutting(input: SheetInput): Drawing {
  const { layers } = input.shade.cloth;
  const primitives: Primitive[] = [];
  let top = 0;
  layers.forEach((cut, i) => {
    primitives.push(...movedOnPaper(drawBolt(input, cut, top), [0, i * GAP_PAPER_MM]));
    top += cut.usableWidthMm;
  });
  return {
    id: "cutting",
    title: "Cutting",
    caption:
      "Each cloth as it lies on the table, right side up, cut from the left. Check the width of your own cloth first.",
    primitives,
    facts: layers.flatMap((cut) => factsOf(cut, input)),
  };
}

function factsOf(cut: LayerCut, { units }: SheetInput): Fact[] {
  return [
    {
      label: `${LAYER_NAMES[cut.layer]}, ${cut.clothName}`,
      text: `${lengthText(cut.lengthMm, units)} off a cloth ${lengthText(cut.usableWidthMm, units)} wide`,
    },
    ...cut.panels.map((panel) => ({
      label: panel.label,
      text: `${lengthText(panel.widthMm, units)} wide × ${lengthText(panel.lengthMm, units)} long`,
    })),
  ];
}

function drawBolt(input: SheetInput, cut: LayerCut, top: number): Primitive[] {
  const length = Math.max(cut.lengthMm, cut.buyMm);
  const bolt = { x: 0, y: top, width: length, height: cut.usableWidthMm };
  const edge = (y: number) =>
    line("selvedge", [
      [0, y],
      [length, y],
    ]);
  const sizes = new Set<string>();
  return [
    rect("clothOnBolt", bolt, { part: cut.layer }),
    rect("waste", bolt),
    edge(top),
    edge(top + cut.usableWidthMm),
    ...cut.lays.flatMap((lay) => drawPanel(input, cut, lay, top, sizes)),
    ...repeatLines(cut, top, length),
    name([0, top], `${LAYER_NAMES[cut.layer]}: ${cut.clothName}`, {
      anchor: "start",
      baseline: "bottom",
      shiftPaperMm: [0, -2],
      part: cut.layer,
    }),
    ...drawMeasures(input, cut, top, length),
  ];
}

/** A panel lies with its length along the bolt, which runs to the right. */
function drawPanel(input: SheetInput, cut: LayerCut, lay: Lay, top: number, sizes: Set<string>): Primitive[] {
  const { units } = input;
  const panel = cut.panels.find((one) => one.id === lay.panelId);
  const area = { x: lay.yMm, y: top + lay.xMm, width: lay.lengthMm, height: lay.widthMm };
  const ref = { part: lay.panelId };
  const right = area.x + area.width;
  const middle: Point = [area.x + area.width / 2, area.y + area.height / 2];
  const size = `${lengthText(lay.lengthMm, units)} × ${lengthText(lay.widthMm, units)}`;
  const isLarge = lay.widthMm > 0.5 * cut.usableWidthMm && lay.lengthMm > 0.2 * cut.lengthMm;
  const isMeasured = isLarge && !sizes.has(size);
  if (isMeasured) sizes.add(size);
  const ground = CLOTH_ROLE[cut.layer];
  const grainY = middle[1] + area.height * 0.2;
  return [
    rect(ground, area, ref),
    rect("cut", area, ref),
    line("grain", [
      [area.x + area.width * 0.3, grainY],
      [right - area.width * 0.3, grainY],
    ]),
    name(middle, panel?.label ?? lay.panelId, {
      roomMm: [area.width * 0.9, area.height * 0.5],
      baseline: "bottom",
      ground,
      ...ref,
    }),
    ...(isMeasured
      ? [
          measure(
            {
              from: [area.x, area.y],
              to: [right, area.y],
              offset: -5,
              yields: true,
              ground,
              ...figure(input, `cloth.${cut.layer}-cut-length`),
              ...ref,
            },
            units,
          ),
          measure(
            {
              from: [right, area.y],
              to: [right, area.y + area.height],
              offset: -5,
              yields: true,
              ground,
              ...figure(input, `cloth.${cut.layer}-cut-width`),
              ...ref,
            },
            units,
          ),
        ]
      : [note(middle, size, { shiftPaperMm: [0, 2.6], ground, yields: true, ...ref })]),
  ];
}

function repeatLines(cut: LayerCut, top: number, length: number): Primitive[] {
  const repeat = cut.repeatMm;
  if (repeat === undefined || length / repeat > MOST_REPEATS) return [];
  const lines: Primitive[] = [];
  for (let x = repeat; x < length; x += repeat)
    lines.push(
      line("repeatLine", [
        [x, top],
        [x, top + cut.usableWidthMm],
      ]),
    );
  return lines;
}

function drawMeasures(input: SheetInput, cut: LayerCut, top: number, length: number): Primitive[] {
  const { units } = input;
  const bottom = top + cut.usableWidthMm;
  const along = (to: number, offset: number, label: string, id: string) =>
    measure(
      { from: [0, bottom], to: [to, bottom], offset, label, ...figure(input, `cloth.${cut.layer}-${id}`) },
      units,
    );
  const hasMore = cut.buyMm - cut.lengthMm > 0.5;
  return [
    measure({ from: [0, top], to: [0, bottom], offset: -6, part: cut.layer }, units),
    along(cut.lengthMm, -6, "cut", "length"),
    ...(hasMore ? [along(length, -12, "buy", "buy")] : []),
    note([length, top], "cloth on the bolt →", {
      anchor: "end",
      baseline: "bottom",
      shiftPaperMm: [0, -2],
      yields: true,
    }),
  ];
}

import { catenaryOfSag } from "../../mechanics/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { type CornerLine, headLine, type Pleat, type Swag } from "../../shade-plan/index.ts";
import { lengthText } from "../../units/index.ts";
import { listed } from "../../words/index.ts";
import type { Drawing, Point, Primitive, Role } from "../model.ts";
import { plannedBoardAllowanceMm } from "./cloth-marks.ts";
import { dimensionOf, line, note } from "./shapes.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";

/** Pleats are drawn so tall: a strip of paper to lay across the cloth. */
const PLEAT_STRIP_MM = 60;
/** Cloth that is drawn below the line of a head, to lay the template by. */
const BELOW_HEAD_MM = 40;
const CURVE_STEPS = 32;

/**
 * Templates at full size: what is cut or folded along a shape that no tape measure gives. None where a shade is all
 * straight lines and square corners.
 */
export function drawTemplates(input: SheetInput): Drawing[] {
  return [...cornerTemplate(input), ...headTemplate(input), ...pleatTemplate(input), ...swagTemplate(input)];
}

/** How many templates a shade has, without drawing them. */
export function hasTemplates({ cloth, size, form }: ShadePlan): boolean {
  return (
    cloth.corner.kind === "mitred" ||
    size.head !== undefined ||
    form.pleats.length > 0 ||
    widestScallop(form) !== undefined
  );
}

const CORNER_ROLES: Record<CornerLine["kind"], Role> = {
  edge: "cut",
  crease: "fold",
  mitre: "crease",
  trim: "stitch",
};

/** The bottom corner laid flat, right-hand side; the left one is its mirror: turn the paper over. */
function cornerTemplate({ shade, units }: SheetInput): Drawing[] {
  const { corner } = shade.cloth;
  if (corner.kind !== "mitred") return [];
  const lines = corner.lines.map(({ kind, from, to }) => line(CORNER_ROLES[kind], [from, to]));
  const mitre = corner.lines.find(({ kind }) => kind === "mitre");
  const middle: Point[] =
    mitre === undefined ? [] : [[(mitre.from[0] + mitre.to[0]) / 2, (mitre.from[1] + mitre.to[1]) / 2]];
  return [
    {
      id: "template-corner",
      title: "Template: bottom corner",
      caption:
        "Right-hand corner of the face, laid flat with its wrong side up; turn the paper over for the left one. Press every line, cut the point off where the short dashes are, fold the corner in first, then side and hem.",
      primitives: [
        ...lines,
        { kind: "marker", role: "markLine", shape: "dot", at: [0, 0], paperMm: 2 },
        note([0, 0], "finished corner", { anchor: "end", shiftPaperMm: [-2, -2] }),
        ...middle.map((point) => note(point, "fold of the corner", { shiftPaperMm: [0, -2], yields: true })),
        dimensionOf({ from: [0, corner.downMm], to: [corner.outMm, corner.downMm], offset: 6 }, units),
        dimensionOf({ from: [corner.outMm, 0], to: [corner.outMm, corner.downMm], offset: 6 }, units),
      ],
      facts: [
        lengthFact("Cloth past the side edge", corner.outMm, units),
        lengthFact("Cloth past the hem line", corner.downMm, units),
        ...(corner.angleDeg === undefined
          ? []
          : [{ label: "Slant of the fold from the hem line", text: `${Math.round(corner.angleDeg)}°` }]),
      ],
    },
  ];
}

/** The head's own line, with the cloth for the board above it. */
function headTemplate({ shade, units }: SheetInput): Drawing[] {
  const { size } = shade;
  const { head } = size;
  if (head === undefined) return [];
  const boardMm = plannedBoardAllowanceMm(shade);
  const finished = headLine(size);
  // An arc is the same on either side of its crown: half of the paper does.
  const shown =
    head.kind === "arched" ? finished.filter(([x]) => x <= size.finishedWidthMm / 2 + 1e-6) : finished;
  const lower = Math.max(...shown.map(([, y]) => y)) + BELOW_HEAD_MM;
  const cut = shown.map(([x, y]): Point => [x, y - boardMm]);
  const last = shown.at(-1)?.[0] ?? 0;
  return [
    {
      id: "template-head",
      title: "Template: head",
      caption:
        head.kind === "arched"
          ? "Left half of the head, seen from the room: lay it to the middle of the cloth, then turn it over for the right half. Cut along the upper line; the lower one comes to lie on the board’s front edge."
          : "The head, seen from the room. Cut along the upper line; the lower one comes to lie on the board’s front edge.",
      primitives: [
        line("cut", cut),
        line("finishedEdge", shown),
        line("finishedEdge", [
          [0, shown[0]?.[1] ?? 0],
          [0, lower],
          [last, lower],
          [last, shown.at(-1)?.[1] ?? 0],
        ]),
        line("hidden", [
          [0, head.fallMm],
          [last, head.fallMm],
        ]),
        note([last / 2, head.fallMm], "level of the low end: nothing rises above it", {
          shiftPaperMm: [0, 3],
          yields: true,
        }),
        dimensionOf({ from: [0, lower], to: [last, lower], offset: -6 }, units),
      ],
      facts: [
        lengthFact("Fall of the head", head.fallMm, units),
        lengthFact("Cloth for the board above the line", boardMm, units),
      ],
    },
  ];
}

/** A strip of paper with the lines of a pleat, for each width of them: a pleat at an edge may be half of the others. */
function pleatTemplate({ shade, units }: SheetInput): Drawing[] {
  const { pleats } = shade.form;
  const kinds: Pleat[][] = [];
  for (const pleat of pleats) {
    const alike = kinds.find(([first]) => first !== undefined && isAlike(first, pleat));
    if (alike === undefined) kinds.push([pleat]);
    else alike.push(pleat);
  }
  return kinds.flatMap((alike, i): Drawing[] => {
    const [first] = alike;
    if (first === undefined) return [];
    const numbers = listed(alike.map(({ number }) => String(number)));
    const which = alike.length === 1 ? `pleat ${numbers}` : `pleats ${numbers}`;
    const only = pleats.length === 1 ? "There is one pleat." : `All ${pleats.length} pleats are alike.`;
    const [left, middle, right] = first.flatMm.map((x) => x - first.flatMm[0]) as [number, number, number];
    return [
      {
        id: i === 0 ? "template-pleat" : `template-pleat-${i + 1}`,
        title: `Template: ${kinds.length === 1 ? "one pleat" : which}`,
        caption: `Lay it across the flat cloth, right side up, at the places of the marking strip: the outer lines come together over the middle one, ${lengthText(first.foldedMm, units)} folded away. ${kinds.length === 1 ? only : `It is for ${which}.`}`,
        primitives: [
          ...[0, PLEAT_STRIP_MM].map((y) =>
            line("cut", [
              [left, y],
              [right, y],
            ]),
          ),
          ...upright("crease", left, "fold to the middle"),
          ...upright("fold", middle, "middle, behind"),
          ...upright("crease", right, "fold to the middle"),
          dimensionOf({ from: [left, 0], to: [middle, 0], offset: 5 }, units),
          dimensionOf({ from: [middle, 0], to: [right, 0], offset: 5 }, units),
        ],
        facts: [
          lengthFact("Folded away in one pleat", first.foldedMm, units),
          ...alike.map(({ number, flatMm }) =>
            lengthFact(`Pleat ${number}: left line from the left edge of the flat cloth`, flatMm[0], units),
          ),
        ],
      },
    ];
  });
}

/** Of two pleats that are not told apart by any mark of a ruler. */
const ALIKE_MM = 0.05;

function isAlike({ flatMm: [left, middle, right] }: Pleat, { flatMm: [l, m, r] }: Pleat): boolean {
  return Math.abs(middle - left - (m - l)) < ALIKE_MM && Math.abs(right - middle - (r - m)) < ALIKE_MM;
}

function upright(role: Role, x: number, words: string): Primitive[] {
  return [
    line(role, [
      [x, 0],
      [x, PLEAT_STRIP_MM],
    ]),
    note([x, PLEAT_STRIP_MM], words, { angleDeg: -90, anchor: "start", shiftPaperMm: [-1.6, -2] }),
  ];
}

/** Of those that hang enough to be drawn. */
function widestScallop({ swags }: ShadePlan["form"]): Swag | undefined {
  return swags
    .filter(({ sagMm, fromMm, toMm }) => sagMm > 1 && toMm - fromMm > 1)
    .reduce<Swag | undefined>(
      (best, swag) => (best === undefined || swag.toMm - swag.fromMm > best.toMm - best.fromMm ? swag : best),
      undefined,
    );
}

/** Half of the widest scallop, as it is to hang: hold it behind the hem to see whether the gathers are even. */
function swagTemplate({ shade, units }: SheetInput): Drawing[] {
  const widest = widestScallop(shade.form);
  if (widest === undefined) return [];
  const spanMm = widest.toMm - widest.fromMm;
  const found = catenaryOfSag(spanMm, widest.sagMm);
  if (found.kind !== "hangs") return [];
  const k = found.value.parameterMm;
  const half = spanMm / 2;
  const curve = Array.from({ length: CURVE_STEPS + 1 }, (_, i): Point => {
    const x = (half * i) / CURVE_STEPS;
    return [x, widest.sagMm - k * (Math.cosh((half - x) / k) - 1)];
  });
  return [
    {
      id: "template-scallop",
      title: "Template: scallop",
      caption: `Left half of a scallop as it hangs between two columns ${lengthText(spanMm, units)} apart: hold it behind the hem and ease the gathers until each scallop follows it.`,
      primitives: [
        line("finishedEdge", curve),
        line("hidden", [
          [0, 0],
          [half, 0],
          [half, widest.sagMm],
        ]),
        note([0, 0], "column", { anchor: "start", shiftPaperMm: [1.5, -2.5] }),
        note([half, widest.sagMm], "middle", { anchor: "end", shiftPaperMm: [-2, -2] }),
        dimensionOf({ from: [half, 0], to: [half, widest.sagMm], offset: -6 }, units),
        dimensionOf({ from: [0, 0], to: [half, 0], offset: 6 }, units),
      ],
      facts: [
        lengthFact("Between columns", spanMm, units),
        lengthFact("Hangs below them by", widest.sagMm, units),
        lengthFact("Cloth across it", widest.arcMm, units),
      ],
    },
  ];
}

import type { Drawing, Point, Primitive, Role } from "../../drawing/index.ts";

type Share = readonly [across: number, down: number];

interface Measure {
  from: Share;
  to: Share;
  tag: Share;
  role: Role;
}

/** Where each measurement is taken, as shares of the opening: numbered as in the list of blanks. */
const MEASURES: readonly Measure[] = [
  { from: [0, 0.08], to: [1, 0.08], tag: [0.28, 0.08], role: "dimension" },
  { from: [0, 0.5], to: [1, 0.5], tag: [0.28, 0.5], role: "dimension" },
  { from: [0, 0.92], to: [1, 0.92], tag: [0.28, 0.92], role: "dimension" },
  { from: [0.1, 0], to: [0.1, 1], tag: [0.1, 0.27], role: "dimension" },
  { from: [0.5, 0], to: [0.5, 1], tag: [0.5, 0.27], role: "dimension" },
  { from: [0.9, 0], to: [0.9, 1], tag: [0.9, 0.27], role: "dimension" },
  { from: [0, 0], to: [1, 1], tag: [0.72, 0.72], role: "hidden" },
  { from: [1, 0], to: [0, 1], tag: [0.28, 0.72], role: "hidden" },
];

const TAG_MM = 4.4;

/** The opening with the lines along which it is measured. */
export function measuringFigure(widthMm: number, heightMm: number): Drawing {
  const at = ([across, down]: Share): Point => [across * widthMm, down * heightMm];
  const corners: Share[] = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ];
  const primitives: Primitive[] = [
    { kind: "polyline", role: "glass", points: corners.map(at), closed: true },
    ...MEASURES.map(
      ({ from, to, role }): Primitive => ({ kind: "polyline", role, points: [at(from), at(to)] }),
    ),
    { kind: "polyline", role: "finishedEdge", points: corners.map(at), closed: true },
    ...MEASURES.map(
      ({ tag }, i): Primitive => ({
        kind: "marker",
        role: "label",
        shape: "tag",
        at: at(tag),
        paperMm: TAG_MM,
        text: String(i + 1),
      }),
    ),
  ];
  return {
    id: "measuring",
    title: "Where to measure",
    caption: "The opening seen from the room. Numbers are those of the list.",
    primitives,
    facts: [
      { label: "1 to 3", text: "widths at the top, in the middle and at the bottom" },
      { label: "4 to 6", text: "heights at the left, in the centre and at the right" },
      { label: "7 and 8", text: "diagonals, corner to corner" },
    ],
  };
}

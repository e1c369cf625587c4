import { cordStyle } from "../cord-style.ts";
import type { Drawing, Primitive, Role } from "../model.ts";
import { LOOKS } from "../style.ts";
import { cordTag, line, note, rect } from "./shapes.ts";

const ROW_MM = 8;
const SAMPLE_MM = 16;
const COLUMN_MM = 62;

/** Roles that explain themselves wherever they stand. */
const SELF_EVIDENT: ReadonlySet<Role> = new Set([
  "dimension",
  "leader",
  "label",
  "note",
  "ghost",
  "cord",
  "picture",
]);

/** Roles drawn as an area in the legend; all others as a line. */
const AREAS: ReadonlySet<Role> = new Set([
  "faceCloth",
  "bandCloth",
  "liningCloth",
  "wrongSide",
  "clothOnBolt",
  "waste",
  "wall",
  "glass",
  "board",
  "housing",
  "roller",
  "toothedRoller",
  "bracket",
  "bar",
  "rib",
  "eye",
  "sleeve",
  "tube",
  "spool",
  "tubeSupport",
  "drive",
  "wand",
]);

/** One legend for all given drawings: each role once with its line or tint, then the cords. Drawn at full size. */
export function drawLegend(drawings: readonly Drawing[], columns = 2): Drawing {
  const primitives = drawings.flatMap((drawing) => drawing.primitives);
  const used = new Set(primitives.map((primitive) => primitive.role));
  const roles = (Object.keys(LOOKS) as Role[]).filter((role) => used.has(role) && !SELF_EVIDENT.has(role));
  const cords = [...new Set(primitives.flatMap(({ cord }) => (cord === undefined ? [] : [cord])))].sort(
    (a, b) => a - b,
  );
  const count = roles.length + cords.length;
  const perColumn = Math.ceil(count / columns);
  const place = (i: number) => ({ x: Math.floor(i / perColumn) * COLUMN_MM, y: (i % perColumn) * ROW_MM });
  return {
    id: "legend",
    title: "Legend",
    caption: "The same lines and tints on every sheet.",
    primitives: [
      ...roles.flatMap((role, i) => sampleOf(role, place(i))),
      ...cords.flatMap((cord, i) => cordSample(cord, place(roles.length + i))),
    ],
    facts: cords.map((cord) => {
      const { colourName, rhythmName } = cordStyle(cord);
      return { label: `Cord ${cord}`, text: `${colourName}, ${rhythmName}` };
    }),
  };
}

interface Spot {
  x: number;
  y: number;
}

function sampleOf(role: Role, { x, y }: Spot): Primitive[] {
  const words = note([x + SAMPLE_MM + 3, y], LOOKS[role].legend, { anchor: "start", role: "label" });
  if (role === "ring" || role === "screw") {
    const shape = role === "ring" ? "ring" : "cross";
    return [{ kind: "marker", role, shape, at: [x + SAMPLE_MM / 2, y], paperMm: 2.4 }, words];
  }
  if (AREAS.has(role)) return [rect(role, { x, y: y - 2.4, width: SAMPLE_MM, height: 4.8 }), words];
  return [
    line(role, [
      [x, y],
      [x + SAMPLE_MM, y],
    ]),
    words,
  ];
}

function cordSample(cord: number, { x, y }: Spot): Primitive[] {
  const { colourName, rhythmName } = cordStyle(cord);
  return [
    line(
      "cord",
      [
        [x + 5, y],
        [x + SAMPLE_MM, y],
      ],
      { cord },
    ),
    cordTag([x + 2, y], cord),
    note([x + SAMPLE_MM + 3, y], `Cord ${cord}: ${colourName}, ${rhythmName}`, {
      anchor: "start",
      role: "label",
    }),
  ];
}

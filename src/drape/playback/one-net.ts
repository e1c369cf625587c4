import { cubicBetween } from "../../mechanics/index.ts";
import { STYLE_SHAPES } from "../../styles/shapes/index.ts";
import { columnCloth } from "../column-cloth.ts";
import type { DrapeInput } from "../drape-input.ts";
import type { HangingCloth, HangingShade } from "../hanging-cloth.ts";
import { type Kin, kinOf } from "./kin.ts";

/** One net of lines that the cloth is told by at every height. */
export interface CommonNet {
  across: number;
  along: number;
  /** Of each line: how far along the cloth it lies, mm from the top line as `flatMm` counts. */
  alongMm: Float64Array;
  /** New places across in each interval of the cloth's own. */
  parts: number;
  /** 1 where rings or board hold a node. */
  held: Uint8Array;
}

/** A shade at one height, on the common net. */
export interface HangingFrame {
  raise: number;
  placesMm: Float64Array;
  /** x, y across and along the cloth at each node, as `HangingCloth.clothMm`. */
  clothMm: Float64Array;
  /** Of the cloth between each line and the next: its place from the front. */
  strands: Int32Array;
  ringsMm: Float64Array;
  /** From each node to the one below it, mm. */
  linksMm: Float64Array;
  kin: Kin;
  method: HangingShade["method"];
  /** Solved with a wide net only. */
  coarse: boolean;
}

/** Lines in a stretch that folds, and in one that never does; between lines at least, mm; lines and nodes in all. */
const IN_FOLD = 22;
const IN_FLAT = 4;
const LEAST_STEP_MM = 6;
const MOST_LINES = 150;
const WANTED_NODES = 4400;
const MOST_PARTS = 4;

/** The common net of a shade, made for the cloth as it lies raised, where it folds most. */
export function commonNet(input: DrapeInput, raised: HangingShade): CommonNet {
  const { cloth } = raised;
  const alongMm = raised.cells.length > 0 ? layAlong(input) : thinned(raised);
  const parts = Math.max(
    1,
    Math.min(MOST_PARTS, Math.round(WANTED_NODES / (alongMm.length * Math.max(1, cloth.across - 1)))),
  );
  const across = (cloth.across - 1) * parts + 1;
  return { across, along: alongMm.length, alongMm, parts, held: heldNodes(input, raised, alongMm, parts) };
}

function linesOf({ across, along, flatMm }: HangingCloth): Float64Array {
  return Float64Array.from({ length: along }, (_, j) => flatMm[2 * j * across + 1] as number);
}

/** The lines that a section was drawn with, so many at the most; those at the rings all stay. */
function thinned(raised: HangingShade): Float64Array {
  const own = linesOf(raised.cloth);
  const step = Math.ceil(own.length / MOST_LINES);
  return own.filter((_, j) => j % step === 0 || j === own.length - 1 || isAtRings(raised, j));
}

/** A line of the cloth that lies in a row of rings: level, or straight on the slant. */
function isAtRings({ cloth: { across, placesMm }, ringsMm }: HangingShade, j: number): boolean {
  const [left, right] = [3 * j * across, 3 * (j * across + across - 1)];
  const [x, y, z] = [placesMm[left] as number, placesMm[left + 1] as number, placesMm[left + 2] as number];
  const fall = ((placesMm[right + 1] as number) - y) / ((placesMm[right] as number) - x || 1);
  return Math.abs(z) < 1e-6 && ringsMm.some((ring) => Math.abs(ring[1] - (y + fall * (ring[0] - x))) < 1e-6);
}

function layAlong(input: DrapeInput): Float64Array {
  const stretches = raisedCloth(input);
  const counts = stretches.map(({ kind, arcMm }) =>
    Math.max(2, Math.min(kind === "head" ? IN_FLAT : IN_FOLD, Math.ceil(arcMm / LEAST_STEP_MM))),
  );
  const fewer = Math.min(1, MOST_LINES / counts.reduce((sum, n) => sum + n, 0));
  const lines = [0];
  stretches.forEach(({ arcMm }, index) => {
    const from = lines.at(-1) as number;
    const count = Math.max(2, Math.round((counts[index] as number) * fewer));
    for (let k = 1; k <= count; k++) lines.push(from + (arcMm * k) / count);
  });
  return Float64Array.from(lines);
}

function raisedCloth({ style, size, grid, form, folds }: DrapeInput) {
  const hang = folds === undefined ? {} : { hang: folds.cloth };
  const { section } = STYLE_SHAPES[style]({ size, grid, form, ...hang }, 1);
  return columnCloth(form, grid, section);
}

/** The board holds the first line and the rings their nodes; where the section is the same all across, the whole row. */
function heldNodes(
  input: DrapeInput,
  raised: HangingShade,
  alongMm: Float64Array,
  parts: number,
): Uint8Array {
  const { cloth } = raised;
  const across = (cloth.across - 1) * parts + 1;
  const held = new Uint8Array(across * alongMm.length).fill(1, 0, across);
  const hold = (line: number, isHeld: (i: number) => boolean) => {
    for (let i = 0; line >= 0 && i < across; i++) if (isHeld(i)) held[line * across + i] = 1;
  };
  const lineAt = (mm: number) => alongMm.findIndex((one) => Math.abs(one - mm) < 1e-3);
  if (raised.cells.length === 0) {
    linesOf(cloth).forEach((mm, j) => {
      if (isAtRings(raised, j)) hold(lineAt(mm), () => true);
    });
    return held;
  }
  const columns = input.grid.columns.map(({ xMm }) => xMm);
  const isColumn = (i: number) => {
    const x = cloth.flatMm[2 * Math.floor(i / parts)] as number;
    return i % parts === 0 && columns.some((column) => Math.abs(column - x) < 1e-3);
  };
  let ringMm = 0;
  for (const { arcMm, lowerYMm, isFree = false } of raisedCloth(input)) {
    ringMm += arcMm;
    if (lowerYMm !== undefined && !isFree) hold(lineAt(ringMm), isColumn);
  }
  return held;
}

/** A hanging shade told by the common net: between its own nodes along interpolating cubic curves. */
export function ontoNet(net: CommonNet, raise: number, shade: HangingShade, coarse = false): HangingFrame {
  const { cloth, method } = shade;
  const placesMm = new Float64Array(3 * net.across * net.along);
  const clothMm = new Float64Array(2 * net.across * net.along);
  const strands = new Int32Array(net.along);
  const own = linesOf(cloth);
  // A section is drawn with a little more or less of its cloth at each height: tucks stand out, chords are short.
  const share = (own.at(-1) as number) / (net.alongMm.at(-1) as number);
  let index = 0;
  net.alongMm.forEach((netMm, j) => {
    const mm = netMm * share;
    while (index + 2 < own.length && (own[index + 1] as number) <= mm + 1e-9) index++;
    const span = (own[index + 1] as number) - (own[index] as number);
    const t = Math.min(1, Math.max(0, (mm - (own[index] as number)) / (span || 1)));
    strands[j] = cloth.strands[t > 1e-9 ? index + 1 : index] as number;
    const lines = [-1, 0, 1, 2].map((k) => Math.min(own.length - 1, Math.max(0, index + k)));
    for (let i = 0; i < net.across; i++) {
      const base = Math.min(cloth.across - 2, Math.floor(i / net.parts));
      const s = (i - base * net.parts) / net.parts;
      writeNode(cloth, own, lines, [base, s, t], placesMm, clothMm, j * net.across + i);
    }
  });
  return {
    raise,
    placesMm,
    clothMm,
    strands,
    ringsMm: Float64Array.from(shade.ringsMm.flat()),
    linksMm: linksOf(net, placesMm),
    kin: kinOf(net, placesMm),
    method,
    coarse,
  };
}

function linksOf({ across, along }: CommonNet, placesMm: Float64Array): Float64Array {
  return Float64Array.from({ length: across * (along - 1) }, (_, node) => {
    const [upper, lower] = [3 * node, 3 * (node + across)];
    return Math.hypot(
      (placesMm[lower] as number) - (placesMm[upper] as number),
      (placesMm[lower + 1] as number) - (placesMm[upper + 1] as number),
      (placesMm[lower + 2] as number) - (placesMm[upper + 2] as number),
    );
  });
}

type Four = [number, number, number, number];

function writeNode(
  { across, placesMm, clothMm }: HangingCloth,
  alongMm: Float64Array,
  lines: readonly number[],
  [base, s, t]: readonly [base: number, s: number, t: number],
  toPlaces: Float64Array,
  toCloth: Float64Array,
  to: number,
): void {
  const steps = gaps(lines, (line) => alongMm[line] as number);
  const beside = [-1, 0, 1, 2].map((k) => Math.min(across - 1, Math.max(0, base + k)));
  for (let c = 0; c < 3; c++) {
    const down = (i: number) =>
      cubicBetween(lines.map((line) => placesMm[3 * (line * across + i) + c] as number) as Four, steps, t);
    if (s === 0 || s === 1) {
      toPlaces[3 * to + c] = down(s === 0 ? base : base + 1);
      continue;
    }
    const apart = gaps(beside, (i) => clothMm[2 * ((lines[1] as number) * across + i)] as number);
    toPlaces[3 * to + c] = cubicBetween(beside.map(down) as Four, apart, s);
  }
  const [upper, lower] = [(lines[1] as number) * across + base, (lines[2] as number) * across + base];
  for (let c = 0; c < 2; c++) {
    const at = (n: number) => clothMm[2 * n + c] as number;
    const [above, below] = [upper, lower].map((n) => at(n) + s * (at(n + 1) - at(n))) as [number, number];
    toCloth[2 * to + c] = above + t * (below - above);
  }
}

/** The three gaps between four places; at an end, or where a line stands twice, the middle one again. */
function gaps(four: readonly number[], place: (k: number) => number): [number, number, number] {
  const between = (a: number, b: number) => Math.abs(place(four[b] as number) - place(four[a] as number));
  const middle = between(1, 2) || 1;
  return [between(0, 1) || middle, middle, between(2, 3) || middle];
}

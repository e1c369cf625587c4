import { closeEdges } from "./close-edges.ts";
import { dropFamily } from "./drop-family.ts";
import { foldWeight } from "./fold-level.ts";
import { type FoldStack, type FoldStackProblem, fixedSkirt, stackFolds } from "./fold-stack.ts";
import type { LeaningProblem } from "./leaning-strip.ts";
import { type FoldCourse, leaning, newWays, openSlope, type Ways } from "./open-fold.ts";

/** The cloth of a shade as its folds feel it. */
export type FoldCloth = Omit<FoldStackProblem, "arcsMm">;

/** One stretch of cloth between two rows: cloth in it, and the height between the rows now. */
export interface FoldSpan {
  arcMm: number;
  gapMm: number;
}

/** How that cloth hangs. Points are out from the line of the rows and down from the upper row, mm. */
export interface LaidFold {
  outline: [outMm: number, downMm: number][];
  outMm: number;
  behindMm: number;
  /** Lowest point, down from the upper row. */
  bottomMm: number;
  state: "flat" | "open" | "gathered";
}

export interface LaidFolds {
  folds: LaidFold[];
  /** How far the skirt below the lowest row swings: forward positive, so 0 or less. */
  skirtRad: number;
  /** The soft fold below the lowest row, where there is one. */
  under?: LaidFold;
}

/** Limper cloth is drawn as this: its fold stands out by a few parts in a hundred of its cloth anyway. */
const LIMPEST = 4000;
/** Rows this near are together. */
const SAME_MM = 1e-6;
/**
 * All folds of a shade at one height, from the lowest up. Gathered ones hang as pressed drops (`stackFolds`); one that is on
 * its way is a heavy elastica in front of the pane and of the drops below it. Undefined where a shape was not found, so that
 * the caller can draw limp cloth and say so.
 */
export function foldsAtHeight(
  cloth: FoldCloth,
  spans: readonly FoldSpan[],
  under?: FoldSpan,
): LaidFolds | undefined {
  if (under !== undefined) return layOver(cloth, spans, under);
  const memo = memoOf(cloth);
  const laid: LaidFold[] = [];
  const stack = stackNow(memo, cloth, spans);
  for (let k = 0; k < spans.length; k++) {
    const span = spans[k] as FoldSpan;
    const fold =
      span.arcMm - span.gapMm < SAME_MM
        ? flat(span)
        : span.gapMm < SAME_MM
          ? gathered(cloth, span, stack, k)
          : open(memo, cloth, spans, k, laid[k - 1]);
    if (fold === undefined) return undefined;
    laid.push(fold);
  }
  return { folds: laid, skirtRad: stack.planesRad[0] ?? 0 };
}

/** The same over a soft fold that hangs below the lowest row for good: those above lean on its outer side. */
function layOver(cloth: FoldCloth, spans: readonly FoldSpan[], under: FoldSpan): LaidFolds | undefined {
  const memo = memoOf(cloth);
  const key = `${under.arcMm} ${under.gapMm}`;
  const known = memo.over.get(key);
  const lowest = known?.under ?? foldsAtHeight(cloth, [under])?.folds[0];
  if (lowest === undefined) return undefined;
  const above = known?.above ?? { ...cloth, skirt: fixedSkirt(outerTilt(lowest)) };
  memo.over.set(key, { under: lowest, above });
  const laid = foldsAtHeight(above, spans);
  return laid === undefined ? undefined : { ...laid, under: lowest };
}

interface Memo {
  stacks: Map<string, FoldStack>;
  ways: Ways;
  /** Soft folds below the lowest row, and the cloth as those above them feel it. */
  over: Map<string, { under: LaidFold; above: FoldCloth }>;
}

/** Shapes already found, kept as long as the cloth they belong to. */
const memos = new WeakMap<FoldCloth, Memo>();

function memoOf(cloth: FoldCloth): Memo {
  const known = memos.get(cloth);
  if (known !== undefined) return known;
  const memo: Memo = { stacks: new Map(), ways: newWays(), over: new Map() };
  memos.set(cloth, memo);
  return memo;
}

function stackOf(memo: Memo, cloth: FoldCloth, arcsMm: readonly number[]): FoldStack {
  const key = arcsMm.join(" ");
  const stack = memo.stacks.get(key) ?? stackFolds({ ...cloth, arcsMm });
  memo.stacks.set(key, stack);
  return stack;
}

/** How many folds at the bottom are gathered. */
function gatheredBelow(spans: readonly FoldSpan[], until: number): number {
  let from = until;
  while (from > 0 && (spans[from - 1] as FoldSpan).gapMm < SAME_MM) from--;
  return until - from;
}

const arcsOf = (spans: readonly FoldSpan[], from: number, to: number) =>
  spans.slice(from, to).map(({ arcMm }) => arcMm);

/** The drops at the bottom, giving way to the next fold as it closes. */
function stackNow(memo: Memo, cloth: FoldCloth, spans: readonly FoldSpan[]): FoldStack {
  let count = 0;
  while (count < spans.length && (spans[count] as FoldSpan).gapMm < SAME_MM) count++;
  const now = stackOf(memo, cloth, arcsOf(spans, 0, count));
  const next = spans[count];
  if (next === undefined || next.arcMm - next.gapMm < SAME_MM) return now;
  const after = stackOf(memo, cloth, arcsOf(spans, 0, count + 1));
  const part = leaning(closingOf(next));
  const mix = (a: readonly number[], b: readonly number[]) =>
    a.map((value, i) => value + part * ((b[i] ?? value) - value));
  return {
    ...now,
    planesRad: mix(now.planesRad, after.planesRad),
    halvesRad: mix(now.halvesRad, after.halvesRad),
  };
}

/** 0 where the fold hangs flat, 1 where its rows have met. */
function closingOf({ arcMm, gapMm }: FoldSpan): number {
  return 1 - gapMm / arcMm;
}

function flat({ arcMm }: FoldSpan): LaidFold {
  return {
    outline: [
      [0, 0],
      [0, arcMm],
    ],
    outMm: 0,
    behindMm: 0,
    bottomMm: arcMm,
    state: "flat",
  };
}

function gathered(cloth: FoldCloth, span: FoldSpan, stack: FoldStack, k: number): LaidFold | undefined {
  const slope = dropSlope(cloth, span, stack, k);
  return slope === undefined ? undefined : drawn(slope, span, "gathered");
}

/** Slopes of a drop of the stack, turned to where it hangs. */
function dropSlope(
  cloth: FoldCloth,
  { arcMm }: FoldSpan,
  stack: FoldStack,
  k: number,
): Float64Array | undefined {
  const half = stack.halvesRad[k];
  const [back, front] = [stack.planesRad[k], stack.planesRad[k + 1]];
  const family = dropFamily(foldWeight(cloth, arcMm));
  if (half === undefined || back === undefined) return undefined;
  const axis = front === undefined ? back + half : (back + front) / 2;
  return family.slope(half)?.map((slope) => slope + axis);
}

function drawn(slope: Float64Array, { arcMm, gapMm }: FoldSpan, state: LaidFold["state"]): LaidFold {
  const outline = polygon(slope, arcMm, gapMm);
  let [outMm, behindMm, bottomMm] = [0, 0, 0];
  for (const [out, down] of outline) {
    outMm = Math.max(outMm, out);
    behindMm = Math.max(behindMm, -out);
    bottomMm = Math.max(bottomMm, down);
  }
  return { outline, outMm, behindMm, bottomMm, state };
}

/** Edges of one length, as long together as the cloth, each at the mean slope of its ends and closed on the lower row. */
function polygon(slope: Float64Array, arcMm: number, gapMm: number): LaidFold["outline"] {
  const n = slope.length - 1;
  const edges = new Float64Array(n);
  for (let i = 0; i < n; i++) edges[i] = ((slope[i] as number) + (slope[i + 1] as number)) / 2;
  closeEdges(edges, (2 * gapMm) / arcMm);
  const edgeMm = arcMm / n;
  const outline: LaidFold["outline"] = [[0, 0]];
  let [out, down] = [0, 0];
  for (let i = 0; i < n; i++) {
    out += edgeMm * Math.sin(edges[i] as number);
    down += edgeMm * Math.cos(edges[i] as number);
    outline.push([out, down]);
  }
  return outline;
}

function open(
  memo: Memo,
  cloth: FoldCloth,
  spans: readonly FoldSpan[],
  k: number,
  below: LaidFold | undefined,
): LaidFold | undefined {
  const span = spans[k] as FoldSpan;
  const slope = openSlope(memo.ways, courseOf(memo, cloth, spans, k, below), closingOf(span));
  return slope === undefined ? undefined : drawn(slope, span, "open");
}

function courseOf(
  memo: Memo,
  cloth: FoldCloth,
  spans: readonly FoldSpan[],
  k: number,
  below: LaidFold | undefined,
): FoldCourse {
  const { arcMm } = spans[k] as FoldSpan;
  const weight = Math.min(LIMPEST, foldWeight(cloth, arcMm));
  const problemAt = (closing: number, tiltRad: number): LeaningProblem => ({
    weight,
    gap: 2 * (1 - closing),
    tiltRad: Math.min(MOST_TILT_RAD, tiltRad),
  });
  if (gatheredBelow(spans, k) < k) {
    // What is right below is on its way too: its own outer side is the plane.
    const tilt = below === undefined || below.state !== "open" ? 0 : outerTilt(below);
    return { key: `${arcMm} on ${tilt}`, problem: (closing) => problemAt(closing, tilt) };
  }
  const before = stackOf(memo, cloth, arcsOf(spans, 0, k));
  const after = stackOf(memo, cloth, arcsOf(spans, 0, k + 1));
  const [from, to] = [before.planesRad[k] ?? 0, after.planesRad[k] ?? 0];
  const last = dropSlope(cloth, spans[k] as FoldSpan, after, k);
  const like = k > 0 && spans[k - 1]?.arcMm === arcMm ? memo.ways.paths.get(keyOf(spans, k - 1)) : undefined;
  return {
    key: keyOf(spans, k),
    problem: (closing) => problemAt(closing, from + leaning(closing) * (to - from)),
    ...(last === undefined ? {} : { last }),
    ...(like === undefined ? {} : { like }),
  };
}

const keyOf = (spans: readonly FoldSpan[], k: number) => arcsOf(spans, 0, k + 1).join(" ");

/** Past this the cloth would lie on the fold below rather than lean on it, rad. */
const MOST_TILT_RAD = 1.4;

/** Lean of the outer side of an open fold, from its upper row to where it stands out most. */
function outerTilt({ outline }: LaidFold): number {
  const furthest = outline.reduce((best, point) => (point[0] > best[0] ? point : best));
  return Math.min(Math.PI / 3, Math.atan2(furthest[0], Math.max(1, furthest[1])));
}

/** Something that must not be cut through: a piece on the bolt. */
export interface CutBlock {
  x1: number;
  x2: number;
  y1: number;
  y2: number;
}

/** A sheet and what its cuts leave of it, in the order in which they follow each other. */
export interface CutSheet<B extends CutBlock> extends CutBlock {
  /** Undefined: nothing is cut here any more. */
  cut?: { direction: Direction; at: number; stage: number; trim: boolean };
  first?: CutSheet<B>;
  second?: CutSheet<B>;
  block?: B;
}

/**
 * Straight cuts that set blocks free, each from edge to edge of its sheet, in the fewest stages: at every stage all
 * cuts that touch no block, then the same of each part in the other direction. Undefined where blocks hold each other.
 *
 * @param sliver what is no wider stays on its block: nobody cuts so little off
 * @param fromRight columns come off from the right on
 */
export function cutTree<B extends CutBlock>(
  sheet: CutBlock,
  blocks: readonly B[],
  { direction, sliver, stage = 1, fromRight = false }: Way,
): CutSheet<B> | undefined {
  const [only] = blocks;
  if (!only) return { ...sheet };
  if (blocks.length === 1) return withoutUnwanted(sheet, only, { direction, sliver, stage, fromRight });
  const groups = apart(blocks, direction);
  const stuck = groups.length === 1 && apart(blocks, otherThan(direction)).length === 1;
  return stuck ? undefined : cutApart(sheet, groups, { direction, sliver, stage, fromRight });
}

interface Way {
  direction: Direction;
  sliver: number;
  stage?: number;
  fromRight?: boolean;
}

export type Direction = "across" | "along";

function otherThan(direction: Direction): Direction {
  return direction === "across" ? "along" : "across";
}

function cutApart<B extends CutBlock>(
  whole: CutBlock,
  groups: readonly (readonly B[])[],
  { direction, sliver, stage, fromRight }: Required<Way>,
): CutSheet<B> | undefined {
  const parts = partsOf(whole, groups, direction, sliver);
  const inner = { direction: otherThan(direction), sliver, stage: stage + 1, fromRight };
  if (fromRight && direction === "along") return columnsFromRight(parts, inner, stage);
  // From the far end, without recursion: a long bolt has thousands of layers.
  let rest: CutSheet<B> | undefined;
  for (const { group, ...part } of parts.toReversed()) {
    const first = group ? cutTree(part, group, inner) : part;
    if (!first) return undefined;
    const sheet = rest && spanning(part, rest);
    const at = direction === "across" ? part.y2 : part.x2;
    rest = sheet ? { ...sheet, cut: { direction, at, stage, trim: false }, first, second: rest } : first;
  }
  return rest;
}

/** Columns side by side: the one farthest to the right comes off first. */
function columnsFromRight<B extends CutBlock>(
  parts: readonly (CutBlock & { group?: readonly B[] })[],
  inner: Required<Way>,
  stage: number,
): CutSheet<B> | undefined {
  let rest: CutSheet<B> | undefined;
  for (const { group, ...part } of parts) {
    const second = group ? cutTree(part, group, inner) : part;
    if (!second) return undefined;
    const cut = { direction: "along" as const, at: part.x1, stage, trim: false };
    rest = rest ? { ...spanning(rest, part), cut, first: rest, second } : second;
  }
  return rest;
}

/** A sheet in the parts that cuts in one direction leave: groups of blocks, and what is lost before and behind them. */
function partsOf<B extends CutBlock>(
  { x1, x2, y1, y2 }: CutBlock,
  groups: readonly (readonly B[])[],
  direction: Direction,
  sliver: number,
): (CutBlock & { group?: readonly B[] })[] {
  const across = direction === "across";
  const limit = across ? y2 : x2;
  const part = (from: number, to: number) =>
    across ? { x1, x2, y1: from, y2: to } : { x1: from, x2: to, y1, y2 };
  const parts: (CutBlock & { group?: readonly B[] })[] = [];
  let done = across ? y1 : x1;
  for (const [k, group] of groups.entries()) {
    const start = edgeOf(group, direction, "start");
    // Cloth lost before the first piece of a layer comes off first, so that check measures begin at the piece.
    if (start - done > sliver) {
      parts.push(part(done, start));
      done = start;
    }
    const end = edgeOf(group, direction, "end");
    const isLast = k === groups.length - 1 && limit - end <= sliver;
    parts.push({ ...part(done, isLast ? limit : end), group });
    done = isLast ? limit : end;
  }
  if (done < limit) parts.push(part(done, limit));
  return parts;
}

function spanning(a: CutBlock, b: CutBlock): CutBlock {
  return {
    x1: Math.min(a.x1, b.x1),
    x2: Math.max(a.x2, b.x2),
    y1: Math.min(a.y1, b.y1),
    y2: Math.max(a.y2, b.y2),
  };
}

function edgeOf(blocks: readonly CutBlock[], direction: Direction, edge: "start" | "end"): number {
  if (direction === "across") {
    return edge === "start"
      ? blocks.reduce((least, { y1 }) => Math.min(least, y1), Number.POSITIVE_INFINITY)
      : blocks.reduce((most, { y2 }) => Math.max(most, y2), Number.NEGATIVE_INFINITY);
  }
  return edge === "start"
    ? blocks.reduce((least, { x1 }) => Math.min(least, x1), Number.POSITIVE_INFINITY)
    : blocks.reduce((most, { x2 }) => Math.max(most, x2), Number.NEGATIVE_INFINITY);
}

/** Blocks in runs that no straight cut goes through. */
export function apart<B extends CutBlock>(blocks: readonly B[], direction: Direction): B[][] {
  const across = direction === "across";
  const sorted = blocks.toSorted((a, b) => (across ? a.y1 - b.y1 : a.x1 - b.x1));
  const runs: B[][] = [];
  let end = Number.NEGATIVE_INFINITY;
  for (const block of sorted) {
    if ((across ? block.y1 : block.x1) >= end) runs.push([]);
    runs[runs.length - 1]?.push(block);
    end = Math.max(end, across ? block.y2 : block.x2);
  }
  return runs;
}

/** The cuts round one piece, those in the direction of the stage first. */
function withoutUnwanted<B extends CutBlock>(
  sheet: CutBlock,
  block: B,
  { direction, sliver, stage }: Required<Way>,
): CutSheet<B> {
  const other = otherThan(direction);
  let found: CutSheet<B> = { x1: block.x1, x2: block.x2, y1: block.y1, y2: block.y2, block };
  const sides = [other, direction].flatMap((way) => [
    { way, edge: "end" as const },
    { way, edge: "start" as const },
  ]);
  // Built from the piece outwards, so the last of these is the first cut.
  for (const { way, edge } of sides) {
    const at = edgeOf([block], way, edge);
    const across = way === "across";
    const limit = edge === "end" ? (across ? sheet.y2 : sheet.x2) : across ? sheet.y1 : sheet.x1;
    if (Math.abs(limit - at) <= sliver) continue;
    const whole: CutBlock = { x1: found.x1, x2: found.x2, y1: found.y1, y2: found.y2 };
    const waste: CutBlock = { ...whole };
    if (edge === "end") {
      if (across) [waste.y1, waste.y2, whole.y2] = [at, limit, limit];
      else [waste.x1, waste.x2, whole.x2] = [at, limit, limit];
    } else if (across) [waste.y2, waste.y1, whole.y1] = [at, limit, limit];
    else [waste.x2, waste.x1, whole.x1] = [at, limit, limit];
    found = {
      ...whole,
      cut: { direction: way, at, stage: way === direction ? stage : stage + 1, trim: true },
      first: edge === "end" ? found : waste,
      second: edge === "end" ? waste : found,
    };
  }
  return found;
}

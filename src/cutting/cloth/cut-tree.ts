/** Something that must not be cut through: a piece on the bolt. */
export interface Block {
  x1: number;
  x2: number;
  y1: number;
  y2: number;
}

/** A sheet and what its cuts leave of it, in the order in which they follow each other. */
export interface Sheet<B extends Block> extends Block {
  /** Undefined: nothing is cut here any more. */
  cut?: { direction: Direction; at: number; stage: number; trim: boolean };
  first?: Sheet<B>;
  second?: Sheet<B>;
  block?: B;
}

/**
 * Straight cuts that set blocks free, each from edge to edge of its sheet, in the fewest stages: at every stage all
 * cuts that touch no block, then the same of each part in the other direction. Undefined where blocks hold each other.
 */
export function cutTree<B extends Block>(
  sheet: Block,
  blocks: readonly B[],
  direction: Direction,
  stage = 1,
): Sheet<B> | undefined {
  const [only] = blocks;
  if (!only) return { ...sheet };
  if (blocks.length === 1) return trimmed(sheet, only, direction, stage);
  const groups = apart(blocks, direction);
  const stuck = groups.length === 1 && apart(blocks, otherThan(direction)).length === 1;
  return stuck ? undefined : cutApart(sheet, groups, direction, stage);
}

export type Direction = "across" | "along";

function otherThan(direction: Direction): Direction {
  return direction === "across" ? "along" : "across";
}

function cutApart<B extends Block>(
  sheet: Block,
  groups: readonly (readonly B[])[],
  direction: Direction,
  stage: number,
): Sheet<B> | undefined {
  const [group, ...rest] = groups;
  if (!group) return { ...sheet };
  const start = edgeOf(group, direction, "start");
  // Cloth lost before the first piece of a layer comes off first, so that check measures begin at the piece.
  if (start > (direction === "across" ? sheet.y1 : sheet.x1)) {
    const [lost, kept] = divided(sheet, direction, start);
    const second = cutApart(kept, groups, direction, stage);
    return second && { ...sheet, cut: { direction, at: start, stage, trim: false }, first: lost, second };
  }
  const at = edgeOf(group, direction, "end");
  const last = rest.length === 0 && at === (direction === "across" ? sheet.y2 : sheet.x2);
  if (last) return cutTree(sheet, group, otherThan(direction), stage + 1);
  const [one, left] = divided(sheet, direction, at);
  const first = cutTree(one, group, otherThan(direction), stage + 1);
  const second = cutApart(left, rest, direction, stage);
  return first && second && { ...sheet, cut: { direction, at, stage, trim: false }, first, second };
}

function edgeOf(blocks: readonly Block[], direction: Direction, edge: "start" | "end"): number {
  if (direction === "across") {
    return edge === "start"
      ? blocks.reduce((least, { y1 }) => Math.min(least, y1), Number.POSITIVE_INFINITY)
      : blocks.reduce((most, { y2 }) => Math.max(most, y2), Number.NEGATIVE_INFINITY);
  }
  return edge === "start"
    ? blocks.reduce((least, { x1 }) => Math.min(least, x1), Number.POSITIVE_INFINITY)
    : blocks.reduce((most, { x2 }) => Math.max(most, x2), Number.NEGATIVE_INFINITY);
}

function divided({ x1, x2, y1, y2 }: Block, direction: Direction, at: number): [Block, Block] {
  return direction === "across"
    ? [
        { x1, x2, y1, y2: at },
        { x1, x2, y1: at, y2 },
      ]
    : [
        { x1, x2: at, y1, y2 },
        { x1: at, x2, y1, y2 },
      ];
}

/** Blocks in runs that no straight cut goes through. */
export function apart<B extends Block>(blocks: readonly B[], direction: Direction): B[][] {
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
function trimmed<B extends Block>(sheet: Block, block: B, direction: Direction, stage: number): Sheet<B> {
  const other = otherThan(direction);
  let found: Sheet<B> = { x1: block.x1, x2: block.x2, y1: block.y1, y2: block.y2, block };
  const sides = [other, direction].flatMap((way) => [
    { way, edge: "end" as const },
    { way, edge: "start" as const },
  ]);
  // Built from the piece outwards, so the last of these is the first cut.
  for (const { way, edge } of sides) {
    const at = edgeOf([block], way, edge);
    const across = way === "across";
    const limit = edge === "end" ? (across ? sheet.y2 : sheet.x2) : across ? sheet.y1 : sheet.x1;
    if (limit === at) continue;
    const whole: Block = { x1: found.x1, x2: found.x2, y1: found.y1, y2: found.y2 };
    const waste: Block = { ...whole };
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

import { apart, type CutBlock, type Direction } from "./cut-tree.ts";

/** Blocks where they are to lie, by what they were. */
export type Moved<B extends CutBlock> = Map<B, { x1: number; x2: number }>;

interface Span {
  from: number;
  to: number;
}

/**
 * Blocks moved across the cloth up to each other, and all of them up to the selvedge before the cutter, within the cuts
 * that set them free: what is lost comes off behind the last of them, in one strip and not in several.
 *
 * @param span of the cloth, across it
 * @param gap lost between two blocks
 */
export function closedUp<B extends CutBlock>(
  blocks: readonly B[],
  span: Span,
  { gap, fromRight }: { gap: number; fromRight: boolean },
): Moved<B> {
  const moved: Moved<B> = new Map();
  const close = (some: readonly B[], { from, to }: Span, direction: Direction, isStuck = false): void => {
    const groups = apart(some, direction);
    const isOne = groups.length === 1;
    if (some.length === 1 || (isOne && isStuck)) {
      const { from: left, to: right } = extentOf(some);
      const by = fromRight ? to - right : from - left;
      for (const block of some) moved.set(block, { x1: block.x1 + by, x2: block.x2 + by });
      return;
    }
    if (direction === "across") {
      for (const group of groups) close(group, { from, to }, "along", isOne);
      return;
    }
    let at = fromRight ? to : from;
    for (const group of fromRight ? groups.toReversed() : groups) {
      const extent = extentOf(group);
      const width = extent.to - extent.from;
      close(group, fromRight ? { from: at - width, to: at } : { from: at, to: at + width }, "across", isOne);
      at += fromRight ? -(width + gap) : width + gap;
    }
  };
  close(blocks, span, "across");
  return moved;
}

function extentOf(blocks: readonly CutBlock[]): Span {
  return {
    from: blocks.reduce((least, { x1 }) => Math.min(least, x1), Number.POSITIVE_INFINITY),
    to: blocks.reduce((most, { x2 }) => Math.max(most, x2), Number.NEGATIVE_INFINITY),
  };
}

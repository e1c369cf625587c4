/**
 * Moves places on a line apart until each two neighbours keep a pitch, with the least squares of movement:
 * neighbours that collide form a block about their common middle (pool adjacent violators).
 * `wanted` in rising order; the order stays.
 */
export function spreadApart(wanted: readonly number[], pitch: number): number[] {
  const blocks: Block[] = [];
  for (const place of wanted) {
    let block: Block = { count: 1, middle: place };
    for (
      let before = blocks.at(-1);
      before !== undefined && collide(before, block, pitch);
      before = blocks.at(-1)
    ) {
      blocks.pop();
      block = merge(before, block);
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ count, middle }) =>
    Array.from({ length: count }, (_, i) => middle + (i - (count - 1) / 2) * pitch),
  );
}

interface Block {
  count: number;
  middle: number;
}

function merge(a: Block, b: Block): Block {
  const count = a.count + b.count;
  return { count, middle: (a.middle * a.count + b.middle * b.count) / count };
}

function collide(a: Block, b: Block, pitch: number): boolean {
  return b.middle - a.middle < ((a.count + b.count) / 2) * pitch - 1e-9;
}

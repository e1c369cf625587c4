import type { CutBlock, CutSheet } from "./cut-tree.ts";

/** How a bolt is cut up at the table. */
export interface TableOrder {
  /** So much is cut off the bolt before what lies there is cut on, in steps; one length always is. */
  most: number;
  /** Two equal lengths lie on each other and are cut on at one go. */
  doubled: boolean;
  /** Columns come off from the right selvedge on, which a left-handed cutter has before him. */
  leftHanded: boolean;
}

/** What comes next: a cut through a sheet, or a sheet that is done. */
export type OrderedStep<B extends CutBlock> =
  | {
      kind: "cut";
      sheet: CutSheet<B>;
      cut: NonNullable<CutSheet<B>["cut"]>;
      id: number;
      first: number;
      second: number;
      /** Made at one go with the cut before. */
      withLast: boolean;
    }
  | { kind: "done"; sheet: CutSheet<B>; id: number };

interface Open<B extends CutBlock> {
  sheet: CutSheet<B>;
  id: number;
}

/** Equal sheets that lie on each other. */
type Pile<B extends CutBlock> = readonly Open<B>[];

/**
 * The cuts of a bolt in the order that turns the cloth least: as many lengths as lie on the table are cut off the bolt,
 * then every cut of theirs in one direction is made before the cloth is turned for the next. Of what is open at a turn
 * nothing is left behind, so no order with the same lengths on the table has fewer turns.
 *
 * @param end where the bolt ends, in steps
 */
export function* inTableOrder<B extends CutBlock>(
  tree: CutSheet<B>,
  end: number,
  table: TableOrder,
): Generator<OrderedStep<B>> {
  const sheets = new Sheets<B>(table);
  let hanging: Open<B> | undefined = { sheet: tree, id: 0 };
  while (hanging !== undefined) {
    const piles: Open<B>[][] = [];
    let length = 0;
    while (hanging !== undefined) {
      const { sheet }: Open<B> = hanging;
      const isOnBolt = sheet.cut?.direction === "across" && sheet.second?.y2 === end;
      if (!isOnBolt || !sheet.cut) {
        piles.push([hanging]);
        hanging = undefined;
        break;
      }
      const last = piles.at(-1);
      const fitsOn = table.doubled && last?.length === 1 && isSame(last[0]?.sheet, sheet.first);
      const more = fitsOn ? 0 : sheet.cut.at - sheet.y1;
      if (piles.length > 0 && length + more > table.most) break;
      length += more;
      const [off, rest]: [Open<B>, Open<B>] = yield* sheets.cut(hanging, false);
      if (fitsOn) last?.push(off);
      else piles.push([off]);
      hanging = rest;
    }
    yield* sheets.cutUp(piles);
  }
}

class Sheets<B extends CutBlock> {
  readonly #table: TableOrder;
  #count = 1;

  constructor(table: TableOrder) {
    this.#table = table;
  }

  *cut({ sheet, id }: Open<B>, withLast: boolean): Generator<OrderedStep<B>, [Open<B>, Open<B>]> {
    const { cut, first, second } = sheet;
    if (!cut || !first || !second) throw new Error("a sheet without a cut was to be cut");
    const [one, other] = [this.#count++, this.#count++];
    yield { kind: "cut", sheet, cut, id, first: one, second: other, withLast };
    return [
      { sheet: first, id: one },
      { sheet: second, id: other },
    ];
  }

  /** All that lies on the table: one direction, then the other, until nothing is left to cut. */
  *cutUp(piles: readonly Pile<B>[]): Generator<OrderedStep<B>> {
    let waiting = piles;
    // A list, not recursion: there may be thousands.
    while (waiting.length > 0) {
      const direction = waiting.find(([top]) => top?.sheet.cut)?.[0]?.sheet.cut?.direction;
      const later: Pile<B>[] = [];
      const todo = waiting.toReversed();
      for (let pile = todo.pop(); pile; pile = todo.pop()) {
        const cut = pile[0]?.sheet.cut;
        if (cut && cut.direction !== direction) {
          later.push(pile);
          continue;
        }
        if (!cut) {
          for (const { sheet, id } of pile) yield { kind: "done", sheet, id };
          continue;
        }
        const firsts: Open<B>[] = [];
        const seconds: Open<B>[] = [];
        for (const [n, open] of pile.entries()) {
          const [one, other] = yield* this.cut(open, n > 0);
          firsts.push(one);
          seconds.push(other);
        }
        // What is nearer to the cutter comes off first.
        if (direction === "along" && this.#table.leftHanded) todo.push(firsts, seconds);
        else todo.push(seconds, firsts);
      }
      waiting = later;
    }
  }
}

/** Whether two lengths are cut in the same way, wherever they lie along the bolt. */
function isSame<B extends CutBlock>(a: CutSheet<B> | undefined, b: CutSheet<B> | undefined): boolean {
  if (!a || !b) return a === b;
  // Where they are cut follows from their parts.
  return (
    a.x1 === b.x1 &&
    a.x2 === b.x2 &&
    a.y2 - a.y1 === b.y2 - b.y1 &&
    (a.block === undefined) === (b.block === undefined) &&
    isSame(a.first, b.first) &&
    isSame(a.second, b.second)
  );
}

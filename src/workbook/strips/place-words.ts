/** A box on the page, pt from the top left. */
export interface BoxOnPage {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Words of a mark: two lines, each as wide as it is, or both on one. */
export interface MarkWords {
  /** Height of the mark's line on the page, pt. */
  y: number;
  name: string;
  text: string;
}

/** A line of words by the middle of its baseline. */
export interface PlacedWords {
  text: string;
  strong: boolean;
  x: number;
  baseline: number;
  sizePt: number;
}

export interface WordRoom {
  /** Where words may stand: beside the ruler, within the printed piece. */
  inside: BoxOnPage;
  /** What they must keep clear of: words of the joins, figures of the ruler. */
  taken: readonly BoxOnPage[];
  /** What they should not lie on: the joins, with the signs that pieces are laid by. */
  joins: readonly BoxOnPage[];
  widthOf: (text: string, sizePt: number, strong: boolean) => number;
}

const LARGE_PT = 8;
/** For a name that is a little too long for the width. */
const MIDDLE_PT = 6.5;
const SMALL_PT = 5.5;
const LEADING = 1.25;
/** Past a join with its signs and its words, where a mark lies on it, pt. */
const BEYOND_PT = [8, 14] as const;
/** From a line to the words over it, and to the top of those under it, pt. */
const OVER_PT = 3;
const UNDER_PT = 1.5;
/** Letters reach so far over and under their baseline, ems. */
const ASCENT = 0.72;
const DESCENT = 0.22;

interface Choice {
  words: PlacedWords[];
  boxes: BoxOnPage[];
}

/**
 * Words of all marks of a piece, so that none lies on another: large astride its line where there is room, else both
 * lines over or under it, else the same a little smaller, else small in a half of the width, else on one line, else beyond a join. In the order of the
 * marks.
 */
export function placeWords(marks: readonly MarkWords[], room: WordRoom): PlacedWords[] {
  const lines = marks.map(({ y }) => y);
  const taken = [...room.taken];
  return marks.flatMap((mark) => {
    const [best] = choices(mark, room)
      .map((choice, order) => ({ choice, order, cost: costOf(choice, mark.y, room, taken, lines) }))
      .sort((a, b) => a.cost - b.cost || a.order - b.order);
    if (best === undefined) return [];
    taken.push(...best.choice.boxes);
    return best.choice.words;
  });
}

/** What is wrong with a place: words on words above all, then words off the piece, then a join or a mark through them. */
function costOf(
  { boxes }: Choice,
  own: number,
  { inside, joins }: WordRoom,
  taken: readonly BoxOnPage[],
  lines: readonly number[],
): number {
  let cost = 0;
  for (const box of boxes) {
    cost += 100 * taken.filter((other) => meet(box, other)).length;
    if (
      box.left < inside.left ||
      box.right > inside.right ||
      box.top < inside.top ||
      box.bottom > inside.bottom
    )
      cost += 30;
    cost += 5 * joins.filter((join) => meet(box, join)).length;
    // A mark between words and their own line would take them for its own.
    const [from, to] = [Math.min(box.top, own), Math.max(box.bottom, own)];
    cost += lines.filter((y) => y !== own && y > from && y < to).length;
  }
  return cost;
}

function meet(a: BoxOnPage, b: BoxOnPage): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function choices(mark: MarkWords, { inside, widthOf }: WordRoom): Choice[] {
  const { y, name, text } = mark;
  const width = inside.right - inside.left;
  const at = (share: number) => inside.left + width * share;
  const choice = (
    sizePt: number,
    x: number,
    rows: readonly (readonly [string, number, boolean])[],
  ): Choice => {
    const words = rows.map(([row, baseline, strong]) => ({ text: row, strong, x, baseline, sizePt }));
    const boxes = words.map(({ text: row, baseline, strong }) => {
      const half = widthOf(row, sizePt, strong) / 2;
      return {
        left: x - half,
        right: x + half,
        top: baseline - ASCENT * sizePt,
        bottom: baseline + DESCENT * sizePt,
      };
    });
    return { words, boxes };
  };
  const two = (sizePt: number, x: number, gapPt = 0): Choice[] => {
    const step = sizePt * LEADING;
    const [over, under] = [y - OVER_PT - gapPt, y + UNDER_PT + gapPt + ASCENT * sizePt];
    return [
      choice(sizePt, x, [
        [name, over, true],
        [text, under, false],
      ]),
      choice(sizePt, x, [
        [name, over - step, true],
        [text, over, false],
      ]),
      choice(sizePt, x, [
        [name, under, true],
        [text, under + step, false],
      ]),
    ];
  };
  const one = (x: number): Choice[] =>
    [y - OVER_PT, y + UNDER_PT + ASCENT * SMALL_PT].map((baseline) =>
      choice(SMALL_PT, x, [[`${name} ${text}`, baseline, true]]),
    );
  return [
    ...two(LARGE_PT, at(0.5)),
    ...two(MIDDLE_PT, at(0.5)),
    ...[0.26, 0.74].flatMap((share) => two(SMALL_PT, at(share))),
    ...[0.5, 0.3, 0.7].flatMap((share) => one(at(share))),
    ...BEYOND_PT.flatMap((gapPt) => two(SMALL_PT, at(0.5), gapPt)),
  ];
}

import { groupedBy } from "../../figures/index.ts";
import { boughtToMeasure, type CuttingPlan, type LengthsCutting, lengthsGapWords } from "../../plan/index.ts";
import { lengthText } from "../../units/index.ts";
import { runsText } from "../../words/index.ts";
import type { Book } from "../typeset/book.ts";
import { openPage } from "../typeset/heading.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { tickCell } from "../typeset/tick-cell.ts";

/** Every bar, rib, board, tube and cord, length by length; what is alike stands on one line. */
export function lengthTickets(book: Book, cutting: CuttingPlan): void {
  openPage(book, {
    title: "Cutting to length",
    lead: "Longest first on every length. The saw line is reckoned in; mark the next cut after the one before is made.",
  });
  for (const one of cutting.lengths) lengthTicket(book, cutting, one);
}

function lengthTicket(book: Book, { units }: CuttingPlan, one: LengthsCutting): void {
  const { name, problem } = one;
  const len = (mm: number) => lengthText(mm, units);
  const bars = barRows(book, one, len);
  const own = ownRows(book, one, len);
  if (bars.length > 0) {
    table(book, {
      heading: name,
      title: `Lengths of ${name}`,
      intro: `${lengthsGapWords(one)}${problem.kerfMm > 0 ? ` Saw line ${len(problem.kerfMm)}.` : ""}`,
      columns: [
        { title: "", share: 0.9 },
        { title: "From", share: 2 },
        { title: "Cuts", share: 4.7 },
        { title: "Left", share: 1.4 },
      ],
      rows: bars,
    });
  }
  if (own.length > 0) {
    table(book, {
      heading: bars.length > 0 ? `${name}: cut to their own length` : name,
      title: `${name}: cut to their own length`,
      columns: [
        { title: "", share: 0.9 },
        { title: "For", share: 5.7 },
        { title: "Length", share: 2, align: "measure" },
      ],
      rows: own,
    });
  }
}

type LenText = (mm: number) => string;

/** `4 × ` before what there are several of. */
const times = (count: number) => (count > 1 ? `${count} × ` : "");

function barRows(book: Book, { answer, stockNames }: LengthsCutting, len: LenText): CellLike[][] {
  if (answer.kind === "infeasible") return [];
  const bars = answer.plan.bars.map(({ stockId, stockMm, cuts, offcutMm, kept }, i) => {
    const alike = groupedBy(cuts, ({ lengthMm, shade = "" }) => `${len(lengthMm)} (${shade})`);
    return {
      number: i + 1,
      from: `${stockNames[stockId] ?? stockId}, ${len(stockMm)}`,
      cuts: [...alike].map(([cut, same]) => `${times(same.length)}${cut}`).join("; "),
      left: kept ? `${len(offcutMm)}, keep` : len(offcutMm),
    };
  });
  return onceEach(
    bars,
    ({ from, cuts, left }) => `${from}|${cuts}|${left}`,
    ({ from, cuts, left }, alike) => [
      numbersCell(book, alike),
      `${times(alike.length)}${from}`,
      `${alike.length > 1 ? "each " : ""}${cuts}`,
      left,
    ],
  );
}

/** What is cut to its own length: the name of it stands over the list, so that a line says the shade and which ones. */
function ownRows(book: Book, one: LengthsCutting, len: LenText): CellLike[][] {
  const own = boughtToMeasure(one).map(({ shade = "", part = "", lengthMm }, i) => {
    // Behind its name stands which one it is of several.
    const [, n, of] = / (\d+) of (\d+)$/.exec(part.slice(one.name.length)) ?? [];
    return { number: i + 1, shade, length: len(lengthMm), n: Number(n ?? 1), of: of ?? "1" };
  });
  return onceEach(
    own,
    ({ shade, length, of }) => `${shade}|${length}|${of}`,
    ({ shade, length, of }, alike) => [
      numbersCell(book, alike),
      of === "1" ? shade : `${shade}, ${runsText(alike.map(({ n }) => n))} of ${of}`,
      `${times(alike.length)}${length}`,
    ],
  );
}

/** A line for all that are alike, in the order in which the first of each comes. */
function onceEach<T>(
  all: readonly T[],
  keyOf: (one: T) => string,
  line: (first: T, alike: readonly T[]) => CellLike[],
): CellLike[][] {
  return [...groupedBy(all, keyOf).values()].flatMap((alike) =>
    alike.slice(0, 1).map((first) => line(first, alike)),
  );
}

function numbersCell(book: Book, alike: readonly { number: number }[]): CellLike {
  return tickCell(book, runsText(alike.map(({ number }) => number)));
}

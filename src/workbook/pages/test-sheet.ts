import { PART_TESTS, type PartTest, type TestReading } from "../../diagnose/index.ts";
import { groupedBy } from "../../figures/index.ts";
import type { Plan, ShadePlan } from "../../plan/index.ts";
import { FIT_WORDS, type OwnFit } from "../../shade-plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { fineText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import type { Book } from "../typeset/book.ts";
import { openPage } from "../typeset/heading.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";

/** Height of a row to write in by hand, pt: a pencil's line and room above it. */
const WRITING_PT = 16;
/** A line to write on. */
const LINE = "_".repeat(28);
const UNIT_WORDS: Record<TestReading["unit"], string> = { mm: ", mm", force: ", kg or lb", count: "" };

/** The five tests at the bench on one page, to fill in with a pencil. */
export function testSheetPage(book: Book): void {
  openPage(book, {
    title: "Five tests at the bench",
    lead: "Keep feet and face clear of what can fall or spring back.",
  });
  paragraph(book, `Part ${LINE}  Supplier ${LINE}  Day ${LINE.slice(0, 16)}`, { after: 2 });
  for (const test of PART_TESTS) oneTest(book, test);
}

function oneTest(book: Book, { title, steps, reads, formula, where, cite }: PartTest): void {
  table(book, {
    title,
    heading: title,
    intro: `${steps.join(" ")} Then ${formula}, with ${where}. ${citeText(cite)}.`,
    columns: [
      ...reads.map(({ label, unit, times }) => ({
        title: `${label}${times === undefined ? "" : ` (${times} times)`}${UNIT_WORDS[unit]}`,
        share: times === undefined ? 1.4 : 4,
      })),
      { title: "It comes to", share: 1.2 },
    ],
    rows: [[...reads.map(() => ""), ""]],
    rowHeightPt: WRITING_PT,
    after: 2,
  });
}

/** The maker's own locks by cords, shade by shade; nothing where a shade has none of the maker's own. */
export function ownFitPages(book: Book, plan: Plan, shades: readonly ShadePlan[]): void {
  const fits = shades.flatMap(({ lift, roomName, windowName }) => {
    const fit = lift.kind === "cord-lock" ? lift.ownFit : undefined;
    const window = [roomName, windowName].filter((word) => word !== "").join(", ");
    return fit === undefined ? [] : [{ fit, window }];
  });
  if (fits.length === 0) return;
  openPage(book, {
    title: "Your locks by your cords",
    lead: `Which lock of your own goes with which cord, at each window of ${plan.jobName}.`,
  });
  // Windows with as many cords have the same table: it is printed once.
  for (const alike of groupedBy(fits, ({ fit }) => JSON.stringify(fit)).values()) {
    const [first] = alike;
    const windows = alike.map(({ window }) => window);
    if (first !== undefined) fitTable(book, windows, first.fit);
  }
}

function fitTable(book: Book, windows: readonly string[], { cordCount, cords, rows }: OwnFit): void {
  const title = windows.join("; ");
  table(book, {
    title: `Locks by cords: ${title}`,
    heading: `${title}: ${counted(cordCount, "cord")}`,
    columns: [
      { title: "Lock", share: 1.4 },
      ...cords.map(({ name, diameterMm }) => ({ title: `${name}, ${fineText(diameterMm)}`, share: 1 })),
    ],
    rows: rows.map(({ lock, cells }): CellLike[] => [
      { text: lock.name, strong: true },
      ...cells.map(({ verdict }) => FIT_WORDS[verdict]),
    ]),
    after: 4,
  });
  const reasons = rows.flatMap(({ lock, cells }) =>
    cells.flatMap(({ reasons: against }, i) =>
      against.length === 0 ? [] : [`${lock.name} with ${cords[i]?.name ?? ""}: it ${against.join("; it ")}.`],
    ),
  );
  for (const reason of reasons) paragraph(book, reason, { style: book.look.small, after: 3 });
}

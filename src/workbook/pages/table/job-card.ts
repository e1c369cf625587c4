import type { Drawing } from "../../../drawing/index.ts";
import { SEVERITY_WORDS, type Severity } from "../../../figures/index.ts";
import { EXISTING_TASK_WORDS, PLACE_NAMES, STYLE_NAMES } from "../../../job/index.ts";
import { findingCards, type Plan } from "../../../plan/index.ts";
import { purposeText } from "../../../safety/index.ts";
import { LAYER_NAMES } from "../../../shade-plan/index.ts";
import { firstSentence, listed } from "../../../words/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import type { Book } from "../../typeset/book.ts";
import { type FactLine, factList } from "../../typeset/fact-list.ts";
import { layFigure, setFigure } from "../../typeset/figure.ts";
import { section } from "../../typeset/heading.ts";
import { columns } from "../../typeset/paper.ts";
import { setLines } from "../../typeset/paragraph.ts";
import { drawSeverityMark, MARK_WIDTH, SEVERITY_PAINTS } from "../../typeset/severity-mark.ts";
import { painted, TYPE } from "../../typeset/type-scale.ts";
import { cautionBand, cautionBandHeight, childrenAndCords } from "../caution-band.ts";
import { liftWords, MOUNT_WORDS } from "../sentence.ts";
import { measuredAgain, measuredAgainHeight } from "./measured-again.ts";

const PICTURE_COLUMNS = 5;
const LEAST_PICTURE_PT = 150;
const MOST_PICTURE_PT = 290;
const MOST_GRAVE = 3;
const MOST_LINES = 2;

/** The first sheet of a shade: what it is, what to look at first, what to measure again, and what cords do. */
export function jobCard(context: ShadeContext): void {
  const { book, shade } = context;
  book.turnPage();
  book.bookmark("Job card");
  title(context);
  const grave = layGrave(context);
  const caution = childrenAndCords(shade.cautions);
  const below = graveHeight(book, grave) + measuredAgainHeight(book) + cautionBandHeight(book, caution);
  pictureAndFacts(context, book.room - below);
  setGrave(book, grave);
  measuredAgain(context);
  cautionBand(book, caution);
}

function title({ book, shade, plan }: ShadeContext): void {
  const lines = book.lines(shade.windowName, book.width, TYPE.title);
  const style = lines.length > 2 ? TYPE.tableStrong : TYPE.title;
  const set = lines.length > 2 ? book.lines(shade.windowName, book.width, style) : lines;
  const under = book.lines(whose(plan, shade.roomName), book.width, book.look.lead);
  const { y } = book;
  book.tags.mark("H1", () => setLines(book, set, book.left, y, style));
  const underY = y + set.length * style.leadingPt + 2;
  book.tags.mark("P", () => setLines(book, under, book.left, underY, book.look.lead));
  book.y = underY + under.length * book.look.lead.leadingPt + 12;
}

function whose(plan: Plan, roomName: string): string {
  return [roomName, plan.jobName, ...(plan.client === undefined ? [] : [`for ${plan.client}`])].join(" · ");
}

function pictureAndFacts(context: ShadeContext, roomPt: number): void {
  const { book } = context;
  const left = columns(book.paper, 0, PICTURE_COLUMNS);
  const right = columns(book.paper, PICTURE_COLUMNS, 12 - PICTURE_COLUMNS);
  const top = book.y;
  const height = Math.max(LEAST_PICTURE_PT, Math.min(MOST_PICTURE_PT, roomPt - 60));
  const figure = layFigure(book, picture(context.sheet("front")), left.width, height);
  setFigure(book, figure, left.x, top);
  const { size } = context.shade;
  const finished = `${context.length(size.finishedWidthMm)} × ${context.length(size.finishedLengthMm)}`;
  book.tags.mark("P", () => {
    setLines(book, ["Finished, width × length"], right.x, top, book.look.label);
    setLines(book, [finished], right.x, top + book.look.label.leadingPt, TYPE.key);
  });
  book.y = top + book.look.label.leadingPt + TYPE.key.leadingPt + 6;
  factList(book, context.shade.existing === undefined ? "What is made" : "What hangs", facts(context), {
    ...right,
    shares: [0.6, 1.6],
    after: 0,
  });
  book.y = Math.max(book.y, top + figure.heightPt) + 12;
}

/** The shade alone, large: words and the floor below it are for other sheets. */
function picture(front: Drawing): Drawing {
  const primitives = front.primitives.filter(
    ({ kind, role }) => kind !== "text" && kind !== "callout" && role !== "floor",
  );
  return { ...front, primitives };
}

function facts({ shade, plan }: ShadeContext): FactLine[] {
  const line = (label: string, text: string): FactLine => ({ label, text, strong: false });
  const { existing } = shade;
  const what = existing === undefined ? MOUNT_WORDS[shade.mount] : "hangs already";
  return [
    line("Shade", `${STYLE_NAMES[shade.style]}, ${what}`),
    ...(existing === undefined
      ? []
      : [line("To do", listed(existing.tasks.map((task) => EXISTING_TASK_WORDS[task])))]),
    ...shade.cloth.layers.map(({ layer, clothName }) => line(LAYER_NAMES[layer], clothName)),
    line("Lift", liftWords(shade.lift)),
    line("Where", placeAndPurpose(plan)),
  ];
}

function placeAndPurpose({ place, purpose }: Plan): string {
  const where = place === undefined ? "place not given" : PLACE_NAMES[place];
  return `${where}; ${purpose === undefined ? "purpose not given" : purposeText(purpose)}`;
}

interface Grave {
  severity: Severity;
  lines: string[];
}

/** The gravest causes, each once, by their first sentence. */
function layGrave({ book, findings }: ShadeContext): Grave[] {
  const width = book.width - indentOf(book);
  return findingCards(findings)
    .slice(0, MOST_GRAVE)
    .map(({ severity, says }) => ({ severity, lines: cutShort(book, firstSentence(says), width) }));
}

function indentOf(book: Book): number {
  const words = Object.values(SEVERITY_WORDS).map((word) => book.pen.widthOf(word, TYPE.tableStrong));
  return MARK_WIDTH + Math.max(...words) + 8;
}

/** As many whole words as go on the lines that a card has for it. */
function cutShort(book: Book, text: string, width: number): string[] {
  let words = text.split(" ");
  let lines = book.lines(text, width, book.look.body);
  while (lines.length > MOST_LINES && words.length > 1) {
    words = words.slice(0, -1);
    lines = book.lines(`${words.join(" ")} …`, width, book.look.body);
  }
  return lines;
}

const GRAVE_GAP = 3;

function graveHeight(book: Book, grave: readonly Grave[]): number {
  if (grave.length === 0) return 0;
  const lines = grave.reduce((sum, one) => sum + one.lines.length * book.look.body.leadingPt + GRAVE_GAP, 0);
  return lines + book.look.section.leadingPt + 20;
}

function setGrave(book: Book, grave: readonly Grave[]): void {
  if (grave.length === 0) return;
  section(book, "Look at this first", 20);
  const indent = indentOf(book);
  book.tags.open("L");
  for (const { severity, lines } of grave) {
    const { y } = book;
    const style = painted(TYPE.tableStrong, SEVERITY_PAINTS[severity]);
    book.tags.open("LI");
    book.tags.artifact(() => drawSeverityMark(book.pen, severity, book.left, y + style.leadingPt / 2));
    book.tags.mark("Lbl", () => setLines(book, [SEVERITY_WORDS[severity]], book.left + MARK_WIDTH, y, style));
    book.tags.mark("LBody", () => setLines(book, lines, book.left + indent, y, book.look.body));
    book.tags.close();
    book.y = y + lines.length * book.look.body.leadingPt + GRAVE_GAP;
  }
  book.tags.close();
  book.y += 4;
}

import { drawTag, knownOfTag } from "../../drawing/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { Caution } from "../../shade-plan/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { type FactLine, factList } from "../typeset/fact-list.ts";
import { layFullSize, setFigure } from "../typeset/figure.ts";
import { openPage, section } from "../typeset/heading.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { TYPE } from "../typeset/type-scale.ts";
import { capital, liftWords } from "./sentence.ts";

/** What goes out with the shade: its numbers, its use, its warnings and its tag. No page of it names a law. */
export function handOverSheet(context: ShadeContext): void {
  const { book, shade } = context;
  openPage(book, {
    title: shade.windowName,
    lead: "For whoever lives with this shade. Keep it: whoever washes or moves the shade needs it.",
  });
  warnings(context);
  factList(book, "This shade", numbers(context), { shares: [1, 2.6] });
  for (const { title, text } of told(shade)) {
    section(book, title, 40);
    paragraph(book, text);
  }
  tag(context);
}

/** Words of the official text where the place prescribes them, in its languages; else our own. */
function warnings({ book, shade }: ShadeContext): void {
  for (const { kind, text } of shade.tag.lines) {
    if (kind === "signal") paragraph(book, text, { style: TYPE.key, after: 2 });
    if (kind === "warning") paragraph(book, text, { style: TYPE.strong });
  }
}

function numbers({ shade, length }: ShadeContext): FactLine[] {
  const { size, grid, lift } = shade;
  const line = (label: string, text: string): FactLine => ({ label, text, strong: false });
  return [
    line("Width × length", `${length(size.finishedWidthMm)} × ${length(size.finishedLengthMm)}`),
    line("Raised, it still covers", `${length(grid.raisedHeightMm)} from its top`),
    line("Lift", capital(liftWords(lift))),
    ...shade.cloth.layers.map(({ clothName }, i) => line(i === 0 ? "Cloth" : "", clothName)),
  ];
}

/** Cautions that whoever uses it needs, without their sources; then how it is looked after. */
function told({ cautions }: ShadePlan): Pick<Caution, "title" | "text">[] {
  const named = [
    "cords-of-this-shade",
    "never-knot-together",
    "furniture-away",
    "fire",
    "weights",
    "button-cells",
  ];
  return [
    ...cautions.filter(({ id }) => named.includes(id)),
    {
      title: "Look it over",
      text: "Twice a year, pull at every cord, ring and sleeve, in every position of the shade. If a cord comes loose, can be drawn out or frays, stop using the shade and take it down until it is mended. Before it is washed, take it down, and note which cord belongs to which ring.",
    },
    {
      title: "If it moves to another window",
      text: "The devices for its cords go with it and are fixed again before it is used, as their own instructions show. Heights above the floor, and above whatever a child can stand on, are then other ones. Local rules, those instructions and licensed practice come before this sheet.",
    },
  ].map(({ title, text }) => ({ title: capital(title), text }));
}

/** The tag at full size, without the words beside it that are for its maker. */
function tag({ book, plan, shade, createdOn }: ShadeContext): void {
  const caption = "Print at 100 % and cut along the line.";
  const sides = drawTag(shade, knownOfTag(plan, shade, createdOn)).map((drawing) =>
    layFullSize(book, { ...drawing, caption, facts: [] }),
  );
  section(book, "Its tag, to cut out", sides[0]?.heightPt);
  for (const side of sides) {
    book.need(side.heightPt);
    setFigure(book, side, book.left, book.y);
    book.y += side.heightPt + 18;
  }
}

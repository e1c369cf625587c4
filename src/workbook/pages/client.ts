import { moneyText } from "../../figures/index.ts";
import { PLACE_NAMES, PURPOSE_NAMES, STYLE_NAMES } from "../../job/index.ts";
import type { Plan, ShadePlan } from "../../plan/index.ts";
import { LAYER_NAMES } from "../../shade-plan/index.ts";
import { lengthText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import type { Book } from "../typeset/book.ts";
import { type FactLine, factList } from "../typeset/fact-list.ts";
import { figureRow } from "../typeset/figure.ts";
import { openPage, section } from "../typeset/heading.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { TYPE } from "../typeset/type-scale.ts";
import { cautionBand, childrenAndCords } from "./caution-band.ts";
import { capital, liftWords, MOUNT_WORDS } from "./sentence.ts";

const PICTURE_PT = 170;

/** For whom it is made: what it looks like, what it is, how its cords bear on children, and its price. */
export function clientSheet(context: ShadeContext, alone: boolean): void {
  const { book, shade, plan } = context;
  openPage(book, { title: shade.windowName, lead: whose(plan, shade) });
  figureRow(
    book,
    [0, 0.5].map((raise) => context.sheet("picture", raise)),
    PICTURE_PT,
  );
  factList(book, "What is made", whatIsMade(context), { shares: [1, 2.6] });
  if (alone) price(book, plan);
  section(book, "Cords and children", 60);
  for (const words of cordChoices(context)) paragraph(book, words, { after: 4 });
  book.y += 8;
  cautionBand(book, childrenAndCords(shade.cautions));
}

function whose(plan: Plan, { roomName }: ShadePlan): string {
  return [roomName, ...(plan.client === undefined ? [] : [`for ${plan.client}`])].join(" · ");
}

function whatIsMade({ shade, length }: ShadeContext): FactLine[] {
  const { size, grid } = shade;
  const line = (label: string, text: string): FactLine => ({ label, text, strong: false });
  return [
    line("Shade", `${capital(STYLE_NAMES[shade.style])}, ${MOUNT_WORDS[shade.mount]}`),
    { label: "Width × length", text: `${length(size.finishedWidthMm)} × ${length(size.finishedLengthMm)}` },
    line("Raised, it still covers", `${length(grid.raisedHeightMm)} from its top`),
    ...shade.cloth.layers.map(({ layer, clothName }) => line(LAYER_NAMES[layer], clothName)),
    line("Worked", liftWords(shade.lift)),
  ];
}

/** What was chosen, in plain words: the place, the lift and its cords, and how many rules it stands against. */
function cordChoices({ plan, shade }: ShadeContext): string[] {
  const { place, purpose } = plan;
  const where = place === undefined ? "a place not given" : PLACE_NAMES[place];
  const why = purpose === undefined ? "a purpose not given" : PURPOSE_NAMES[purpose].toLowerCase();
  const cords = shade.cautions.find(({ id }) => id === "cords-of-this-shade");
  const failed = shade.safety.counts.failed;
  return [
    ...(cords === undefined ? [] : [cords.text]),
    `Planned for ${where}, ${why}. ${
      failed === 0
        ? "None of the rules on cords that were read was shown to fail; that proves nothing about the shade on the wall."
        : `Of the rules on cords that were read, ${failed} failed: ask for a lift without free cords.`
    }`,
  ];
}

/** One sum; what has no price yet is counted, not listed: its names are the maker’s. */
function price(book: Book, { cost }: Plan): void {
  const open = cost.unpriced.length;
  factList(book, "Price", [{ label: "Price, tax included", text: moneyText(cost.total, cost.currency) }], {
    shares: [1, 2.6],
    after: open === 0 ? 10 : 4,
  });
  if (open > 0)
    paragraph(book, `Not final: ${counted(open, "thing")} still without a price.`, { style: TYPE.small });
}

/** The job for its client: all shades on a sheet, and one price. */
export function clientFront(book: Book, plan: Plan, shades: readonly ShadePlan[]): void {
  openPage(book, {
    title: plan.jobName,
    ...(plan.client === undefined ? {} : { lead: `For ${plan.client}` }),
  });
  table(book, {
    title: "Shades of the job",
    columns: [
      { title: "Window", share: 2.4 },
      { title: "Room", share: 1.8 },
      { title: "Shade", share: 1.6 },
      { title: "Width", share: 1.2, align: "measure" },
      { title: "Length", share: 1.2, align: "measure" },
      { title: "Cloth", share: 2.4 },
    ],
    rows: shades.map((shade): CellLike[] => [
      { text: shade.windowName, strong: true },
      shade.roomName,
      STYLE_NAMES[shade.style],
      lengthText(shade.size.finishedWidthMm, plan.units),
      lengthText(shade.size.finishedLengthMm, plan.units),
      shade.cloth.layers[0]?.clothName ?? "",
    ]),
  });
  cautionBand(book, childrenAndCords(shades[0]?.cautions ?? []));
  price(book, plan);
}

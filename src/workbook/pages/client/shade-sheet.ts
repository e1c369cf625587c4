import { STYLE_NAMES } from "../../../job/index.ts";
import type { Plan, ShadePlan } from "../../../plan/index.ts";
import { LAYER_NAMES } from "../../../shade-plan/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import { type FactLine, factList } from "../../typeset/fact-list.ts";
import { figureRow } from "../../typeset/figure.ts";
import { openPage, section } from "../../typeset/heading.ts";
import { paragraph } from "../../typeset/paragraph.ts";
import { cautionBand, childrenAndCords } from "../caution-band.ts";
import { capital, liftWords, MOUNT_WORDS } from "../sentence.ts";
import { childSafetyChoices } from "./choices.ts";

const PICTURE_PT = 170;
/** How it was worked out is for its maker. */
const PICTURES = [
  { raise: 0, title: "As it hangs, let down" },
  { raise: 0.5, title: "As it hangs, half raised" },
];

/** For whom it is made: what it looks like, what it is, how its cords bear on children, and its price. */
export function clientSheet(context: ShadeContext): void {
  const { book, shade, plan } = context;
  openPage(book, { title: shade.windowName, lead: whose(plan, shade) });
  figureRow(
    book,
    PICTURES.map(({ raise, title }) => ({ ...context.sheet("picture", raise), title, caption: "" })),
    PICTURE_PT,
  );
  factList(book, "What is made", whatIsMade(context), { shares: [1, 2.6] });
  section(book, "Cords and children", 60);
  for (const words of cordsHere(shade, childSafetyChoices(plan, [shade])))
    paragraph(book, words, { after: 4 });
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
    line("Lift", capital(liftWords(shade.lift))),
  ];
}

/** What its cords are, where a caution says so, and what was chosen. */
function cordsHere({ cautions }: ShadePlan, choices: string[]): string[] {
  const cords = cautions.find(({ id }) => id === "cords-of-this-shade");
  return cords === undefined ? choices : [cords.text, ...choices];
}

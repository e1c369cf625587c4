import type { ShadeContext } from "../shade-context.ts";
import { factList } from "../typeset/fact-list.ts";
import { figureBeside } from "../typeset/figure.ts";
import { openPage } from "../typeset/heading.ts";

const FIGURE_PT = 400;

const LEADS = {
  lock: "What the hand pulls at every height, and what each eye and the lock ask for on top of the weight.",
  cleat:
    "What the hand pulls at every height, what each eye asks for on top of the weight, and what the cleat holds.",
  tube: "What hangs on the cords at every height, and what the hand adds.",
} as const;

/** What the hand pulls at every height, and which place of the rig asks for how much of it. */
export function forcesPage(context: ShadeContext): void {
  const { book, shade } = context;
  openPage(book, {
    title: "Pull and weight",
    lead: LEADS[shade.lift.takeUp],
  });
  const drawing = context.sheet("force", 1);
  figureBeside(book, drawing, { figureColumns: 7, maxHeight: FIGURE_PT }, (right) => {
    factList(book, "Forces with the shade raised", drawing.facts, {
      ...right,
      heading: "Shade raised",
      shares: [1.5, 1],
    });
  });
}

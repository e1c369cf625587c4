import type { ShadeContext } from "../shade-context.ts";
import { figureRow } from "../typeset/figure.ts";
import { type ChapterHead, openChapter } from "../typeset/heading.ts";
import { stepChapters } from "./steps.ts";

/** Up on the wall: fixing, levelling, training the folds. */
export function hangPage(context: ShadeContext, head: ChapterHead): void {
  const { book } = context;
  openChapter(book, {
    ...head,
    lead: "Two people and a spirit level. Keep the cords out of reach while you work.",
  });
  figureRow(
    book,
    [0, 0.5, 1].map((raise) => context.sheet("side", raise)),
    240,
  );
  stepChapters(context, ["hang", "level", "train"]);
}

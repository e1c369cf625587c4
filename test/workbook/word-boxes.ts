import type { ReadPage, TextRun } from "./read-pdf.ts";

/** The place of a run of letters on its page, pt from the top left. */
export interface WordBox {
  text: string;
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/**
 * Height of small letters and depth of a comma, in ems: what of a word must never lie on another. Capitals and descenders
 * of two lines may come nearer than that without harm.
 */
const OVER_EM = 0.64;
const UNDER_EM = 0.12;
const SIDE_PT = 0.6;

/** A run that stands level or on its end; none for one on a slope. */
function boxOf({ text, x, y, width, sizePt, angleDeg }: TextRun): WordBox | undefined {
  if (text.trim() === "") return undefined;
  const [over, under] = [OVER_EM * sizePt, UNDER_EM * sizePt];
  // The white at both ends of a run belongs to no letter.
  const lead = (text.length - text.trimStart().length) * 0.2 * sizePt + SIDE_PT;
  const trail = (text.length - text.trimEnd().length) * 0.2 * sizePt + SIDE_PT;
  if (Math.abs(angleDeg) < 1)
    return { text, left: x + lead, right: x + width - trail, top: y - over, bottom: y + under };
  if (Math.abs(angleDeg + 90) < 1)
    return { text, left: x - over, right: x + under, top: y - width + trail, bottom: y - lead };
  return undefined;
}

export function wordBoxes({ runs }: ReadPage): WordBox[] {
  return runs.flatMap((run) => boxOf(run) ?? []);
}

/** Pairs of words that lie on each other. */
export function overprinted(page: ReadPage): [string, string][] {
  const boxes = wordBoxes(page).sort((a, b) => a.top - b.top);
  return boxes.flatMap((one, i) => {
    const found: [string, string][] = [];
    for (const other of boxes.slice(i + 1)) {
      if (other.top >= one.bottom) break;
      if (other.left < one.right && one.left < other.right) found.push([one.text, other.text]);
    }
    return found;
  });
}

/** Words that leave the part of the page which every printer reaches. */
export function clipped(page: ReadPage, marginPt: number): string[] {
  return wordBoxes(page)
    .filter(
      ({ left, right, top, bottom }) =>
        left < marginPt ||
        right > page.widthPt - marginPt ||
        top < marginPt - 12 ||
        bottom > page.heightPt - marginPt + 12,
    )
    .map(({ text }) => text);
}

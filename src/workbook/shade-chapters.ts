import type { ChapterHead } from "./heading.ts";
import { boardPage } from "./pages/board.ts";
import { cordsPage } from "./pages/cords.ts";
import { cuttingPage } from "./pages/cutting.ts";
import { findingsPage } from "./pages/findings.ts";
import { hangPage } from "./pages/hang.ts";
import { lockPage } from "./pages/lock.ts";
import { markingPage } from "./pages/marking.ts";
import { measurePage } from "./pages/measure.ts";
import { shoppingPage } from "./pages/shopping.ts";
import { stepsPage } from "./pages/steps.ts";
import { stripsPages } from "./pages/strips.ts";
import { workingsPage } from "./pages/workings.ts";
import type { ShadeContext } from "./shade-context.ts";

interface ShadeChapter {
  title: string;
  set: (context: ShadeContext, head: ChapterHead) => void;
}

/** The chapters of one shade, in the order of the work. */
const CHAPTERS: readonly ShadeChapter[] = [
  { title: "Measure", set: measurePage },
  { title: "Cutting", set: cuttingPage },
  { title: "Marking plan", set: markingPage },
  { title: "Board", set: boardPage },
  { title: "Lock and threading", set: lockPage },
  { title: "Cords", set: cordsPage },
  { title: "Step by step", set: stepsPage },
  { title: "Hang and level", set: hangPage },
  { title: "Shopping and cost", set: shoppingPage },
  { title: "Findings", set: findingsPage },
  { title: "Workings", set: workingsPage },
  { title: "Marking strips, full size", set: stripsPages },
];

export interface NumberedChapter extends ChapterHead {
  set: ShadeChapter["set"];
}

/** The same with numbers, and with anchors that begin with the shade’s. */
export function chaptersOf(shadeAnchor: string): NumberedChapter[] {
  return CHAPTERS.map(({ title, set }, i) => ({
    number: i + 1,
    title,
    anchor: `${shadeAnchor}-${i + 1}`,
    set,
  }));
}

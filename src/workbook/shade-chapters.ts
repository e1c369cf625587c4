import { hasTemplates } from "../drawing/index.ts";
import type { ShadePlan } from "../plan/index.ts";
import { boardPage } from "./pages/board.ts";
import { childSafetyPage } from "./pages/child-safety.ts";
import { cordsPage } from "./pages/cords.ts";
import { cuttingPage } from "./pages/cutting.ts";
import { findingsPage } from "./pages/findings.ts";
import { forcesPage } from "./pages/forces.ts";
import { hangPage } from "./pages/hang.ts";
import { lockPage } from "./pages/lock.ts";
import { markingPage } from "./pages/marking.ts";
import { measurePage } from "./pages/measure.ts";
import { shoppingPage } from "./pages/shopping.ts";
import { stepsPage } from "./pages/steps.ts";
import { stripsPages } from "./pages/strips.ts";
import { tagPage } from "./pages/tag.ts";
import { templatesPages } from "./pages/templates.ts";
import { tubePage } from "./pages/tube.ts";
import { workingsPage } from "./pages/workings.ts";
import { hasLock, hasTube, type ShadeContext } from "./shade-context.ts";
import type { ChapterHead } from "./typeset/heading.ts";

interface ShadeChapter {
  title: string;
  set: (context: ShadeContext, head: ChapterHead) => void;
}

/** What takes the cords up has a page of its own. */
const LOCK: ShadeChapter = {
  title: "Lock and threading",
  set: (context, head) => {
    if (hasLock(context)) lockPage(context, head);
  },
};
const TUBE: ShadeChapter = {
  title: "Tube, spools and drive",
  set: (context, head) => {
    if (hasTube(context)) tubePage(context, head);
  },
};

/** The chapters of one shade, in the order of the work. */
const chapters = (shade: ShadePlan): readonly ShadeChapter[] => [
  { title: "Child safety", set: childSafetyPage },
  { title: "Measure", set: measurePage },
  { title: "Cutting", set: cuttingPage },
  { title: "Marking plan", set: markingPage },
  { title: "Board", set: boardPage },
  shade.lift.kind === "cord-lock" ? LOCK : TUBE,
  { title: "Cords", set: cordsPage },
  { title: "Pull and weight", set: forcesPage },
  { title: "Step by step", set: stepsPage },
  { title: "Hang and level", set: hangPage },
  { title: "Shopping and cost", set: shoppingPage },
  { title: "Findings", set: findingsPage },
  { title: "Workings", set: workingsPage },
  { title: "Child-safety tag, full size", set: tagPage },
  { title: "Marking strips, full size", set: stripsPages },
  // A shade of straight lines and square corners needs none.
  ...(hasTemplates(shade) ? [{ title: "Templates, full size", set: templatesPages }] : []),
];

export interface NumberedChapter extends ChapterHead {
  set: ShadeChapter["set"];
}

/** The same with numbers, and with anchors that begin with the shade’s. */
export function chaptersOf(shadeAnchor: string, shade: ShadePlan): NumberedChapter[] {
  return chapters(shade).map(({ title, set }, i) => ({
    number: i + 1,
    title,
    anchor: `${shadeAnchor}-${i + 1}`,
    set,
  }));
}

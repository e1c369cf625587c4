import { Rail, type RailEntry, type RailGroup } from "../frame/rail.tsx";
import { goToSection } from "../sections/go-to.ts";
import { questionsOf } from "../sections/questions.ts";
import {
  AFTER_WINDOWS,
  BEFORE_WINDOWS,
  OF_WINDOW,
  OF_WORKSHOP,
  SECTIONS,
  type SectionId,
  sectionNumber,
} from "../sections/sections.ts";
import { waitingIn } from "../sections/what-is-open.ts";
import { look, usePlanner } from "../state/store.ts";
import { WorkbookNow } from "../workbook/workbook-now.tsx";
import { useShade } from "./shade-context.tsx";

const openHere = (id: string) => goToSection(id as SectionId);
const openThere = (id: string) => look({ jump: id as SectionId });

/** The sections of this window with what waits in each, and between those of its job. */
export function ShadeRail() {
  const { job, plan, window, place } = useShade();
  const open = usePlanner((planner) => planner.view.open);
  const questions = questionsOf(job, place);
  const waiting = waitingIn(plan.findings, questions);
  const done = window.ticks?.length ?? 0;
  const ofWindow = OF_WINDOW.map(
    (id): RailEntry => ({
      key: id,
      number: sectionNumber(id),
      title: SECTIONS[id].title,
      waiting: waiting[id],
      open: open[id] === true,
      onPress: openHere,
      ...(id === "make" && done > 0 ? { note: `${done} of ${plan.steps.length} done` } : {}),
    }),
  );
  const ofJob = (id: SectionId): RailEntry => ({
    key: id,
    number: sectionNumber(id),
    title: SECTIONS[id].title,
    href: `/job/${job.id}`,
    onPress: openThere,
  });
  const groups: RailGroup[] = [
    { title: job.name, entries: BEFORE_WINDOWS.map(ofJob) },
    { title: window.name, entries: ofWindow },
    { title: "All windows", entries: AFTER_WINDOWS.map(ofJob) },
    { title: "Workshop", entries: OF_WORKSHOP.map(ofJob) },
  ];
  const [question] = questions;
  const troubled = OF_WINDOW.find((id) => (waiting[id]?.stop ?? 0) + (waiting[id]?.fix ?? 0) > 0);
  const next =
    question !== undefined
      ? { words: question.text, onPress: () => goToSection(question.section, question.pointer) }
      : troubled !== undefined
        ? { words: `what to fix in ${SECTIONS[troubled].title}`, onPress: () => goToSection(troubled) }
        : { words: SECTIONS.make.title, onPress: () => goToSection("make") };
  return (
    <Rail groups={groups} next={next}>
      <WorkbookNow shade={{ id: window.id, name: window.name }} />
    </Rail>
  );
}

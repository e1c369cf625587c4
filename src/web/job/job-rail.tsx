import { memo, useMemo } from "react";
import { Link } from "wouter";
import { type Finding, isGrave, type Severity } from "../../figures/index.ts";
import type { Job } from "../../job/index.ts";
import { findingCards } from "../../plan/index.ts";
import { Rail, type RailEntry, type RailGroup } from "../frame/rail.tsx";
import { goToSection } from "../sections/go-to.ts";
import { questionsOf } from "../sections/questions.ts";
import {
  AFTER_WINDOWS,
  BEFORE_WINDOWS,
  OF_WORKSHOP,
  SECTIONS,
  type SectionId,
  sectionNumber,
} from "../sections/sections.ts";
import { shownByShade, type Waiting } from "../sections/what-is-open.ts";
import { useJob } from "../state/fields.ts";
import type { JobSummary } from "../state/job-summary.ts";
import { usePlanner } from "../state/store.ts";
import { WorkbookNow } from "../workbook/workbook-now.tsx";

/** Windows that the rail names; a contract has its list under Rooms and windows. */
const MOST_WINDOWS = 24;

const openHere = (id: string) => goToSection(id as SectionId);

/** The sections of the job and its windows, with what waits in each. */
export const JobRail = memo(function JobRail({ summary }: { summary: JobSummary | undefined }) {
  const job = useJob();
  const open = usePlanner((planner) => planner.view.open);
  const findings = summary?.findings;
  const counts = useMemo(() => countsByShade(findings ?? []), [findings]);
  const causes = useMemo(() => countOf(findingCards((findings ?? []).filter(isGrave))), [findings]);
  const entry = (id: SectionId): RailEntry => ({
    key: id,
    number: sectionNumber(id),
    title: SECTIONS[id].title,
    open: open[id] === true,
    onPress: openHere,
    ...(id === "place" ? { waiting: waitingAt(0, 0, unsaid(job)) } : {}),
    ...(id === "findings" ? { waiting: waitingAt(causes.stop, causes.fix, 0) } : {}),
  });
  const windows = useMemo(() => windowsOf(job.rooms), [job.rooms]);
  const ofWindows = windows.slice(0, MOST_WINDOWS).map(({ window, r, w }): RailEntry => {
    const found = counts.get(window.id);
    const questions = questionsOf(job, { room: r, window: w }).filter(
      ({ pointer }) => !JOBS_OWN.has(pointer),
    );
    return {
      key: window.id,
      title: window.name,
      href: `/job/${job.id}/${window.id}`,
      waiting: waitingAt(found?.stop ?? 0, found?.fix ?? 0, questions.length),
    };
  });
  const groups: RailGroup[] = [
    { title: job.name, entries: BEFORE_WINDOWS.map(entry) },
    { title: "Windows", entries: ofWindows },
    { title: "All windows", entries: AFTER_WINDOWS.map(entry) },
    { title: "Workshop", entries: OF_WORKSHOP.map(entry) },
  ];
  const asking = firstAsking(job, windows);
  const next =
    unsaid(job) > 0
      ? { words: "where it will hang and what for", onPress: () => goToSection("place") }
      : asking !== undefined
        ? {
            words: `${asking.window.name}: ${asking.question.text}`,
            href: `/job/${job.id}/${asking.window.id}`,
          }
        : causes.stop + causes.fix > 0
          ? { words: "what was found", onPress: () => goToSection("findings") }
          : { words: SECTIONS.print.title, onPress: () => goToSection("print") };
  return (
    <Rail groups={groups} next={next}>
      <WorkbookNow />
      <Link href="/ask" className="button">
        Ask a question
      </Link>
    </Rail>
  );
});

/** The first window of which something was not said, and what it is. */
function firstAsking(job: Job, windows: ReturnType<typeof windowsOf>) {
  for (const { window, r, w } of windows) {
    const questions = questionsOf(job, { room: r, window: w });
    const question = questions.find(({ pointer }) => !JOBS_OWN.has(pointer));
    if (question !== undefined) return { window, question };
  }
  return undefined;
}

/** Asked once for the job, not at each window. */
const JOBS_OWN: ReadonlySet<string> = new Set(["/place", "/purpose"]);

function unsaid({ place, purpose }: { place?: unknown; purpose?: unknown }): number {
  return [place, purpose].filter((one) => one === undefined).length;
}

function waitingAt(stop: number, fix: number, questions: number): Waiting {
  return { stop, fix, questions };
}

function countsByShade(findings: readonly Finding[]): Map<string, { stop: number; fix: number }> {
  const grave = findings.filter(isGrave);
  return new Map([...shownByShade(grave)].map(([id, shown]) => [id, countOf(shown)]));
}

function countOf(shown: readonly { severity: Severity }[]): { stop: number; fix: number } {
  const of = (one: Severity) => shown.filter(({ severity }) => severity === one).length;
  return { stop: of("stop"), fix: of("fix") };
}

function windowsOf(rooms: Job["rooms"]) {
  return rooms.flatMap((room, r) => room.windows.map((window, w) => ({ window, r, w })));
}

import { useEffect } from "react";
import { CuttingChapter } from "../cutting/cutting-chapter.tsx";
import { useCutting } from "../cutting/use-cutting.ts";
import { Colophon } from "../frame/colophon.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { useJob } from "../state/fields.ts";
import { look, openSection, usePlanner } from "../state/store.ts";
import { useJobSummary } from "../state/use-job-summary.ts";
import { ClothsChapter } from "./cloths-chapter.tsx";
import { CostChapter } from "./cost-chapter.tsx";
import { Elevations } from "./elevations.tsx";
import { FindingsChapter } from "./findings-chapter.tsx";
import { HabitsChapter } from "./habits-chapter.tsx";
import { HardwareChapter } from "./hardware-chapter.tsx";
import { JobHeading } from "./job-heading.tsx";
import { PlaceChapter } from "./place-chapter.tsx";
import { RatesChapter } from "./rates-chapter.tsx";
import { RoomsChapter } from "./rooms-chapter.tsx";
import { StockChapter } from "./stock-chapter.tsx";
import { TakeAway } from "./take-away.tsx";
import "./job-page.css";

/** The whole job on one page: its windows on one floor, what was found, what to buy, what it costs. */
export function JobPage() {
  const job = useJob();
  const { summary, stale } = useJobSummary();
  useJump();
  useCutting();
  return (
    <>
      <TopBar withJob>
        <span aria-current="page">{job.name}</span>
      </TopBar>
      <Page className="page job-page" title={job.name} busy={stale}>
        <h1 className="hidden-words">{job.name}</h1>
        <JobHeading />
        <Elevations />
        <div className="job-columns">
          <div className="job-chapters">
            <RoomsChapter number={1} summary={summary} />
            <PlaceChapter number={2} />
            <FindingsChapter number={3} summary={summary} />
            <CuttingChapter number={4} />
            <CostChapter number={5} summary={summary} />
            <ClothsChapter number={6} />
            <HardwareChapter number={7} />
            <StockChapter number={8} />
            <HabitsChapter number={9} />
            <RatesChapter number={10} />
          </div>
          <TakeAway />
        </div>
      </Page>
      <Colophon />
    </>
  );
}

/** Comes from another page to a chapter of this one. */
function useJump() {
  const jump = usePlanner((planner) => planner.view.jump);
  useEffect(() => {
    if (jump === undefined) return;
    openSection(jump, true);
    look({ jump: undefined });
    document.getElementById(jump)?.scrollIntoView();
  }, [jump]);
}

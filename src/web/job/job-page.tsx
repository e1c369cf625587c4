import { useEffect } from "react";
import { CuttingChapter } from "../cutting/cutting-chapter.tsx";
import { useCutting } from "../cutting/use-cutting.ts";
import { Colophon } from "../frame/colophon.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { goToSection } from "../sections/go-to.ts";
import { useJob } from "../state/fields.ts";
import { look, usePlanner } from "../state/store.ts";
import { useJobSummary } from "../state/use-job-summary.ts";
import { RoomPanel } from "../workroom/room-panel.tsx";
import { CostChapter } from "./cost-chapter.tsx";
import { Elevations } from "./elevations.tsx";
import { FindingsChapter } from "./findings-chapter.tsx";
import { JobHeading } from "./job-heading.tsx";
import { JobRail } from "./job-rail.tsx";
import { OfferChapter } from "./offer-chapter.tsx";
import { PlaceChapter } from "./place-chapter.tsx";
import { PrintChapter } from "./print-chapter.tsx";
import { RoomsChapter } from "./rooms-chapter.tsx";
import { WorkshopChapters } from "./workshop-chapters.tsx";
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
      <Page className="job-page" title={job.name} busy={stale}>
        <div className="job-work">
          <h1 className="hidden-words">{job.name}</h1>
          <RoomPanel />
          <JobHeading />
          <Elevations />
          <RoomsChapter summary={summary} />
          <PlaceChapter />
          <FindingsChapter summary={summary} />
          <CuttingChapter />
          <CostChapter summary={summary} />
          <OfferChapter summary={summary} />
          <PrintChapter />
          <WorkshopChapters />
        </div>
        <JobRail summary={summary} />
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
    look({ jump: undefined });
    goToSection(jump);
  }, [jump]);
}

import { memo, useEffect, useMemo } from "react";
import { Link } from "wouter";
import { Colophon } from "../frame/colophon.tsx";
import { BackToShelf } from "../frame/notices.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { Field } from "../inputs/field.tsx";
import { text } from "../inputs/spec.ts";
import { DrawingStage } from "../sheets/stage.tsx";
import { useJob } from "../state/fields.ts";
import { shadePlanOf, windowIndexOf } from "../state/planning.ts";
import { look, pick, usePlanner } from "../state/store.ts";
import { ChangeTold } from "./change-told.tsx";
import { Neighbours } from "./neighbours.tsx";
import { Stamp } from "./review/stamp.tsx";
import { AskSection } from "./sections/ask-section.tsx";
import { BoardSection } from "./sections/board-section.tsx";
import { ClothSection } from "./sections/cloth-section.tsx";
import { LiftSection } from "./sections/lift-section.tsx";
import { MakeSection } from "./sections/make-section.tsx";
import { MeasureSection } from "./sections/measure-section.tsx";
import { SafetySection } from "./sections/safety-section.tsx";
import { ShapeSection } from "./sections/shape-section.tsx";
import { type ShadeOnPage, ShadeOnPageContext, useShade, workingsById } from "./shade-context.tsx";
import { ShadeRail } from "./shade-rail.tsx";
import "./shade-page.css";

/** The shade in `windowId` of the open job; undefined where the job has no such window. */
export function useShadeOnPage(windowId: string): ShadeOnPage | undefined {
  const job = useJob();
  return useMemo(() => {
    const place = windowIndexOf(job, windowId);
    const plan = place && shadePlanOf(job, place);
    const window = place && job.rooms[place.room]?.windows[place.window];
    if (!plan || !window) return undefined;
    return {
      plan,
      window,
      place,
      pointer: `/rooms/${place.room}/windows/${place.window}`,
      workings: workingsById(plan.workings),
    };
  }, [job, windowId]);
}

/** One shade on one page, in the order of the work, beside its live drawing. */
export function ShadePage({ windowId }: { windowId: string }) {
  const job = useJob();
  const shade = useShadeOnPage(windowId);
  // A slip belongs to the shade whose figure was pressed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another window is another shade
  useEffect(() => () => pick(undefined), [windowId]);
  if (!shade) return <NoSuchWindow />;
  return (
    <ShadeOnPageContext value={shade}>
      <TopBar withJob>
        <Link href={`/job/${job.id}`}>{job.name}</Link>
        <span aria-current="page">{shade.window.name}</span>
      </TopBar>
      <Page className="shade-page" title={`${shade.window.name}, ${job.name}`}>
        <StageRoom />
        <div className="shade-walk">
          <h1 className="shade-title">
            {shade.plan.roomName}, {shade.window.name}
          </h1>
          <Stamp />
          <Neighbours windowId={windowId} />
          <MeasureSection />
          <ShapeSection />
          <ClothSection />
          <LiftSection />
          <BoardSection />
          <SafetySection />
          <MakeSection />
          <AskSection />
          <AboutShade />
        </div>
        <ShadeRail />
        <ChangeTold />
      </Page>
      <Colophon />
    </ShadeOnPageContext>
  );
}

const NAME = { ...text("Name of the window", 120), required: true };
const NOTE = { ...text("Note", 4000), lines: true };

const StageRoom = memo(function StageRoom() {
  const large = usePlanner((planner) => planner.view.large === true);
  return (
    <div className="shade-stage" data-large={large || undefined}>
      <button
        type="button"
        className="button-plain small stage-larger screen-only"
        aria-pressed={large}
        onClick={() => look({ large: !large })}
      >
        {large ? "smaller" : "larger"}
      </button>
      <DrawingStage />
    </div>
  );
});

function AboutShade() {
  const { pointer } = useShade();
  return (
    <section className="chapter shade-about" aria-label="Name and note">
      <div className="fields">
        <Field pointer={`${pointer}/name`} spec={NAME} needed="a window needs a name" />
        <Field pointer={`${pointer}/shade/note`} spec={NOTE} />
      </div>
    </section>
  );
}

function NoSuchWindow() {
  const job = useJob();
  return (
    <>
      <TopBar withJob>
        <Link href={`/job/${job.id}`}>{job.name}</Link>
      </TopBar>
      <Page className="page page-narrow" title="This window is gone">
        <h1>This window is gone</h1>
        <p>The job has no window of this address; it may have been removed. Undo brings it back.</p>
        <p className="page-actions">
          <Link href={`/job/${job.id}`} className="button button-main">
            To the job
          </Link>
          <BackToShelf />
        </p>
      </Page>
    </>
  );
}

import { memo, type ReactNode, useEffect, useMemo } from "react";
import { Link } from "wouter";
import { Colophon } from "../frame/colophon.tsx";
import { BackToShelf } from "../frame/notices.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { Field } from "../inputs/field.tsx";
import { text } from "../inputs/spec.ts";
import { DrawingStage } from "../sheets/stage.tsx";
import { backToStrip, giveWay } from "../sheets/strip.ts";
import { useJob } from "../state/fields.ts";
import { shadePlanOf, windowIndexOf, windowOf } from "../state/planning.ts";
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
import {
  type ShadeNow,
  ShadeNowContext,
  type ShadeTold,
  ShadeToldContext,
  useShade,
  workingsOf,
} from "./shade-context.tsx";
import { ShadeRail } from "./shade-rail.tsx";
import "./shade-page.css";
import { useEnglish } from "../state/english.ts";
import { useAfterPaint } from "../state/use-after-paint.ts";

/** Gives what stands in it the shade in `windowId` of the open job; `none` where the job has no such window. */
export function OfShade({
  windowId,
  none,
  children,
}: {
  windowId: string;
  none: ReactNode;
  children: ReactNode;
}) {
  const job = useJob();
  const now = useMemo((): Omit<ShadeTold, "workings"> | undefined => {
    const place = windowIndexOf(job, windowId);
    const plan = place && shadePlanOf(job, place);
    const window = place && job.rooms[place.room]?.windows[place.window];
    if (!plan || !window) return undefined;
    return { job, plan, window, place, pointer: `/rooms/${place.room}/windows/${place.window}` };
  }, [job, windowId]);
  const late = useAfterPaint(now);
  // Of another shade nothing is told, and an edit goes to where the window stands now.
  const told = now !== undefined && late?.pointer === now.pointer && isSameShade(late, now) ? late : now;
  const withWorkings = useMemo(() => told && { ...told, workings: workingsOf(told.plan) }, [told]);
  if (now === undefined) return none;
  return (
    <ShadeNowContext value={now}>
      <ShadeToldContext value={withWorkings}>{children}</ShadeToldContext>
    </ShadeNowContext>
  );
}

function isSameShade(a: ShadeNow, b: ShadeNow): boolean {
  return a.plan.shadeId === b.plan.shadeId;
}

/** One shade on one page, in the order of the work, beside its live drawing. */
export function ShadePage({ windowId }: { windowId: string }) {
  // A slip belongs to the shade whose figure was pressed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another window is another shade
  useEffect(() => () => pick(undefined), [windowId]);
  return (
    // What stands in it is given once: an edit draws anew what reads the shade, and nothing else.
    <OfShade windowId={windowId} none={<NoSuchWindow />}>
      <ShadeScreen windowId={windowId} />
    </OfShade>
  );
}

function ShadeScreen({ windowId }: { windowId: string }) {
  const jobId = usePlanner(({ job }) => job?.id ?? "");
  const jobName = usePlanner(({ job }) => job?.name ?? "");
  const name = usePlanner(({ job }) => (job && windowOf(job, windowId)?.name) ?? "");
  return (
    <>
      <TopBar withJob>
        <Link href={`/job/${jobId}`}>{jobName}</Link>
        <span aria-current="page">{name}</span>
      </TopBar>
      <Page className="shade-page" title={`${name}, ${jobName}`}>
        <StageRoom />
        <div className="shade-walk">
          <ShadeTitle />
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
    </>
  );
}

function ShadeTitle() {
  const { plan, window } = useShade();
  return (
    <h1 className="shade-title">
      {plan.roomName}, {window.name}
    </h1>
  );
}

const NAME = { ...text("Name of the window", 120), required: true };
const NOTE = { ...text("Note", 4000), lines: true };

const StageRoom = memo(function StageRoom() {
  useEnglish();
  const large = usePlanner((planner) => planner.view.large === true);
  useEffect(() => {
    document.addEventListener("focusin", giveWay);
    return () => document.removeEventListener("focusin", giveWay);
  }, []);
  return (
    <div className="shade-stage" data-large={large || undefined}>
      <button
        type="button"
        className="button-plain small stage-larger screen-only"
        aria-pressed={large}
        onClick={() => (large ? backToStrip() : look({ large: true }))}
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

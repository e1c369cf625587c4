import { useEffect, useState } from "react";
import { Link } from "wouter";
import type { Window } from "../../job/index.ts";
import { CHAPTER_NAMES, type Step } from "../../shade-plan/index.ts";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { useShade, useShadeNow } from "../shade/shade-context.tsx";
import { OfShade } from "../shade/shade-page.tsx";
import { tickStep } from "../shade/ticks.ts";
import { useCanEdit, useField, useJob } from "../state/fields.ts";
import { windowOf } from "../state/planning.ts";
import { prefer } from "../state/preferences.ts";
import { usePlanner } from "../state/store.ts";
import { BenchDrawing } from "./bench-drawing.tsx";
import { StepNumbers } from "./step-numbers.tsx";
import { useWakeLock } from "./use-wake-lock.ts";
import "./bench-page.css";

/** For the hands: one step at a time, large, with its own drawing and only its numbers. */
export function BenchPage({ windowId }: { windowId: string }) {
  const jobId = usePlanner(({ job }) => job?.id ?? "");
  const jobName = usePlanner(({ job }) => job?.name ?? "");
  const name = usePlanner(({ job }) => job && windowOf(job, windowId)?.name);
  useWakeLock();
  return (
    <>
      <TopBar withJob>
        <Link href={`/job/${jobId}`}>{jobName}</Link>
        {name === undefined ? null : <Link href={`/job/${jobId}/${windowId}`}>{name}</Link>}
        <span aria-current="page">Bench</span>
      </TopBar>
      <OfShade windowId={windowId} none={<NoSuchWindow />}>
        <Bench />
      </OfShade>
    </>
  );
}

function NoSuchWindow() {
  return (
    <Page className="page page-narrow" title="This window is gone">
      <h1>This window is gone</h1>
    </Page>
  );
}

function Bench() {
  const { plan, window, pointer } = useShade();
  const done = new Set(useField(`${pointer}/ticks`) as Window["ticks"]);
  const firstOpen = plan.steps.findIndex((step) => !done.has(step.id));
  const [at, setAt] = useState(Math.max(0, firstOpen));
  const index = Math.min(at, plan.steps.length - 1);
  const step = plan.steps[index];
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.target instanceof HTMLElement && event.target.closest("input, select, textarea, [role]"))
        return;
      if (event.key === "ArrowRight") setAt((before) => Math.min(plan.steps.length - 1, before + 1));
      if (event.key === "ArrowLeft") setAt((before) => Math.max(0, before - 1));
    };
    addEventListener("keydown", onKeyDown);
    return () => removeEventListener("keydown", onKeyDown);
  }, [plan.steps.length]);
  if (!step)
    return (
      <Page className="page" title="Bench">
        There are no steps.
      </Page>
    );
  return (
    <Page className="bench" title={`Bench: ${window.name}`} control={plan.lift.controlSide}>
      <StepText step={step} index={index} total={plan.steps.length} done={done.size} />
      <div className="bench-drawing">
        <BenchDrawing step={step} />
      </div>
      <StepTools
        step={step}
        isDone={done.has(step.id)}
        onBack={index > 0 ? () => setAt(index - 1) : undefined}
        onNext={index < plan.steps.length - 1 ? () => setAt(index + 1) : undefined}
      />
    </Page>
  );
}

interface StepTextProps {
  step: Step;
  index: number;
  total: number;
  done: number;
}

function StepText({ step, index, total, done }: StepTextProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: on a phone the step is longer than its place and is scrolled by key
    <article className="bench-step" aria-live="polite" tabIndex={0}>
      <p className="bench-where">
        {CHAPTER_NAMES[step.chapter]} · step {index + 1} of {total} · {done} done
      </p>
      <h1>{step.title}</h1>
      <p>{step.text}</p>
      {step.check === undefined ? null : (
        <p className="bench-check">
          <b>Check:</b> {step.check}
        </p>
      )}
      {step.caution === undefined ? null : (
        <p className="bench-caution">
          <b>Take care:</b> {step.caution}
        </p>
      )}
      <StepNumbers step={step} />
    </article>
  );
}

interface StepToolsProps {
  step: Step;
  isDone: boolean;
  onBack: (() => void) | undefined;
  onNext: (() => void) | undefined;
}

function StepTools({ step, isDone, onBack, onNext }: StepToolsProps) {
  const { window, plan } = useShadeNow();
  const job = useJob();
  const mine = useCanEdit();
  const tick = () => {
    tickStep(window.id, step.id, !isDone);
    if (!isDone) onNext?.();
    // The shelf leads back here at one press, until the last step is done.
    const isLast = !isDone && plan.steps.every(({ id }) => id === step.id || window.ticks?.includes(id));
    prefer({ atBench: isLast ? null : { jobId: job.id, windowId: window.id, name: window.name } });
  };
  return (
    <div className="bench-tools screen-only">
      <button type="button" className="button" disabled={!onBack} onClick={onBack}>
        Back
      </button>
      <button
        type="button"
        className="button button-main"
        aria-pressed={isDone}
        disabled={!mine}
        onClick={tick}
      >
        {isDone ? "Not done yet" : "Done"}
      </button>
      <button type="button" className="button" disabled={!onNext} onClick={onNext}>
        Next
      </button>
    </div>
  );
}

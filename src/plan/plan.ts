import { judgeMotif, writeLine } from "../align/index.ts";
import { planBoard } from "../board/index.ts";
import { planCloth } from "../cloth/index.ts";
import { planCost, type ShadeCost, sumCosts } from "../cost/index.ts";
import { bySeverity, WorkingBook } from "../figures/index.ts";
import { clothFeel, planFolds } from "../folds/index.ts";
import {
  type Job,
  partsOf,
  type ResolvedRates,
  type ResolvedShade,
  resolveRates,
  resolveShade,
  type Window,
} from "../job/index.ts";
import { chooseLiftParts, liftPartsInput, planLift } from "../lift/index.ts";
import { measure } from "../measure/index.ts";
import {
  askPlace,
  type CarefulLift,
  carefulLift,
  childTag,
  planCautions,
  proposedLift,
  reviewShade,
} from "../safety/index.ts";
import { planSteps } from "../steps/index.ts";
import { STYLE_MODULES } from "../styles/index.ts";
import { type AlignedRoom, type AlignedShade, alignRoom, followRoom } from "./align-room.ts";
import { PLAN_FORMAT, PLAN_VERSION, type Plan, type ShadePlan } from "./plan-types.ts";

export interface PlanOptions {
  /** Ids of the windows to plan; all of them unless given. Those of one room still follow their neighbours. */
  only?: readonly string[];
}

/**
 * Plans every shade of a job: the one entry for command line, planner and code.
 *
 * Pure, deterministic and total: any valid job gives a plan. What cannot be made, or not well, is in the
 * findings, never an exception.
 */
export function plan(job: Job, { only }: PlanOptions = {}): Plan {
  const rates = resolveRates(job.rates);
  const parts = partsOf(job);
  const careful = carefulLift(job.place, job.purpose);
  const isWanted = ({ id }: Window) => only === undefined || only.includes(id);
  const aligned = job.rooms.flatMap((room, r) => {
    if (only !== undefined && !room.windows.some(isWanted)) return [];
    const resolve = (window: Window, w: number) =>
      resolveShade(job, parts, room, window, `/rooms/${r}/windows/${w}`, careful);
    const resolvedShades = room.windows.flatMap((window, w) =>
      isWanted(window) ? [resolve(window, w)] : [],
    );
    return [{ resolvedShades, ...alignRoom(job, room, `/rooms/${r}`, () => room.windows.map(resolve)) }];
  });
  const planned = aligned.flatMap(({ resolvedShades, shades }) =>
    resolvedShades.map((resolved) => planShade(resolved, rates, careful, shades.get(resolved.shadeId))),
  );
  const book = new WorkingBook();
  const { cost, findings } = sumCosts(
    planned.map((one) => one.cost),
    { rates, units: job.units, stock: job.stock },
    book,
  );
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    jobId: job.id,
    jobName: job.name,
    ...(job.client === undefined ? {} : { client: job.client }),
    demo: job.demo ?? false,
    ...(job.place === undefined ? {} : { place: job.place }),
    ...(job.purpose === undefined ? {} : { purpose: job.purpose }),
    units: job.units,
    shades: planned.map((one) => one.shade),
    rooms: aligned.map(({ room }) => room),
    findings: [...askPlace(job), ...aligned.flatMap((one) => one.findings), ...findings].sort(bySeverity),
    cost,
    workings: book.workings,
  };
}

/**
 * What the windows of one room share, for a screen that shows them one by one; undefined where there is no such room.
 */
export function planRoom(job: Job, roomIndex: number): AlignedRoom | undefined {
  const room = job.rooms[roomIndex];
  if (!room) return undefined;
  const parts = partsOf(job);
  const careful = carefulLift(job.place, job.purpose);
  const path = `/rooms/${roomIndex}`;
  return alignRoom(job, room, path, () =>
    room.windows.map((window, w) => resolveShade(job, parts, room, window, `${path}/windows/${w}`, careful)),
  );
}

/**
 * One window's part of `plan(job)` alone, for a screen that shows one shade; undefined where there is no such window.
 * `aligned` is its room's `planRoom`, where that is at hand already.
 */
export function planWindow(
  job: Job,
  roomIndex: number,
  windowIndex: number,
  aligned?: AlignedRoom,
): ShadePlan | undefined {
  const room = job.rooms[roomIndex];
  const window = room?.windows[windowIndex];
  if (!room || !window) return undefined;
  const path = `/rooms/${roomIndex}/windows/${windowIndex}`;
  const careful = carefulLift(job.place, job.purpose);
  const resolved = resolveShade(job, partsOf(job), room, window, path, careful);
  const inRoom = room.inLine === undefined ? undefined : (aligned ?? planRoom(job, roomIndex));
  return planShade(resolved, resolveRates(job.rates), careful, inRoom?.shades.get(resolved.shadeId)).shade;
}

/** The stages in the order of the work: measure, shape, cloth, lift, board, cautions, steps, cost. */
function planShade(
  alone: ResolvedShade,
  rates: ResolvedRates,
  careful: CarefulLift,
  aligned: AlignedShade = { findings: [] },
): { shade: ShadePlan; cost: ShadeCost } {
  const book = new WorkingBook();
  const resolved = followRoom(alone, aligned);
  const style = STYLE_MODULES[resolved.style];

  const measured = measure(resolved);
  const size = measured.values;
  book.add(measured.workings);
  const { columns, findings: columnFindings } = style.columns(resolved, size, book);
  const liftParts = chooseLiftParts(resolved, size, columns, book);
  const { grid, form, findings: foldFindings } = style.grid(resolved, size, columns, liftParts, book);
  if (aligned.layout !== undefined) writeLine(aligned.layout, size, grid, book);
  const { cloth, mass, findings: clothFindings } = planCloth({ resolved, size, grid, form }, book);
  const folded = planFolds({ shade: resolved, size, grid, form, mass });
  const folds = folded.values;
  book.add(folded.workings);
  const { lift, findings: liftFindings } = planLift(
    { resolved, size, grid, form, mass, ...liftPartsInput(liftParts) },
    book,
  );
  const { board, findings: boardFindings } = planBoard(
    { resolved, size, grid, form, mass, lift, ...(folds === undefined ? {} : { folds }) },
    book,
  );
  const { review, findings: reviewFindings } = reviewShade({ resolved, size, grid, form, mass, lift }, book);
  const { cautions, findings: cautionFindings } = planCautions({ resolved, size, grid, lift, review });
  const cost = planCost({ resolved, size, grid, form, cloth, lift, board }, rates, book);

  const shade: ShadePlan = {
    shadeId: resolved.shadeId,
    windowName: resolved.windowName,
    roomId: resolved.roomId,
    roomName: resolved.roomName,
    style: resolved.style,
    mount: resolved.mount,
    opening: resolved.opening,
    size,
    grid,
    form,
    feel: clothFeel(resolved.cloths),
    ...(folds === undefined ? {} : { folds }),
    cloth,
    mass,
    lift,
    board,
    steps: planSteps({
      ...{ resolved, size, grid, form, cloth, mass, lift, board },
      styleSteps: style.steps({ resolved, size, grid, form, cloth }),
    }),
    cost: cost.cost,
    cautions,
    safety: review,
    tag: childTag({ place: resolved.place, kind: lift.kind, rearCords: lift.cords.length > 0 }),
    workings: book.workings,
    findings: [
      ...measured.findings,
      ...columnFindings,
      ...foldFindings,
      ...aligned.findings,
      ...clothFindings,
      ...folded.findings,
      ...(aligned.motif === undefined ? [] : judgeMotif(resolved, aligned.motif, cloth)),
      ...proposedLift(resolved, careful),
      ...liftFindings,
      ...boardFindings,
      ...reviewFindings,
      ...cautionFindings,
      ...cost.findings,
    ].sort(bySeverity),
  };
  return { shade, cost };
}

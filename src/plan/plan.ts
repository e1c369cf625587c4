import { byWeight, WorkingBook } from "../account/index.ts";
import { planBoard } from "../board/index.ts";
import { planCloth } from "../cloth/index.ts";
import { planCost, type ShadeCost, sumCosts } from "../cost/index.ts";
import { planFolds } from "../folds/index.ts";
import {
  type Brief,
  type Job,
  partsOf,
  type SettledRates,
  settleRates,
  settleShade,
  type Window,
} from "../job/index.ts";
import { chooseGear, gearInput, planLift } from "../lift/index.ts";
import { judgeMotif, writeLine } from "../line-up/index.ts";
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
import { followRoom, type LinedRoom, type LinedShade, lineRoom } from "./line-room.ts";
import { PLAN_FORMAT, PLAN_VERSION, type Plan, type ShadePlan } from "./plan-types.ts";

export interface PlanOptions {
  /** Ids of the windows to plan; all of them unless told. Those of one room still follow their neighbours. */
  only?: readonly string[];
}

/**
 * Plans every shade of a job: the one entry for command line, planner and code.
 *
 * Pure, deterministic and total: any valid job gives a plan. What cannot be made, or not well, is in the
 * findings, never an exception.
 */
export function plan(job: Job, { only }: PlanOptions = {}): Plan {
  const rates = settleRates(job.rates);
  const parts = partsOf(job);
  const careful = carefulLift(job.place, job.purpose);
  const isWanted = ({ id }: Window) => only === undefined || only.includes(id);
  const lined = job.rooms.flatMap((room, r) => {
    if (only !== undefined && !room.windows.some(isWanted)) return [];
    const settle = (window: Window, w: number) =>
      settleShade(job, parts, room, window, `/rooms/${r}/windows/${w}`, careful);
    const briefs = room.windows.flatMap((window, w) => (isWanted(window) ? [settle(window, w)] : []));
    return [{ briefs, ...lineRoom(job, room, `/rooms/${r}`, () => room.windows.map(settle)) }];
  });
  const planned = lined.flatMap(({ briefs, shades }) =>
    briefs.map((brief) => planShade(brief, rates, careful, shades.get(brief.shadeId))),
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
    rooms: lined.map(({ room }) => room),
    findings: [...askPlace(job), ...lined.flatMap((one) => one.findings), ...findings].sort(byWeight),
    cost,
    workings: book.workings,
  };
}

/**
 * What the windows of one room share, for a screen that shows them one by one; undefined where there is no such room.
 */
export function planRoom(job: Job, roomIndex: number): LinedRoom | undefined {
  const room = job.rooms[roomIndex];
  if (!room) return undefined;
  const parts = partsOf(job);
  const careful = carefulLift(job.place, job.purpose);
  const path = `/rooms/${roomIndex}`;
  return lineRoom(job, room, path, () =>
    room.windows.map((window, w) => settleShade(job, parts, room, window, `${path}/windows/${w}`, careful)),
  );
}

/**
 * One window's part of `plan(job)` alone, for a screen that shows one shade; undefined where there is no such window.
 * `lined` is its room's `planRoom`, where that is at hand already.
 */
export function planWindow(
  job: Job,
  roomIndex: number,
  windowIndex: number,
  lined?: LinedRoom,
): ShadePlan | undefined {
  const room = job.rooms[roomIndex];
  const window = room?.windows[windowIndex];
  if (!room || !window) return undefined;
  const path = `/rooms/${roomIndex}/windows/${windowIndex}`;
  const careful = carefulLift(job.place, job.purpose);
  const brief = settleShade(job, partsOf(job), room, window, path, careful);
  const told = room.inLine === undefined ? undefined : (lined ?? planRoom(job, roomIndex));
  return planShade(brief, settleRates(job.rates), careful, told?.shades.get(brief.shadeId)).shade;
}

/** The stages in the order of the work: measure, shape, cloth, lift, board, cautions, steps, cost. */
function planShade(
  alone: Brief,
  rates: SettledRates,
  careful: CarefulLift,
  lined: LinedShade = { findings: [] },
): { shade: ShadePlan; cost: ShadeCost } {
  const book = new WorkingBook();
  const brief = followRoom(alone, lined);
  const style = STYLE_MODULES[brief.style];

  const { size, findings: measureFindings } = measure(brief, book);
  const { columns, findings: columnFindings } = style.columns(brief, size, book);
  const gear = chooseGear(brief, size, columns, book);
  const { grid, form, findings: foldFindings } = style.grid(brief, size, columns, gear, book);
  if (lined.place !== undefined) writeLine(lined.place, size, grid, book);
  const { cloth, mass, findings: clothFindings } = planCloth({ brief, size, grid, form }, book);
  const { feel, folds, findings: foldingFindings } = planFolds({ brief, size, grid, form, mass }, book);
  const { lift, findings: liftFindings } = planLift(
    { brief, size, grid, form, mass, ...gearInput(gear) },
    book,
  );
  const { board, findings: boardFindings } = planBoard(
    { brief, size, grid, form, mass, lift, ...(folds === undefined ? {} : { folds }) },
    book,
  );
  const { review, findings: reviewFindings } = reviewShade({ brief, size, grid, form, mass, lift }, book);
  const { cautions, findings: cautionFindings } = planCautions({ brief, size, grid, lift, review });
  const cost = planCost({ brief, size, grid, form, cloth, lift, board }, rates, book);

  const shade: ShadePlan = {
    shadeId: brief.shadeId,
    windowName: brief.windowName,
    roomId: brief.roomId,
    roomName: brief.roomName,
    style: brief.style,
    mount: brief.mount,
    opening: brief.opening,
    size,
    grid,
    form,
    feel,
    ...(folds === undefined ? {} : { folds }),
    cloth,
    mass,
    lift,
    board,
    steps: planSteps({
      ...{ brief, size, grid, form, cloth, mass, lift, board },
      styleSteps: style.steps({ brief, size, grid, form, cloth }),
    }),
    cost: cost.cost,
    cautions,
    safety: review,
    tag: childTag({ place: brief.place, kind: lift.kind, rearCords: lift.cords.length > 0 }),
    workings: book.workings,
    findings: [
      ...measureFindings,
      ...columnFindings,
      ...foldFindings,
      ...lined.findings,
      ...clothFindings,
      ...foldingFindings,
      ...(lined.motif === undefined ? [] : judgeMotif(brief, lined.motif, cloth)),
      ...proposedLift(brief, careful),
      ...liftFindings,
      ...boardFindings,
      ...reviewFindings,
      ...cautionFindings,
      ...cost.findings,
    ].sort(byWeight),
  };
  return { shade, cost };
}

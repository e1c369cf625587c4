import { byWeight, WorkingBook } from "../account/index.ts";
import { planBoard } from "../board/index.ts";
import { planCloth } from "../cloth/index.ts";
import { planCost, type ShadeCost, sumCosts } from "../cost/index.ts";
import { type Brief, type Job, partsOf, type SettledRates, settleRates, settleShade } from "../job/index.ts";
import { chooseGear, gearInput, planLift } from "../lift/index.ts";
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
import { PLAN_FORMAT, PLAN_VERSION, type Plan, type ShadePlan } from "./plan-types.ts";

/**
 * Plans every shade of a job: the one entry for command line, planner and code.
 *
 * Pure, deterministic and total: any valid job gives a plan. What cannot be made, or not well, is in the
 * findings, never an exception.
 */
export function plan(job: Job): Plan {
  const rates = settleRates(job.rates);
  const parts = partsOf(job);
  const careful = carefulLift(job.place, job.purpose);
  const planned = job.rooms.flatMap((room, r) =>
    room.windows.map((window, w) =>
      planShade(settleShade(job, parts, room, window, `/rooms/${r}/windows/${w}`, careful), rates, careful),
    ),
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
    findings: [...askPlace(job), ...findings].sort(byWeight),
    cost,
    workings: book.workings,
  };
}

/** One window's part of `plan(job)` alone, for a screen that shows one shade; undefined where there is no such window. */
export function planWindow(job: Job, roomIndex: number, windowIndex: number): ShadePlan | undefined {
  const room = job.rooms[roomIndex];
  const window = room?.windows[windowIndex];
  if (!room || !window) return undefined;
  const path = `/rooms/${roomIndex}/windows/${windowIndex}`;
  const careful = carefulLift(job.place, job.purpose);
  const brief = settleShade(job, partsOf(job), room, window, path, careful);
  return planShade(brief, settleRates(job.rates), careful).shade;
}

/** The stages in the order of the work: measure, shape, cloth, lift, board, cautions, steps, cost. */
function planShade(
  brief: Brief,
  rates: SettledRates,
  careful: CarefulLift,
): { shade: ShadePlan; cost: ShadeCost } {
  const book = new WorkingBook();
  const style = STYLE_MODULES[brief.style];

  const { size, findings: measureFindings } = measure(brief, book);
  const { columns, findings: columnFindings } = style.columns(brief, size, book);
  const gear = chooseGear(brief, size, columns, book);
  const { grid, form, findings: foldFindings } = style.grid(brief, size, columns, gear, book);
  const { cloth, mass, findings: clothFindings } = planCloth({ brief, size, grid, form }, book);
  const { lift, findings: liftFindings } = planLift(
    { brief, size, grid, form, mass, ...gearInput(gear) },
    book,
  );
  const { board, findings: boardFindings } = planBoard({ brief, size, grid, form, mass, lift }, book);
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
      ...clothFindings,
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

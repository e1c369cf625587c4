import type { Solved } from "../solve/outcome.ts";
import { follow } from "./follow.ts";
import { depthPast, type Plane, placesOf, type StripProblem, type StripState } from "./strip.ts";
import { hangStrip } from "./strip-newton.ts";
import { weightlessFold } from "./weightless.ts";

/** A weightless strip at this gap is bent well, yet far from a loop: every start from nothing begins here. */
const FIRST_GAP = { min: 0.6, max: 1.8 };

/** Shape of a strip with nothing to start from: weightless at a gap that is easy, then weight, gap, planes. */
export function hangFromNothing(problem: StripProblem, nodes: number): Solved<StripState> {
  const easy = Math.min(FIRST_GAP.max, Math.max(FIRST_GAP.min, problem.gap));
  const bent = hangStrip({ weight: 0, gap: easy, planes: [] }, cosineStart(easy, nodes), 1);
  if (bent.kind === "notConverged") return bent;
  const heavy = follow(
    bent.value,
    (part, from) => hangStrip({ weight: (1 + problem.weight) ** part - 1, gap: easy, planes: [] }, from),
    1 / 4,
  );
  if (heavy.kind === "notConverged") return heavy;
  return moveStrip({ weight: problem.weight, gap: easy, planes: [] }, problem, heavy.value);
}

/** Takes a strip that hangs in one problem over to another of the same weight, in as few steps as go: gap, planes, ends. */
export function moveStrip(was: StripProblem, problem: StripProblem, start: StripState): Solved<StripState> {
  const toGap = follow(start, (part, from) =>
    hangStrip({ ...was, weight: problem.weight, gap: was.gap + (problem.gap - was.gap) * part }, from),
  );
  if (toGap.kind === "notConverged") return toGap;
  const toPlanes = was.planes === problem.planes ? toGap : bringPlanes(was, problem, toGap.value);
  return toPlanes.kind === "notConverged" || !turnsEnds(was, problem)
    ? toPlanes
    : holdEnds(problem, toPlanes.value);
}

/** Planes come in from where they only just touch. */
function bringPlanes({ held }: StripProblem, problem: StripProblem, start: StripState): Solved<StripState> {
  const { planes, gap } = problem;
  const { x, y } = placesOf(start.slope);
  const away = planes.map((plane) =>
    x.reduce((most, out, i) => Math.max(most, depthPast(plane, gap, out, y[i] as number)), 0),
  );
  return follow(start, (part, from) =>
    hangStrip(
      { ...problem, held, planes: planes.map((plane, k) => backed(plane, (1 - part) * (away[k] ?? 0))) },
      from,
    ),
  );
}

function turnsEnds(was: StripProblem, { held }: StripProblem): boolean {
  return held?.top !== was.held?.top || held?.bottom !== was.held?.bottom;
}

/** Ends turn from where they hang to where they are held. */
function holdEnds(problem: StripProblem, start: StripState): Solved<StripState> {
  const n = start.slope.length - 1;
  const turned = (to: number | undefined, from: number, part: number) =>
    to === undefined ? undefined : from + part * (to - from);
  return follow(start, (part, from) =>
    hangStrip(
      {
        ...problem,
        held: {
          top: turned(problem.held?.top, start.slope[0] as number, part),
          bottom: turned(problem.held?.bottom, start.slope[n] as number, part),
        },
      },
      from,
    ),
  );
}

/** A plane moved square to itself, away from the strip. */
function backed(plane: Plane, byHalves: number): Plane {
  if (byHalves === 0) return plane;
  const { out, down, tiltRad, facing } = plane;
  return {
    ...plane,
    out: out - facing * byHalves * Math.cos(tiltRad),
    down: down + facing * byHalves * Math.sin(tiltRad),
  };
}

/** θ₀ cos(πs/2) with the end slope and the thrust of the weightless strip: near enough for Newton to end it. */
function cosineStart(gap: number, nodes: number): StripState {
  const { endSlopeRad, thrust } = weightlessFold(gap);
  const slope = new Float64Array(nodes + 1).map((_, i) => endSlopeRad * Math.cos((Math.PI * i) / nodes));
  return { slope, up: -thrust, side: 0, push: new Float64Array(nodes + 1) };
}

import { bestOf, type Solved } from "../solve/outcome.ts";
import { follow } from "./follow.ts";
import { placesOf, type StripProblem, type StripState } from "./strip.ts";
import { hangStrip } from "./strip-newton.ts";
import { weightlessFold } from "./weightless.ts";

/** A weightless strip at this gap is bent well, yet far from a loop: every start from nothing begins here. */
const FIRST_GAP = { min: 0.6, max: 1.8 };

/** Shape of a strip with nothing to start from: weightless at a gap that is easy, then weight, gap, pane. */
export function hangFromNothing(problem: StripProblem, nodes: number): Solved<StripState> {
  const open = Number.POSITIVE_INFINITY;
  const easy = Math.min(FIRST_GAP.max, Math.max(FIRST_GAP.min, problem.gap));
  const bent = hangStrip({ weight: 0, gap: easy, pane: open, back: open }, cosineStart(easy, nodes), 1);
  if (bent.kind === "notConverged") return bent;
  const heavy = follow(
    bent.value,
    (part, from) => {
      const weight = (1 + problem.weight) ** part - 1;
      return hangStrip({ weight, gap: easy, pane: open, back: open }, from);
    },
    1 / 4,
  );
  if (heavy.kind === "notConverged") return heavy;
  const free = { weight: problem.weight, gap: easy, pane: open, back: open };
  return moveStrip(free, problem, heavy.value);
}

/** Takes a strip that hangs in one problem over to another of the same weight, in as few steps as go. */
export function moveStrip(was: StripProblem, problem: StripProblem, start: StripState): Solved<StripState> {
  const { weight } = problem;
  const between = (a: number, b: number, part: number) => a + (b - a) * part;
  const toGap = follow(start, (part, from) =>
    hangStrip({ ...was, weight, gap: between(was.gap, problem.gap, part) }, from),
  );
  if (toGap.kind === "notConverged") return toGap;
  if (was.pane === problem.pane && was.back === problem.back) return toGap;
  const reach = Math.max(0, -Math.min(...placesOf(toGap.value.slope).x));
  return follow(bestOf(toGap), (part, from) => {
    // A pane that stands further back than the fold reaches touches nothing yet, so it may start there.
    const pane = between(Math.min(was.pane, Math.max(reach, problem.pane)), problem.pane, part);
    const back = between(Math.min(was.back, Math.max(reach, problem.back)), problem.back, part);
    return hangStrip(part === 1 ? problem : { ...problem, pane, back }, from);
  });
}

/** θ₀ cos(πs/2) with the end slope and the thrust of the weightless strip: near enough for Newton to end it. */
function cosineStart(gap: number, nodes: number): StripState {
  const { endSlopeRad, thrust } = weightlessFold(gap);
  const slope = new Float64Array(nodes + 1).map((_, i) => endSlopeRad * Math.cos((Math.PI * i) / nodes));
  return { slope, up: -thrust, side: 0, push: new Float64Array(nodes + 1) };
}

import { type Figure, figureRule } from "../../figures/index.ts";
import { type Eye, frictionOf, QUARTER_TURN_RAD } from "../../job/index.ts";
import { capstanRatio } from "../../mechanics/index.ts";
import type { CordRun, PullShare } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { cordPull, ROLLER_EFFICIENCY, type Turns } from "../lock/rig-threading.ts";

/** Share of the pull that a small pulley on balls passes on. */
const PULLEY = sourced(
  0.89,
  "ratio",
  cite("sheave-efficiency", "a small ball-bearing pulley measured at 89 %; rollers are printed at 96.2 %"),
);

/** Which place costs what: each cord's load, then its own eye, the eyes it passes, the roller of the lock. */
export function pullShares(
  eye: Eye,
  cords: readonly CordRun[],
  turns: ReadonlyMap<number, Turns>,
): PullShare[] {
  const friction = frictionOf(eye).value;
  const own = new Map<number, number>();
  const passed = new Map<number, number>();
  let weightN = 0;
  let rollerN = 0;
  for (const cord of cords) {
    const { loadN, pullN } = cord;
    weightN += loadN;
    const afterOwn = loadN * capstanRatio(friction, turns.get(cord.number)?.ownEyeRad ?? QUARTER_TURN_RAD);
    add(own, cord.number, afterOwn - loadN);
    const atRoller = pullN * ROLLER_EFFICIENCY.value;
    // The turns after its own eye are small: at the last eye before the lock and at the mouth of its housing.
    add(passed, cord.eyes.at(-1) ?? cord.number, atRoller - afterOwn);
    rollerN += pullN - atRoller;
  }
  const eyes = (what: PullShare["what"], list: Map<number, number>) =>
    [...list].sort(([a], [b]) => a - b).map(([eye, addsN]): PullShare => ({ what, addsN, eye }));
  return [
    { what: "weight", addsN: weightN },
    ...eyes("own-eye", own),
    ...eyes("passed-eye", passed),
    { what: "roller", addsN: rollerN },
  ];
}

function add(sums: Map<number, number>, key: number, value: number): void {
  sums.set(key, (sums.get(key) ?? 0) + value);
}

const WITH_PULLEYS = figureRule({
  id: "lift.pull-with-pulleys",
  label: "Pull at the hand with pulleys in place of the eyes",
  symbol: "F_p",
  unit: "N",
  formula: "A + B / (v·η)",
  inputs: {
    A: ["N", "pull of the cords whose eye before the lock stays", "figure:lift.cord-*-pull"],
    B: [
      "N",
      "loads of the other cords and their small turns",
      "figure:lift.held",
      "figure:rig.seat-*",
      "figure:shape.columns",
    ],
    v: ["ratio", "share that a small pulley passes on"],
    η: ["ratio", "efficiency of the lock’s roller"],
  },
  cite: PULLEY.cite,
  note: "what the hand would gain; enter a pulley as the eye to plan with it",
  compute: ({ A, B, v, η }) => A + B / (v * η),
});

/** The pull with pulleys for eyes, N: the quarter turn above a column costs 1/η instead of e^(μπ/2). */
export function pulleysN(eye: Eye, cords: readonly CordRun[], turns: ReadonlyMap<number, Turns>): Figure {
  const friction = frictionOf(eye).value;
  const last = new Set(cords.map(({ eyes }) => eyes.at(-1)));
  const sum = (some: readonly CordRun[], pull: (cord: CordRun) => number) =>
    some.reduce((total, cord) => total + pull(cord), 0);
  // A lock is no substitute for an eye: the one before it stays.
  const kept = cords.filter(({ number }) => last.has(number));
  const changed = cords.filter(({ number }) => !last.has(number));
  return WITH_PULLEYS.figure({
    A: sum(kept, ({ pullN }) => pullN),
    B: sum(changed, (cord) => cordPull(cord.loadN, friction, turns.get(cord.number)?.afterRad ?? 0, 1)),
    v: PULLEY.value,
    η: ROLLER_EFFICIENCY.value,
  });
}

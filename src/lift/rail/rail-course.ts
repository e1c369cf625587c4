import { type Figure, figureRule, figureRuleOf, type Worked } from "../../figures/index.ts";
import { barMassGPerM } from "../../job/index.ts";
import { capstanRatio } from "../../mechanics/index.ts";
import type { RailHeight } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { GRAVITY } from "../../units/index.ts";
import { cordLoads } from "../cord-loads.ts";
import { cordSum } from "../cord-sum.ts";
import { gatherings, heldAt, weightSteps } from "../course/gatherings.ts";
import { overEyes } from "../course/over-eyes.ts";
import type { LiftInput } from "../lift-input.ts";
import { ROLLER_EFFICIENCY } from "../lock/rig-threading.ts";
import type { RailRig } from "./rail-rig.ts";

const RAIL_MASS = figureRule({
  id: "rig.rail-mass",
  label: "Top rail: mass",
  symbol: "R",
  unit: "kg",
  formula: "l·g / 10^6",
  inputs: {
    l: ["mm", "length", "figure:measure.finished-width", "board/barShorterMm"],
    g: ["g/m", "mass per metre, as of the weight bar", "board/bar"],
  },
  restsOn: ["fold/topDropMm"],
  cite: cite("our-choice", "a rail like the weight bar"),
  compute: ({ l, g }) => (l * g) / 1e6,
});

const RAIL_HELD = figureRule({
  id: "rig.rail-held",
  label: "Weight on the rail’s cords, rail up and shade lowered",
  symbol: "G",
  unit: "N",
  formula: "g·(S + R)",
  inputs: {
    g: ["ratio", "standard gravity, m/s²"],
    S: ["kg", "shade with the cloth round its rail", "figure:cloth.*-mass", "lift/ring", "figure:shape.*"],
    R: ["kg", "rail", "figure:rig.rail-mass"],
  },
  cite: cite("geometry", "with the lift cords slack all of it hangs from the rail"),
  compute: ({ g, S, R }) => g * (S + R),
});

const RAIL_CORD_PULL = figureRuleOf<{ column: number }>()({
  id: ({ column }) => `rig.rail-cord-${column}-pull`,
  label: ({ column }) => `Rail cord at column ${column}: pull at the hand`,
  symbol: ({ column }) => `p${column}`,
  unit: "N",
  formula: "T·exp(μ·θ) / η",
  inputs: {
    T: ["N", "its load, rail up", "figure:rig.rail-held", "figure:shape.columns", "columns/edgeInsetMm"],
    μ: ["ratio", "friction of cord on eye", "lift/eye"],
    θ: [
      "ratio",
      "turn at its own eye, at eyes passed and at the housing, radians",
      "lift/*",
      "board/section",
    ],
    η: ["ratio", "efficiency of the lock’s roller"],
  },
  cite: cite("capstan"),
  compute: ({ T, μ, θ, η }) => (T * capstanRatio(μ, θ)) / η,
});

const RAIL_PULL = cordSum({
  id: "rig.rail-pull",
  label: "Pull on the rail’s cords, rail nearly up",
  symbol: "F",
  unit: "N",
  prefix: "p",
  name: "pull of the rail cord at column",
  restsOn: (column) => `figure:rig.rail-cord-${column}-pull`,
  cite: cite("arithmetic", "each cord on the worse of its two shares, so a little above the true pull"),
});

/** What the rail weighs and what its cords carry, at every height of it. */
export interface RailLoads {
  massKg: number;
  /** By column: load and pull with the rail up. */
  cords: ReadonlyMap<number, { loadN: number; pullN: number }>;
  heldN: number;
  pullN: number;
  course: RailHeight[];
}

/**
 * The shade hangs from its rail as it hangs from a board, and its hem, held by the lift cords, rises towards the rail as
 * that comes down: rail cords and lift cords together carry rail and shade at every height. With the rail up and the lift
 * cords slack the rail's carry all, which no height exceeds.
 */
export function railLoads(input: LiftInput, rig: RailRig, railMm: number, dropMm: number): Worked<RailLoads> {
  const { shade, grid, form, mass, size } = input;
  const rail = RAIL_MASS.figure({ l: railMm, g: barMassGPerM(shade.bar) });
  const held = RAIL_HELD.figure({ g: GRAVITY, S: mass.totalKg, R: rail.value });
  const loads = cordLoads(
    rig.strands.map(({ xMm }) => xMm),
    size.finishedWidthMm,
    held.value,
  );
  const cords = new Map<number, { loadN: number; pullN: number }>();
  const workings: Figure[] = [rail, held];
  rig.strands.forEach(({ column, turns }, i) => {
    const loadN = loads.designN[i] ?? 0;
    const given = {
      T: loadN,
      μ: rig.friction,
      θ: turns.ownEyeRad + turns.afterRad,
      η: ROLLER_EFFICIENCY.value,
    };
    const pull = RAIL_CORD_PULL.figure(given, { column });
    workings.push(pull);
    cords.set(column, { loadN, pullN: pull.value });
  });
  const pull = RAIL_PULL([...cords].map(([column, { pullN }]) => [column, pullN]));
  workings.push(pull);
  const list = gatherings(grid, form);
  const forces = overEyes([...cords.values()], held.value, pull.value);
  const at = (downMm: number, heldN: number): RailHeight => ({ downMm, heldN, ...forces(heldN) });
  const onLiftN = heldAt(list, form, mass);
  const down = (downMm: number) => at(downMm, held.value - onLiftN(downMm));
  // As the hem would rise towards a rail that is let down.
  const stops = [...weightSteps(list).filter((mm) => mm < dropMm), dropMm];
  const course = [at(0, held.value), ...stops.map(down)];
  return {
    values: { massKg: rail.value, cords, heldN: held.value, pullN: pull.value, course },
    workings,
  };
}

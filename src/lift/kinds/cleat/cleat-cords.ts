import { type Figure, figureRuleOf, type Worked } from "../../../figures/index.ts";
import { frictionOf } from "../../../job/index.ts";
import { capstanRatio } from "../../../mechanics/index.ts";
import { type CleatCord, headYMm, type TurnEye } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { upToMark } from "../../../units/index.ts";
import { cordAlongBoard, type OfCord } from "../../cord-length-rule.ts";
import { cordTotal, handPullOfCords } from "../../cord-sum.ts";
import type { CleatInput } from "../../lift-input.ts";
import { riseOf } from "../../rise-of.ts";
import { cleatTurns } from "./cleat-turns.ts";
import { fromLeftAlong } from "./turn-eye.ts";

const LENGTH = cordAlongBoard([
  "mm",
  "last eye, along the board from the left edge",
  "lift/controlSide",
  "lift/turnEye",
  "lift/eye",
  "figure:measure.board-length",
  "columns/edgeInsetMm",
]);

const PULL_OF_CORD = figureRuleOf<OfCord>()({
  id: ({ cord }) => `lift.cord-${cord}-pull`,
  label: ({ cord }) => `Cord ${cord}: pull at the hand`,
  symbol: ({ cord }) => `p${cord}`,
  unit: "N",
  formula: "T·exp(μ·θ + ν·φ)",
  inputs: {
    T: ["N", "its load, fully raised", "figure:lift.held", "figure:shape.columns"],
    μ: ["ratio", "friction of cord on eye", "lift/eye"],
    θ: [
      "ratio",
      "turn at its own eye and at eyes passed, radians",
      "opening/head",
      "lift/controlSide",
      "columns/edgeInsetMm",
      "figure:measure.board-length",
    ],
    ν: ["ratio", "friction over the last eye", "lift/turnEye", "lift/eye"],
    φ: ["ratio", "turn over the last eye, radians", "opening/head", "columns/edgeInsetMm"],
  },
  cite: cite("capstan"),
  compute: ({ T, μ, θ, ν, φ }) => T * capstanRatio(μ, θ) * capstanRatio(ν, φ),
});

/** Path, length and pull of each cord, from the left. */
export function cleatCords(
  { shade, size, grid }: CleatInput,
  turn: TurnEye,
  loadsN: readonly number[],
  tailMm: number,
): Worked<{ cords: CleatCord[]; totalMm: number; pullN: number }> {
  const workings: Figure[] = [];
  const written = (figure: Figure): number => {
    workings.push(figure);
    return figure.value;
  };
  const { knotsMm, controlSide } = shade.making.lift;
  const bottom = grid.rows[0];
  const turnMm = fromLeftAlong({ size }, turn.xMm);
  const place = (acrossMm: number) => ({ acrossMm, downMm: headYMm(size, acrossMm) });
  // From the far end to the control side: the order in which a cord meets the eyes.
  const inward = controlSide === "right" ? grid.columns : [...grid.columns].reverse();
  const cords = inward
    .map(({ number, xMm }, i): CleatCord => {
      const met = inward.slice(i).filter((column) => column.number !== turn.column);
      const places = [...met.map((column) => place(column.xMm)), place(turn.xMm)];
      const turns = cleatTurns(places);
      const riseMm = riseOf(bottom, size, xMm);
      const columnMm = fromLeftAlong({ size }, xMm);
      const loadN = loadsN[number - 1] ?? 0;
      const length = { y: riseMm, X: turnMm, x: columnMm, t: tailMm, k: knotsMm };
      const lengthMm = written(LENGTH.figure(length, { cord: number }));
      const μ = frictionOf(shade.eye).value;
      const ν = frictionOf(shade.turnEye).value;
      const pull = { T: loadN, μ, θ: turns.eyesRad, ν, φ: turns.turnRad };
      return {
        number,
        columnX: xMm,
        riseMm,
        runMm: Math.abs(turnMm - columnMm),
        tailMm,
        knotsMm,
        lengthMm,
        cutMm: upToMark(lengthMm, shade.units.ruler),
        path: [{ xMm, zMm: turn.zMm }, ...met.slice(1), turn].map((one) => ({ xMm: one.xMm, zMm: turn.zMm })),
        eyes: inward.slice(i).map((column) => column.number),
        loadN,
        pullN: written(PULL_OF_CORD.figure(pull, { cord: number })),
        ...turns,
      };
    })
    .sort((a, b) => a.number - b.number);
  const totalMm = written(cordTotal(cords));
  const pullN = written(handPullOfCords(cords.map((cord) => [cord.number, cord.pullN])));
  return { values: { cords, totalMm, pullN }, workings };
}

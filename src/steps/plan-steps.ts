import { CHAPTERS, type Step, type StepChapter } from "../shade-plan/index.ts";
import { type Bench, benchOf } from "./bench.ts";
import { boardSteps } from "./board.ts";
import { cutSteps, waitForCloth } from "./cut.ts";
import { existingSteps } from "./existing-steps.ts";
import { hangSteps } from "./hang.ts";
import { levelSteps } from "./level.ts";
import { makeSteps } from "./make.ts";
import { measureSteps } from "./measure.ts";
import { mergeStyleSteps } from "./merge-style-steps.ts";
import type { StepInput } from "./step-input.ts";
import { stringSteps } from "./string.ts";
import { trainSteps } from "./train.ts";

const CHAPTER_STEPS: Record<StepChapter, (bench: Bench) => Step[]> = {
  measure: measureSteps,
  cut: cutSteps,
  make: (bench) => [...waitForCloth(bench), ...makeSteps(bench)],
  board: boardSteps,
  string: stringSteps,
  hang: hangSteps,
  level: levelSteps,
  train: trainSteps,
};

/** Everything to do for this very shade, in the order of the work, with its own numbers in the words. */
export function planSteps(input: StepInput): Step[] {
  const bench = benchOf(input);
  const usual = CHAPTERS.flatMap((chapter) => CHAPTER_STEPS[chapter](bench));
  const all = mergeStyleSteps(usual, input.styleSteps);
  return input.existing === undefined ? all : existingSteps(bench, input.existing, all);
}

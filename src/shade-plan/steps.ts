import type { StepAction } from "./actions.ts";

/** Drawing sheets that can stand beside a step. */
export const SHEETS = [
  "picture",
  "front",
  "back",
  "side",
  "cutting",
  "marking",
  "board",
  "lock",
  "force",
  "strips",
] as const;
export type SheetKind = (typeof SHEETS)[number];
/** All but the picture, which has no lines to measure, to cut by or to explain. */
export const LINE_SHEETS = SHEETS.filter((kind) => kind !== "picture");

export const CHAPTERS = ["measure", "cut", "make", "board", "string", "hang", "level", "train"] as const;
export type StepChapter = (typeof CHAPTERS)[number];
export const CHAPTER_NAMES: Record<StepChapter, string> = {
  measure: "Measure",
  cut: "Cut",
  make: "Make",
  board: "Board",
  string: "String the cords",
  hang: "Hang",
  level: "Level",
  train: "Train the folds",
};

/** One thing to do, with this shade's own numbers in its words. */
export interface Step {
  /** Stable, `chapter-what`: ticks persist by it. */
  id: string;
  chapter: StepChapter;
  title: string;
  text: string;
  /** Figures of the text at a glance, each with what it is; needed where there are several. */
  brief?: string;
  /** What to check before going on. */
  check?: string;
  /** What can hurt here. */
  caution?: string;
  sheet?: SheetKind;
  /** What the hands do, to be drawn beside the words. */
  action?: StepAction;
  /** Ids of the workings whose numbers stand in the words. */
  figures?: string[];
}

/** A step that a style adds to the usual ones: where it goes, and which of them it stands in for. */
export interface StyleStep extends Step {
  /** Id of the usual step that it follows or precedes; at the end of its chapter where neither is there. */
  after?: string;
  before?: string;
  /** Ids of usual steps that it stands in for. */
  replaces?: string[];
}

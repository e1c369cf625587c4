import { WORK_STATES, type WorkState } from "../../workroom/protocol/index.ts";

const WORDS: Record<WorkState, string> = {
  measured: "measured",
  quoted: "quoted",
  ordered: "ordered",
  cut: "cut",
  sewn: "sewn",
  rigged: "rigged",
  hung: "hung",
  "handed-over": "handed over",
};

/** How far a shade is, with nothing first. */
export const STATE_OPTIONS = { "": "not begun", ...WORDS } as Readonly<Record<WorkState | "", string>>;

/** The words alone, in the order of the work. */
export function stateWords(state: WorkState | undefined): string {
  return STATE_OPTIONS[state ?? ""];
}

/** Whether there is anything left to do. */
export function isInHand(state: WorkState | undefined): boolean {
  return state !== WORK_STATES.at(-1);
}

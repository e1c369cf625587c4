import type { Finding, Remedy, WorkingBook } from "../figures/index.ts";
import { settingPatch } from "../job/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import type { BoardInput } from "./board-input.ts";
import { takesUp } from "./judge-parts.ts";
import { recessNeeded, stackDepth } from "./recess.ts";

/** Does an inside mount find room for board, stack and handles? */
export function judgeRecess(input: BoardInput, book: WorkingBook): Finding[] {
  const { resolved, folds } = input;
  const stackMm = stackDepth(input, book);
  if (resolved.mount !== "inside") return [];
  // What is pressed back lies behind the board's front; only the rest needs room before it.
  const frontMm = folds?.outMm ?? stackMm;
  const neededMm = recessNeeded(resolved, resolved.board.depthMm, frontMm, book);
  const has = resolved.opening.recessDepthMm;
  if (has === undefined || has >= neededMm) return [];
  const text = (mm: number) => lengthText(mm, resolved.units);
  const leastMm = folds === undefined ? neededMm : neededMm - frontMm + Math.min(frontMm, folds.trainedMm);
  const needs = `The recess is ${text(has)} deep; board, raised stack and what stands out from the glass need about ${text(neededMm)}`;
  const finding: Finding = {
    id: "board.recess-too-shallow",
    severity: "fix",
    stage: "board",
    shadeId: resolved.shadeId,
    path: `${resolved.path}/opening/recessDepthMm`,
    text: `${needs}. The stack would stand out in front of the recess or rub behind.`,
    cite: folds === undefined ? cite("from-memory", "thickness of the stack") : cite("heavy-elastica"),
    figures: ["board.recess-needed", "board.stack-depth"],
    remedies: [...shallowerBoards(input, neededMm - has), mountOutside(resolved.path)],
  };
  return has < leastMm
    ? [finding]
    : [
        {
          ...finding,
          id: "board.recess-tight",
          severity: "note",
          text: `${needs} as sewn, so that the stack stands out in front of the recess by ${text(neededMm - has)}. Folds that were laid by hand, pressed and tied for some days lie flatter: at best ${text(leastMm)} would do.`,
          figures: [...(finding.figures ?? []), "folds.trained"],
        },
      ];
}

function mountOutside(path: string): Remedy {
  return {
    label: "Mount it outside the opening",
    patch: [{ op: "replace", path: `${path}/shade/mount`, value: "outside" }],
  };
}

/** Boards that save enough and still carry the lock or the drive. */
function shallowerBoards(input: BoardInput, overMm: number): Remedy[] {
  const { resolved } = input;
  const { depthMm } = takesUp(input);
  return (resolved.parts?.boards ?? [])
    .filter((board) => board.depthMm <= resolved.board.depthMm - overMm && board.depthMm >= depthMm)
    .slice(0, 2)
    .map((board) => ({
      label: `Use “${board.name}”`,
      patch: settingPatch(resolved, "board", "section", board.id),
    }));
}

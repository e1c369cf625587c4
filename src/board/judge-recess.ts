import type { Finding, Remedy } from "../figures/index.ts";
import { partChoice } from "../job/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import type { BoardInput } from "./board-input.ts";
import { takesUp } from "./judge-parts.ts";
import type { RecessDepths } from "./recess.ts";

/** Does an inside mount find room for board, stack and handles? `neededMm` is absent where it is mounted otherwise. */
export function judgeRecess(input: BoardInput, { neededMm, frontMm }: RecessDepths): Finding[] {
  const { shade, folds } = input;
  if (neededMm === undefined) return [];
  const has = shade.opening.recessDepthMm;
  if (has === undefined || has >= neededMm) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const leastMm = folds === undefined ? neededMm : neededMm - frontMm + Math.min(frontMm, folds.trainedMm);
  const needs = `The recess is ${text(has)} deep; board, raised stack and what stands out from the glass need about ${text(neededMm)}`;
  const finding: Finding = {
    id: "board.recess-too-shallow",
    severity: "fix",
    stage: "board",
    shadeId: shade.shadeId,
    path: `${shade.path}/opening/recessDepthMm`,
    text: `${needs}. The stack would stand out in front of the recess or rub behind.`,
    cite: folds === undefined ? cite("from-memory", "thickness of the stack") : cite("heavy-elastica"),
    figures: ["board.recess-needed", "board.stack-depth"],
    remedies: [...shallowerBoards(input, neededMm - has), mountOutside(shade.path)],
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
  const { shade } = input;
  const { depthMm } = takesUp(input);
  return shade.parts.boards
    .filter((board) => board.depthMm <= shade.board.depthMm - overMm && board.depthMm >= depthMm)
    .slice(0, 2)
    .map(partChoice(shade, "board", "section"));
}

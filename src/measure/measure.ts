import { type Figure, figureRule, type StageResult, staged } from "../figures/index.ts";
import type { Size } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { finishedSize } from "./finished-size.ts";
import { judgeBeyond } from "./judge-beyond.ts";
import { judgeOpening, stillToMeasure } from "./judge-opening.ts";
import type { MeasuredShade } from "./measure-reads.ts";

const BOARD_LENGTH = figureRule({
  id: "measure.board-length",
  label: "Board length",
  symbol: "B",
  unit: "mm",
  formula: "max(W − c, W / 2)",
  inputs: {
    W: ["mm", "finished width", "figure:measure.finished-width"],
    c: ["mm", "board shorter than the shade", "mount/boardShorterMm"],
  },
  cite: cite("us-sewing-handbook", "board = finished width − 1/4 in"),
  compute: ({ W, c }) => Math.max(W - c, W / 2),
});

const BOARD_ON_SLOPE = figureRule({
  id: "measure.board-on-slope",
  label: "Board, cut to lie on the slope",
  symbol: "B_s",
  unit: "mm",
  formula: "B·sqrt(1 + (j / W)^2)",
  inputs: {
    B: ["mm", "level length of the board", "figure:measure.board-length"],
    j: ["mm", "fall of the head", "opening/head", "opening/heightsMm"],
    W: ["mm", "finished width", "figure:measure.finished-width"],
  },
  cite: cite("geometry"),
  compute: ({ B, j, W }) => B * Math.sqrt(1 + (j / W) ** 2),
});

/** From the measured opening to the finished size, mm, with what must still be measured. */
export function measure(shade: MeasuredShade): StageResult<Size> {
  const { widthsMm, heightsMm, diagonalsMm, sillAboveFloorMm } = shade.opening;
  const { mount } = shade.making;
  const { values, workings } = finishedSize(shade);
  const { finishedWidthMm, finishedLengthMm, beyondLeftMm } = values;
  const head = headOf(shade);
  const boardLength = BOARD_LENGTH.figure({ W: finishedWidthMm, c: mount.boardShorterMm });
  const onSlope = boardOnSlope(boardLength.value, finishedWidthMm, head);

  const size: Size = {
    finishedWidthMm,
    finishedLengthMm,
    boardLengthMm: boardLength.value,
    ...(onSlope === undefined ? {} : { boardOnSlopeMm: onSlope.value }),
    openingWidthMm: shade.mount === "outside" ? Math.max(...widthsMm) : Math.min(...widthsMm),
    openingHeightMm: shade.mount === "outside" ? Math.max(...heightsMm) : Math.min(...heightsMm),
    ...(shade.mount === "to-size"
      ? {}
      : { openingTopMm: shade.mount === "outside" ? mount.overlapAboveMm : 0 }),
    ...(beyondLeftMm === undefined ? {} : { openingLeftMm: beyondLeftMm }),
    ...(head === undefined ? {} : { head }),
    widthSpreadMm: Math.max(...widthsMm) - Math.min(...widthsMm),
    heightSpreadMm: Math.max(...heightsMm) - Math.min(...heightsMm),
    ...(diagonalsMm === undefined ? {} : { outOfSquareMm: Math.abs(diagonalsMm[0] - diagonalsMm[1]) }),
    ...heightsAboveFloor(shade, finishedLengthMm, sillAboveFloorMm),
    toMeasure: stillToMeasure(shade),
  };
  return staged(size, {
    findings: () => [...judgeOpening(shade, size), ...judgeBeyond(shade, size)],
    workings: () => [...workings, boardLength, ...(onSlope === undefined ? [] : [onSlope])],
  });
}

/** Top line and hem above the floor, where the sill's height was given. */
function heightsAboveFloor(
  shade: MeasuredShade,
  finishedLengthMm: number,
  sillAboveFloorMm: number | undefined,
): Pick<Size, "topAboveFloorMm" | "hemAboveFloorMm"> {
  if (sillAboveFloorMm === undefined) return {};
  const { mount } = shade.making;
  const { heightsMm } = shade.opening;
  const topAboveFloorMm =
    shade.mount === "outside"
      ? sillAboveFloorMm + Math.max(...heightsMm) + mount.overlapAboveMm
      : sillAboveFloorMm + Math.min(...heightsMm);
  return { topAboveFloorMm, hemAboveFloorMm: topAboveFloorMm - finishedLengthMm };
}

/** A head that is not level, no lower than the opening itself. */
function headOf({ opening }: MeasuredShade): Size["head"] {
  const { head, heightsMm } = opening;
  if (head === undefined || head.fallMm === 0) return undefined;
  return { ...head, fallMm: Math.min(head.fallMm, Math.min(...heightsMm)) };
}

/** A board on a slope is longer than it looks from the room. */
function boardOnSlope(levelMm: number, widthMm: number, head: Size["head"]): Figure | undefined {
  if (head?.kind !== "angled") return undefined;
  return BOARD_ON_SLOPE.figure({ B: levelMm, j: head.fallMm, W: widthMm });
}

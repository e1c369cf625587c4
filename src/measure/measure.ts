import type { Finding, WorkingBook } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import type { Size } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { finishedSize } from "./finished-size.ts";
import { judgeBeyond } from "./judge-beyond.ts";
import { judgeOpening } from "./judge-opening.ts";

/** From the measured opening to the finished size, with what must still be measured. */
export function measure(resolved: ResolvedShade, book: WorkingBook): { size: Size; findings: Finding[] } {
  const { widthsMm, heightsMm, diagonalsMm, sillAboveFloorMm } = resolved.opening;
  const { mount } = resolved.making;
  const { finishedWidthMm, finishedLengthMm, beyondLeftMm } = finishedSize(resolved, book);
  const head = headOf(resolved);

  const boardLengthMm = book.figure("measure.board-length", {
    label: "Board length",
    symbol: "B",
    unit: "mm",
    formula: "max(W − c, W / 2)",
    given: {
      W: [finishedWidthMm, "mm", "finished width"],
      c: [mount.boardShorterMm, "mm", "board shorter than the shade"],
    },
    cite: cite("us-sewing-handbook", "board = finished width − 1/4 in"),
    compute: ({ W, c }) => Math.max(W - c, W / 2),
  });

  const size: Size = {
    finishedWidthMm,
    finishedLengthMm,
    boardLengthMm,
    ...onSlope(boardLengthMm, finishedWidthMm, head, book),
    openingWidthMm: resolved.mount === "outside" ? Math.max(...widthsMm) : Math.min(...widthsMm),
    openingHeightMm: resolved.mount === "outside" ? Math.max(...heightsMm) : Math.min(...heightsMm),
    ...(resolved.mount === "to-size"
      ? {}
      : { openingTopMm: resolved.mount === "outside" ? mount.overlapAboveMm : 0 }),
    ...(beyondLeftMm === undefined ? {} : { openingLeftMm: beyondLeftMm }),
    ...(head === undefined ? {} : { head }),
    widthSpreadMm: Math.max(...widthsMm) - Math.min(...widthsMm),
    heightSpreadMm: Math.max(...heightsMm) - Math.min(...heightsMm),
    ...(diagonalsMm === undefined ? {} : { outOfSquareMm: Math.abs(diagonalsMm[0] - diagonalsMm[1]) }),
    ...heightsAboveFloor(resolved, finishedLengthMm, sillAboveFloorMm),
    toMeasure: [],
  };
  const { findings, toMeasure } = judgeOpening(resolved, size);
  return { size: { ...size, toMeasure }, findings: [...findings, ...judgeBeyond(resolved, size)] };
}

/** Top line and hem above the floor, where the sill's height was given. */
function heightsAboveFloor(
  resolved: ResolvedShade,
  finishedLengthMm: number,
  sillAboveFloorMm: number | undefined,
): Pick<Size, "topAboveFloorMm" | "hemAboveFloorMm"> {
  if (sillAboveFloorMm === undefined) return {};
  const { mount } = resolved.making;
  const { heightsMm } = resolved.opening;
  const topAboveFloorMm =
    resolved.mount === "outside"
      ? sillAboveFloorMm + Math.max(...heightsMm) + mount.overlapAboveMm
      : sillAboveFloorMm + Math.min(...heightsMm);
  return { topAboveFloorMm, hemAboveFloorMm: topAboveFloorMm - finishedLengthMm };
}

/** A head that is not level, no lower than the opening itself. */
function headOf({ opening }: ResolvedShade): Size["head"] {
  const { head, heightsMm } = opening;
  if (head === undefined || head.fallMm === 0) return undefined;
  return { ...head, fallMm: Math.min(head.fallMm, Math.min(...heightsMm)) };
}

/** A board on a slope is longer than it looks from the room. */
function onSlope(
  levelMm: number,
  widthMm: number,
  head: Size["head"],
  book: WorkingBook,
): Pick<Size, "boardOnSlopeMm"> {
  if (head?.kind !== "angled") return {};
  return {
    boardOnSlopeMm: book.figure("measure.board-on-slope", {
      label: "Board, cut to lie on the slope",
      symbol: "B_s",
      unit: "mm",
      formula: "B·sqrt(1 + (j / W)^2)",
      given: {
        B: [levelMm, "mm", "level length of the board"],
        j: [head.fallMm, "mm", "fall of the head"],
        W: [widthMm, "mm", "finished width"],
      },
      cite: cite("geometry"),
      compute: ({ B, j, W }) => B * Math.sqrt(1 + (j / W) ** 2),
    }),
  };
}

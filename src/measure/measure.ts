import type { Finding, WorkingBook } from "../account/index.ts";
import type { Brief } from "../job/index.ts";
import type { Size } from "../shade/index.ts";
import { cite } from "../sources/index.ts";
import { finishedSize } from "./finished-size.ts";
import { judgeOpening } from "./judge-opening.ts";

/** From the measured opening to the finished size, with what must still be measured. */
export function measure(brief: Brief, book: WorkingBook): { size: Size; findings: Finding[] } {
  const { widthsMm, heightsMm, diagonalsMm, sillAboveFloorMm } = brief.opening;
  const { mount } = brief.making;
  const { finishedWidthMm, finishedLengthMm } = finishedSize(brief, book);

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
    reckon: ({ W, c }) => Math.max(W - c, W / 2),
  });

  const size: Size = {
    finishedWidthMm,
    finishedLengthMm,
    boardLengthMm,
    openingWidthMm: brief.mount === "outside" ? Math.max(...widthsMm) : Math.min(...widthsMm),
    openingHeightMm: brief.mount === "outside" ? Math.max(...heightsMm) : Math.min(...heightsMm),
    ...(brief.mount === "to-size"
      ? {}
      : { openingTopMm: brief.mount === "outside" ? mount.overlapAboveMm : 0 }),
    widthSpreadMm: Math.max(...widthsMm) - Math.min(...widthsMm),
    heightSpreadMm: Math.max(...heightsMm) - Math.min(...heightsMm),
    ...(diagonalsMm === undefined ? {} : { outOfSquareMm: Math.abs(diagonalsMm[0] - diagonalsMm[1]) }),
    ...heightsAboveFloor(brief, finishedLengthMm, sillAboveFloorMm),
    toMeasure: [],
  };
  const { findings, toMeasure } = judgeOpening(brief, size);
  return { size: { ...size, toMeasure }, findings };
}

/** Top line and hem above the floor, where the sill's height was given. */
function heightsAboveFloor(
  brief: Brief,
  finishedLengthMm: number,
  sillAboveFloorMm: number | undefined,
): Pick<Size, "topAboveFloorMm" | "hemAboveFloorMm"> {
  if (sillAboveFloorMm === undefined) return {};
  const { mount } = brief.making;
  const { heightsMm } = brief.opening;
  const topAboveFloorMm =
    brief.mount === "outside"
      ? sillAboveFloorMm + Math.max(...heightsMm) + mount.overlapAboveMm
      : sillAboveFloorMm + Math.min(...heightsMm);
  return { topAboveFloorMm, hemAboveFloorMm: topAboveFloorMm - finishedLengthMm };
}

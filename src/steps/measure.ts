import type { Step } from "../shade-plan/index.ts";
import { LADDER, listed } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { sentences } from "./wording.ts";

/** Measure the opening again before anything is cut, and see the finished size against it. */
export function measureSteps(bench: Bench): Step[] {
  if (bench.resolved.mount === "to-size") return [givenSize(bench)];
  return [opening(bench), square(bench), ...depth(bench), finishedSize(bench)];
}

function givenSize({ size, len }: Bench): Step {
  return {
    id: "measure-size",
    chapter: "measure",
    title: "See that the size fits",
    text: `This shade is made to a given finished size: ${len(size.finishedWidthMm)} wide and ${len(size.finishedLengthMm)} long. Hold a steel tape of that width and that length where it will hang before you cut.`,
    check: "Nothing is in the way at either side, at the top or at the hem.",
    caution: LADDER,
    sheet: "front",
  };
}

function opening({ resolved, size, len }: Bench): Step {
  const inside = resolved.mount === "inside";
  const width = `${inside ? "narrowest" : "widest"} width of ${len(size.openingWidthMm)}`;
  const height = `${inside ? "shortest" : "tallest"} height of ${len(size.openingHeightMm)}`;
  return {
    id: "measure-opening",
    chapter: "measure",
    action: { kind: "measure-opening", widthMm: size.openingWidthMm, heightMm: size.openingHeightMm },
    title: "Measure the opening once more",
    text: `With a steel tape, measure the width at the top, the middle and the bottom, and the height at the left, the centre and the right. This plan rests on a ${width} and a ${height}.`,
    check:
      size.toMeasure.length > 0
        ? `Still to measure before any cloth is cut: ${listed(size.toMeasure)}. Enter it, and the plan follows.`
        : "Every figure reads the same a second time. If one does not, change it in the plan before you cut.",
    caution: LADDER,
    sheet: "front",
  };
}

function square({ size, len }: Bench): Step {
  const known = size.outOfSquareMm;
  return {
    id: "measure-square",
    chapter: "measure",
    title: "Measure both diagonals",
    text: sentences(
      "Measure from corner to corner, both ways. Equal diagonals mean a square opening.",
      known === undefined ? "They have not been entered yet." : `Here they differ by ${len(known)}.`,
    ),
    sheet: "front",
  };
}

function depth({ resolved, board, len }: Bench): Step[] {
  const { recessDepthMm, obstructions = [] } = resolved.opening;
  if (resolved.mount !== "inside" && obstructions.length === 0) return [];
  const inTheWay = obstructions.map(
    ({ kind, projectionMm }) =>
      `${kind === "other" ? "something else" : `the ${kind}`} by ${len(projectionMm)}`,
  );
  return [
    {
      id: "measure-depth",
      chapter: "measure",
      title: "See that it clears",
      text: sentences(
        `The board is ${len(board.depthMm)} deep.`,
        resolved.mount === "inside" &&
          recessDepthMm !== undefined &&
          `The recess is ${len(recessDepthMm)} deep.`,
        inTheWay.length > 0 && `What stands out into the way: ${listed(inTheWay)}.`,
        "Hold an offcut of the board where it will sit and open and shut the window.",
      ),
      check: "Window, handle and latch move freely behind the board.",
      sheet: "side",
    },
  ];
}

function finishedSize({ resolved, size, len }: Bench): Step {
  const { mount } = resolved.making;
  const inside = resolved.mount === "inside";
  const how = inside
    ? `${len(mount.insideWidthOffMm)} is taken off the width, both sides together, and ${len(mount.insideLengthOffMm)} off the height.`
    : `It reaches ${len(mount.overlapSideMm)} beyond the opening at each side, ${len(mount.overlapAboveMm)} above it and ${len(mount.overlapBelowMm)} below it.`;
  return {
    id: "measure-finished",
    chapter: "measure",
    title: "Take the finished size",
    text: `The finished shade is ${len(size.finishedWidthMm)} wide and ${len(size.finishedLengthMm)} long, from the top front edge of the board to the hem. ${how}`,
    check: inside
      ? `A tape held out at ${len(size.finishedWidthMm)} passes between the sides from top to bottom.`
      : `A tape held out at ${len(size.finishedWidthMm)} meets no switch, pole or trim at either side.`,
    sheet: "front",
    figures: ["measure.finished-width", "measure.finished-length"],
  };
}

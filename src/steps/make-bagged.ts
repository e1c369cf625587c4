import type { Step } from "../shade-plan/index.ts";
import { IRON, listed } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { BLACKOUT_IRON } from "./hazards.ts";
import { barInHem } from "./rod-behind.ts";
import { sentences } from "./wording.ts";

/** Face and lining sewn right sides together round three sides, turned out, and a channel sewn for the bar. */
export function baggedSteps(bench: Bench): Step[] {
  return [sewRound(bench), turnOut(bench), ...channel(bench)];
}

function sewRound({ resolved, len, layer, about }: Bench): Step {
  const inner = (["interlining", "blackout"] as const).filter((name) => layer(name) !== undefined);
  const caught = inner.filter((name) => resolved.making.lining[`${name}Cut`] === "as-lining");
  const loose = inner.filter((name) => !caught.includes(name));
  return {
    id: "make-bag-out",
    chapter: "make",
    title: "Sew face and lining together",
    text: sentences(
      "Lay face and lining right sides together, edges level, and pin the sides and the lower edge.",
      caught.length > 0 &&
        `Lay the ${listed(caught)} on the wrong side of the lining: it is sewn in with the edges.`,
      `Sew both sides and the lower edge ${len(resolved.making.hems.seamMm)} from the edge, and leave the top open. Cut the corners off close to the stitches.`,
      loose.length > 0 &&
        `Lay the ${listed(loose)} on the wrong side of the lining, within the seams, and catch it to the seam allowances with long loose stitches.`,
    ),
    check: `Before it is turned, the diagonals between the seams agree within ${about("square")}.`,
    sheet: "marking",
  };
}

function turnOut({ size, faceWidthMm, layer, len }: Bench): Step {
  return {
    id: "make-turn-out",
    chapter: "make",
    title: "Turn it out and press",
    text: "Turn the shade out through the top, push the corners square with something blunt, roll the seams between your fingers so that no lining shows from the face, and press.",
    check: `It measures ${len(faceWidthMm)} across at the top, the middle and the bottom, and is longer than ${len(size.finishedLengthMm)} by the cloth for the board.`,
    caution: layer("blackout") === undefined ? IRON : BLACKOUT_IRON,
    sheet: "marking",
  };
}

function channel({ form, resolved, fine }: Bench): Step[] {
  if (!barInHem(form)) return [];
  return [
    {
      id: "make-bottom-hem",
      chapter: "make",
      title: "Sew a channel for the bar",
      text: `Sew through all layers along the lower edge, far enough above it for the bar, ${fine(resolved.bar.widthMm)} by ${fine(resolved.bar.thicknessMm)}, to slide in. Open the side seam over that height at one end, slide the bar in, and close it by hand.`,
      check: "The bar slides in and lies flat, and its ends stay inside the side seams.",
      sheet: "back",
    },
  ];
}

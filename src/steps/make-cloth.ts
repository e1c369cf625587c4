import { LAYER_NAMES, type LayerCut, layerCannotBeCut, type Step } from "../shade-plan/index.ts";
import { IRON, listed } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { BLACKOUT_IRON } from "./hazards.ts";
import { baggedSteps } from "./make-bagged.ts";
import { bandingSteps, bottomBandSteps } from "./make-bands.ts";
import { layerSteps } from "./make-layers.ts";
import { mitreSteps } from "./make-mitre.ts";
import { barInHem } from "./rod-behind.ts";
import { sentences } from "./wording.ts";

/** Joins, side hems, layers and bottom hem, apart so that pockets can come between them. */
export function clothSteps(bench: Bench) {
  const { bagged } = bench;
  return {
    joins: [
      ...bench.cloth.layers
        .filter((cut) => cut.panels.length > 1 && !layerCannotBeCut(cut))
        .map((cut) => join(bench, cut)),
      ...bottomBandSteps(bench),
    ],
    hemsPressed: [
      lines(bench),
      ...bandingSteps(bench),
      ...(bagged ? [] : [...sideHems(bench), ...mitreSteps(bench)]),
    ],
    layers: bagged ? baggedSteps(bench) : layerSteps(bench),
    bottomHem: bagged ? [] : bottomHem(bench),
  };
}

function join({ resolved, len, shrunk, faceWidthMm, form }: Bench, cut: LayerCut): Step {
  // A seam within a side hem is turned away with it.
  const seen = cut.seamsMm.filter((mm) => mm > 0 && mm < faceWidthMm);
  const name = LAYER_NAMES[cut.layer].toLowerCase();
  const matched = cut.repeatMm !== undefined;
  return {
    id: `make-join-${cut.layer}`,
    chapter: "make",
    title: `Join the ${name}`,
    text: sentences(
      `Lay the ${cut.panels.length} pieces of the ${name} side by side, the middle piece in the middle, all the same way up.`,
      matched &&
        "Match the pattern along the seam line, not along the edge, and pin it every hand’s breadth.",
      `Sew right sides together, ${len(resolved.making.hems.seamMm)} from the edge, and press the seams open.`,
    ),
    check: `Joined, the ${name} measures ${len(shrunk(cut).width(cut.cutWidthMm))} across${seen.length === 0 ? "" : `, and once its sides are turned the seams will lie ${listed(seen.map(len))} from its left edge${form.panel === undefined ? "" : " at the hem,"} seen from the room${cut.joinsAt === "under-columns" ? ", under columns or pleats" : ""}`}.`,
    caution: cut.layer === "blackout" ? BLACKOUT_IRON : IRON,
    sheet: "cutting",
  };
}

/** Hem line and top line: everything is measured from the first. */
function lines({ len, bottomHemMm, faceTopLineMm, boardAllowanceMm }: Bench): Step {
  return {
    id: "make-lines",
    chapter: "make",
    title: "Mark the hem line and the top line",
    brief: `hem line ${len(bottomHemMm)} from the edge · top line ${len(faceTopLineMm)} above it`,
    text: `On the wrong side of the face mark the hem line ${len(bottomHemMm)} above the lower edge, and the top line ${len(faceTopLineMm)} above the hem line. Measure at both sides and in the middle, and join the marks with a long straight edge.`,
    check: `Above the top line ${len(boardAllowanceMm)} of cloth is left, all the way across.`,
    sheet: "marking",
  };
}

function sideHems({ resolved, faceWidthMm, layer, len, sideHemMm }: Bench): Step[] {
  const { sideTurnMm, sideTurns } = resolved.making.hems;
  if (sideHemMm === 0) return [];
  const turn =
    sideTurns === 2
      ? `turn each side in by ${len(sideTurnMm)} and press, then by ${len(sideTurnMm)} again and press: each hem takes ${len(sideHemMm)}`
      : `turn each side in by ${len(sideTurnMm)} and press`;
  const alone =
    layer("lining") === undefined && layer("blackout") === undefined && layer("interlining") === undefined;
  return [
    {
      id: "make-side-hems",
      chapter: "make",
      action: { kind: "press-hem", edge: "side", turnMm: sideTurnMm, turns: sideTurns },
      title: alone ? "Sew the side hems" : "Press the side hems",
      brief: `${len(sideTurnMm)} turned in${sideTurns === 2 ? " twice" : ""}`,
      text: sentences(
        `With the wrong side of the face up, ${turn}.`,
        alone
          ? "Sew them down with small slip stitches, or a blind hem on the machine."
          : "Do not sew them yet: open them out again, the creases stay.",
      ),
      check: `Folded, the face measures ${len(faceWidthMm)} across at the top, the middle and the bottom. Put it right now; later it cannot be.`,
      caution: IRON,
      sheet: "marking",
    },
  ];
}

function bottomHem({
  resolved,
  size,
  cloth,
  layer,
  len,
  ribbed,
  bottomHemMm,
  layersTopLineMm,
  liningInHem,
  form,
}: Bench): Step[] {
  if (bottomHemMm === 0) return [];
  const { bottomTurnMm, bottomTurns } = resolved.making.hems;
  const turn =
    bottomTurns === 2
      ? `Turn the lower edge up by ${len(bottomTurnMm)} and press, then by ${len(bottomTurnMm)} again, so that the fold lies on the hem line`
      : `Turn the lower edge up by ${len(bottomTurnMm)} on the hem line, its raw edge neatened`;
  const through = Math.abs(layersTopLineMm - size.finishedLengthMm) > 0.5;
  const inHem = barInHem(form);
  return [
    {
      id: "make-bottom-hem",
      chapter: "make",
      action: { kind: "press-hem", edge: "bottom", turnMm: bottomTurnMm, turns: bottomTurns },
      title: "Sew the bottom hem",
      text: sentences(
        `${turn}.`,
        liningInHem && "The lower edge of the lining goes in with it.",
        cloth.corner.kind === "mitred" && inHem
          ? "Sew along the upper edge of the hem. Slip-stitch the slant of one corner, slide the weight bar in at the other, then close that too."
          : inHem
            ? "Sew along the upper edge of the hem, and leave both ends open: the weight bar goes in there."
            : "Sew along the upper edge of the hem, and close both ends: no bar goes in there.",
      ),
      check: through
        ? `From the hem to the top line it measures ${len(layersTopLineMm)} at the left, the centre and the right; ${ribbed ? "the pockets" : "folds, tucks or gathers"} take up the rest.`
        : `From the hem to the top line it measures ${len(size.finishedLengthMm)} at the left, the centre and the right.`,
      caution: layer("blackout") === undefined ? IRON : BLACKOUT_IRON,
      sheet: "marking",
    },
  ];
}

import type { LayerCut, Step } from "../shade-plan/index.ts";
import type { Bench } from "./bench.ts";
import { sentences } from "./wording.ts";

/** Interlining, blackout and lining laid on the wrong side of the face, from the room to the glass. */
export function layerSteps(bench: Bench): Step[] {
  const { layer } = bench;
  const interlining = layer("interlining");
  const blackout = layer("blackout");
  const lining = layer("lining");
  const steps = [
    ...(interlining === undefined ? [] : [between(bench, "interlining")]),
    ...(blackout === undefined ? [] : [between(bench, "blackout")]),
    ...(lining === undefined ? [] : [lineIt(bench)]),
  ];
  return steps.length === 0 ? [] : [...steps, catchDown(bench, lining)];
}

const BOND =
  "Bond it to the layer below as the maker of the adhesive says, from the middle outwards, and a strip of all layers first: measure how stiff that is.";

/** Cut to the finished size it lies within the fold lines; cut like the lining it is turned in with the edges. */
function between(bench: Bench, name: "interlining" | "blackout"): Step {
  const { resolved, layer } = bench;
  const { bonded } = resolved.making.lining;
  const onWhat = name === "blackout" && layer("interlining") ? "interlining" : "wrong side of the face";
  const turnedIn = resolved.making.lining[`${name}Cut`] === "as-lining";
  return {
    id: `make-${name}`,
    chapter: "make",
    title: `Lay the ${name} in`,
    text: sentences(
      turnedIn
        ? `Lay the ${name} on the ${onWhat}, its upper edge level with that of the face: side hems and bottom hem fold over it with the lining.`
        : `Lay the ${name} on the ${onWhat}: ${innerPlace(bench, name)}.`,
      bonded
        ? BOND
        : name === "interlining"
          ? "Smooth it out, and catch it to the face along the creases with long loose stitches, one thread of the face at a time."
          : "Its coated side faces the window. Hold it with clips, not pins: every hole shows as a point of light.",
    ),
    check: turnedIn
      ? "It lies flat without a ripple, and its sides reach as far as the lining will."
      : "It lies flat without a ripple and reaches no further than the creases.",
  };
}

function innerPlace(bench: Bench, name: "interlining" | "blackout"): string {
  const { resolved, len, faceWidthMm, layersTopLineMm } = bench;
  const { innerNarrowerMm, innerLongerMm } = resolved.making.lining;
  const sizes = `${len(faceWidthMm - innerNarrowerMm)} by ${len(layersTopLineMm + innerLongerMm)}`;
  if (innerNarrowerMm === 0 && innerLongerMm === 0) {
    return `its sides on the creases of the side hems, its lower edge on the hem line, its upper edge on the top line, ${sizes}`;
  }
  return `the ${name} is ${sizes}; centre it between the side creases, its lower edge on the hem line`;
}

function lineIt(bench: Bench): Step {
  const { resolved, len, about, layer } = bench;
  const over = resolved.making.lining.widthOverFinishedMm ?? 0;
  const under = layer("blackout") ? "blackout" : layer("interlining") ? "interlining" : "face";
  return {
    id: "make-lining",
    chapter: "make",
    title: "Lay the lining on",
    text: sentences(
      `Lay the lining on the ${under}, its right side towards you, its upper edge level with the upper edge of the face.`,
      over > 0
        ? `It is ${len(over)} wider than the finished shade: fold the side hems of the face in first, then turn each side of the lining under by ${len(over / 2)}, so that it lies just inside the edge.`
        : "Its sides lie in the creases of the side hems: fold the hems over them.",
      resolved.making.lining.squaringMm > 0 &&
        `Square it first: ${len(resolved.making.lining.squaringMm)} at its lower edge is to spare for that, and is cut off now.`,
      lowerEdge(bench),
      resolved.making.lining.bonded && BOND,
      "Smooth it from the middle outwards. Never pull it: a tight lining puckers the face.",
    ),
    check: `Edges level at the top, and ${about("square")} or less between the diagonals of the shade, hem line to top line.`,
    sheet: "marking",
  };
}

/** Where the lining ends below: within the hem, or above it with an edge to be turned under. */
function lowerEdge({ len, about, liningBelowMm, liningInHem, bottomHemMm }: Bench): string {
  if (Math.abs(liningBelowMm - bottomHemMm) < 1) {
    return "Its lower edge is then level with the lower edge of the face.";
  }
  if (liningInHem) return "Its lower edge ends within the bottom hem, which will cover it.";
  return `Its lower edge ends ${len(-liningBelowMm)} above the hem line: turn it under by ${about("liningEdge")} and slip-stitch it down.`;
}

function catchDown({ resolved }: Bench, lining: LayerCut | undefined): Step {
  const what = lining === undefined ? "the side hems" : "side hems and lining";
  return {
    id: "make-catch-down",
    chapter: "make",
    title: lining === undefined ? "Sew the side hems down" : "Sew the lining to the side hems",
    text:
      (resolved.making.lining.widthOverFinishedMm ?? 0) > 0 && lining !== undefined
        ? "Slip-stitch the folded sides of the lining to the side hems, from the top line to the hem line."
        : `Slip-stitch ${what} down along both sides, from the top line to the hem line.`,
    check: "From the room, the face hangs smooth over your arm and no stitch shows.",
  };
}

/** Between the columns of rings nothing else holds the layers: caught once the columns are marked. */
export function catchSteps({ about, aboutMm, layer, bagged, grid, cloth, resolved }: Bench): Step[] {
  if (bagged || resolved.making.lining.bonded || cloth.layers.length < 2) return [];
  return [
    {
      id: "make-catch-layers",
      chapter: "make",
      action: {
        kind: "baste-layers",
        layers: cloth.layers.length,
        columnsMm: grid.columns.map((column) => column.xMm),
        everyMm: aboutMm("catchDown"),
      },
      title: "Catch the layers together",
      text: sentences(
        `Along the mark of each column catch the layers together every ${about("catchDown")} or so, with long loose stitches, so that they fold as one.`,
        layer("blackout") === undefined
          ? "Take up one thread of the face only, so that nothing shows from the room."
          : "Leave the blackout out of these stitches wherever you can.",
      ),
      check: "Lifted by the lining, the face follows without a bag between two columns.",
    },
  ];
}

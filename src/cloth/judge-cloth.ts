import type { Finding } from "../account/index.ts";
import { type Brief, type Cloth, settingPatch } from "../job/index.ts";
import { type Grid, LAYER_NAMES, type LayerCut } from "../shade/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText, SAME_LENGTH_MM } from "../units/index.ts";
import { seamThatFitsMm } from "./joins.ts";

/** What the cloth itself makes difficult. */
export function judgeCloth(
  brief: Brief,
  grid: Grid,
  layers: LayerCut[],
  cloths: Map<string, Cloth>,
): Finding[] {
  return [
    ...missingCloths(brief),
    ...(brief.faceAssumed ? [assumedFace(brief)] : []),
    ...layers.flatMap((layer) => judgeLayer(brief, grid, layer, cloths.get(layer.clothId))),
    ...stitchedBlackout(brief),
    ...deepPockets(brief, grid),
    ...liningOverHem(brief),
  ];
}

function base(brief: Brief) {
  return { stage: "cloth", shadeId: brief.shadeId } as const;
}

function missingCloths(brief: Brief): Finding[] {
  return brief.missing.map((reference) => ({
    ...base(brief),
    id: "cloth.unknown-part",
    weight: "stop",
    path: reference.path,
    text: `There is no ${reference.what} “${reference.asked}” in this job. “${reference.used}” stands in until you choose one.`,
    cite: cite("our-choice"),
    remedies: [{ label: "Let the planner choose", patch: [{ op: "remove", path: reference.path }] }],
  }));
}

function assumedFace(brief: Brief): Finding {
  return {
    ...base(brief),
    id: "cloth.face-assumed",
    weight: "mind",
    path: `${brief.path}/shade/face`,
    text: `No face cloth is chosen: ${brief.cloths.face.name} stands in. Enter your own cloth’s usable width, repeat and weight before you cut.`,
    cite: cite("demo"),
    remedies: [],
  };
}

function judgeLayer(brief: Brief, grid: Grid, cut: LayerCut, cloth: Cloth | undefined): Finding[] {
  const findings: Finding[] = [];
  const name = LAYER_NAMES[cut.layer];
  const seamMm = brief.making.hems.seamMm;
  if (cut.panels.length > 1) findings.push(joins(brief, grid, cut));
  if (seamThatFitsMm(seamMm, cut.usableWidthMm) < seamMm) {
    findings.push({
      ...base(brief),
      id: "cloth.too-narrow",
      weight: "stop",
      path: `${brief.path}/shade/${cut.layer}`,
      text: `${cut.clothName} is ${lengthText(cut.usableWidthMm, brief.units)} wide, too narrow for seams of ${lengthText(seamMm, brief.units)}.`,
      cite: cite("our-choice"),
      remedies: [],
    });
  }
  const joinedMm = (cut.panels.at(-1)?.joinedXMm ?? 0) + (cut.panels.at(-1)?.widthMm ?? 0);
  if (joinedMm < cut.cutWidthMm - 1 || cut.panels.length > 20) {
    findings.push({
      ...base(brief),
      id: "cloth.too-many-joins",
      weight: "stop",
      path: `${brief.path}/shade/${cut.layer}`,
      text: `${name}: ${cut.panels.length} panels of ${cut.clothName} would be joined. Choose a wider cloth.`,
      cite: cite("our-choice"),
      remedies: [],
    });
  }
  if (cloth !== undefined && cloth.shrinkLength === undefined && cut.layer !== "interlining") {
    findings.push({
      ...base(brief),
      id: "cloth.shrinkage-unknown",
      weight: "unproven",
      path: `${brief.path}/shade/${cut.layer}`,
      text: `${name}: how much ${cut.clothName} still shrinks is not given. Steam or wash it before cutting, or allow 3 %: ${lengthText(0.03 * cut.cutLengthMm, brief.units)} on the length.`,
      cite: cite("astm-d3691"),
      remedies: [],
    });
  }
  return findings;
}

function joins(brief: Brief, grid: Grid, cut: LayerCut): Finding {
  const seamMm = seamThatFitsMm(brief.making.hems.seamMm, cut.usableWidthMm);
  const sideHemMm = cut.layer === "face" ? brief.making.hems.sideTurnMm * brief.making.hems.sideTurns : 0;
  // Seam lines from the finished left edge: half of what the layer is cut wider lies beyond it.
  const overhangMm = cut.layer === "face" ? sideHemMm : (cut.cutWidthMm - finishedWidthMm(cut)) / 2;
  const seams = cut.panels.slice(1).map((panel) => panel.joinedXMm + seamMm - overhangMm);
  const off = seams.map((xMm) => Math.min(...grid.columns.map((column) => Math.abs(column.xMm - xMm))));
  const under = off.every((distanceMm) => distanceMm < seamMm + SAME_LENGTH_MM);
  return {
    ...base(brief),
    id: "cloth.joins",
    weight: "mind",
    path: `${brief.path}/shade/${cut.layer}`,
    text: `${LAYER_NAMES[cut.layer]}: ${cut.panels.length} panels are joined, a full width in the middle, seams at ${seams.map((xMm) => lengthText(xMm, brief.units)).join(" and ")} from the left edge${under ? ", under the ring columns" : "; a seam shows least under a ring column"}.`,
    cite: cite("us-sewing-handbook", "full width centred, equal parts at each side"),
    remedies: [],
  };
}

function finishedWidthMm(cut: LayerCut): number {
  return cut.makeUp[0]?.widthMm ?? cut.cutWidthMm;
}

function stitchedBlackout(brief: Brief): Finding[] {
  if (brief.cloths.blackout === undefined) return [];
  const pockets = brief.making.ribs.kind === "through-pocket";
  return [
    {
      ...base(brief),
      id: "cloth.blackout-pinholes",
      weight: pockets ? "fix" : "mind",
      path: `${brief.path}/shade/blackout`,
      text: pockets
        ? "Pockets stitched through blackout let light in along every row of needle holes."
        : "Rings are sewn through the blackout: use few stitches, set off from row to row, or glue a patch behind them, since every needle hole shows as a point of light.",
      cite: cite("blackout-guide"),
      remedies: pockets
        ? [
            {
              label: "Form the pockets in the lining alone",
              patch: settingPatch(brief, "ribs", "kind", "lining-pocket"),
            },
          ]
        : [],
    },
  ];
}

function deepPockets(brief: Brief, grid: Grid): Finding[] {
  const { kind, pocketMm } = brief.making.ribs;
  const smallest = Math.min(...grid.spacingsMm, grid.bottomSectionMm);
  if (kind === "none" || pocketMm < smallest / 2) return [];
  return [
    {
      ...base(brief),
      id: "cloth.pocket-too-deep",
      weight: "stop",
      path: `${brief.path}/shade/making/ribs/pocketMm`,
      text: `A pocket ${lengthText(pocketMm, brief.units)} deep does not fit between rows ${lengthText(smallest, brief.units)} apart.`,
      cite: cite("geometry"),
      remedies: [{ label: "Make it 10 mm deep", patch: settingPatch(brief, "ribs", "pocketMm", 10) }],
    },
  ];
}

function liningOverHem(brief: Brief): Finding[] {
  const needsLining = brief.making.ribs.kind === "lining-pocket" && brief.cloths.lining === undefined;
  if (!needsLining) return [];
  return [
    {
      ...base(brief),
      id: "cloth.pockets-without-lining",
      weight: "stop",
      path: `${brief.path}/shade/lining`,
      text: "Rib pockets are to be formed in the lining, but the shade has none.",
      cite: cite("pocket-spacing"),
      remedies: [
        {
          label: "Sew separate pocket strips",
          patch: settingPatch(brief, "ribs", "kind", "strip-pocket"),
        },
      ],
    },
  ];
}

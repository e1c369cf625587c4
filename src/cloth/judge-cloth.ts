import type { Finding } from "../figures/index.ts";
import { type Brief, type Cloth, settingPatch } from "../job/index.ts";
import type { ClothPlan } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import type { ClothInput } from "./cloth-input.ts";
import type { CutStory } from "./cut-layer.ts";
import { clothBase, judgeLayer, judgeTurn } from "./judge-layer.ts";
import { judgeCentring, judgeDirection, judgeMotif } from "./judge-motif.ts";
import { judgeTrims } from "./judge-trims.ts";

/** What the cloth itself makes difficult. */
export function judgeCloth(
  input: ClothInput,
  cuts: readonly CutStory[],
  cloth: ClothPlan,
  cloths: ReadonlyMap<string, Cloth>,
): Finding[] {
  const { brief, size } = input;
  return [
    ...missingCloths(brief),
    ...(brief.faceAssumed ? [assumedFace(brief)] : []),
    ...cuts.flatMap((cut) => [
      ...judgeLayer(brief, cut),
      ...judgeTurn(brief, cut),
      ...judgeMotif(input, cut),
      ...judgeCentring(input, cut),
    ]),
    ...judgeDirection(brief, cuts),
    ...stitchedBlackout(brief, cloth),
    ...(cloth.ribLines.length === 0 ? [] : [...deepPockets(brief, cloth), ...liningOverHem(brief)]),
    ...judgeTrims(brief, size, cloth, cloths),
  ];
}

function missingCloths(brief: Brief): Finding[] {
  return brief.missing.map((reference) => ({
    ...clothBase(brief),
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
    ...clothBase(brief),
    id: "cloth.face-assumed",
    weight: "mind",
    path: `${brief.path}/shade/face`,
    text: `No face cloth is chosen: ${brief.cloths.face.name} stands in. Enter your own cloth’s usable width, repeat and weight before you cut.`,
    cite: cite("demo"),
    remedies: [],
  };
}

function stitchedBlackout(brief: Brief, { ribLines }: ClothPlan): Finding[] {
  if (brief.cloths.blackout === undefined) return [];
  const pockets = brief.making.ribs.kind === "through-pocket" && ribLines.length > 0;
  return [
    {
      ...clothBase(brief),
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

/** Strips and bare battens have no pocket to be too deep. */
function deepPockets(brief: Brief, { ribLines }: ClothPlan): Finding[] {
  const { kind, pocketMm } = brief.making.ribs;
  const heights = ribLines.map(({ fromHemMm }) => fromHemMm);
  const smallest = Math.min(...heights.map((mm, i) => mm - (heights[i - 1] ?? 0)));
  if (kind === "strip-pocket" || kind === "bare" || pocketMm < smallest / 2) return [];
  return [
    {
      ...clothBase(brief),
      id: "cloth.pocket-too-deep",
      weight: "stop",
      path: `${brief.path}/shade/making/ribs/pocketMm`,
      text: `A pocket ${lengthText(pocketMm, brief.units)} deep does not fit between rows ${lengthText(smallest, brief.units)} apart.`,
      cite: cite("geometry"),
      remedies:
        smallest > 20
          ? [{ label: "Make it 10 mm deep", patch: settingPatch(brief, "ribs", "pocketMm", 10) }]
          : [],
    },
  ];
}

function liningOverHem(brief: Brief): Finding[] {
  const needsLining = brief.making.ribs.kind === "lining-pocket" && brief.cloths.lining === undefined;
  if (!needsLining) return [];
  return [
    {
      ...clothBase(brief),
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

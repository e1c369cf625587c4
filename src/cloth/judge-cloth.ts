import type { Finding } from "../figures/index.ts";
import { type Cloth, type ResolvedShade, settingPatch } from "../job/index.ts";
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
  const { resolved, size } = input;
  return [
    ...missingCloths(resolved),
    ...(resolved.faceAssumed ? [assumedFace(resolved)] : []),
    ...cuts.flatMap((cut) => [
      ...judgeLayer(resolved, cut),
      ...judgeTurn(resolved, cut),
      ...judgeMotif(input, cut),
      ...judgeCentring(input, cut),
    ]),
    ...judgeDirection(resolved, cuts),
    ...stitchedBlackout(resolved, cloth),
    ...(cloth.ribLines.length === 0 ? [] : [...deepPockets(resolved, cloth), ...liningOverHem(resolved)]),
    ...judgeTrims(resolved, size, cloth, cloths),
  ];
}

function missingCloths(resolved: ResolvedShade): Finding[] {
  return resolved.missing.map((reference) => ({
    ...clothBase(resolved),
    id: "cloth.unknown-part",
    severity: "stop",
    path: reference.path,
    text: `There is no ${reference.what} “${reference.asked}” in this job. “${reference.used}” stands in until you choose one.`,
    cite: cite("our-choice"),
    remedies: [{ label: "Let the planner choose", patch: [{ op: "remove", path: reference.path }] }],
  }));
}

function assumedFace(resolved: ResolvedShade): Finding {
  return {
    ...clothBase(resolved),
    id: "cloth.face-assumed",
    severity: "note",
    path: `${resolved.path}/shade/face`,
    text: `No face cloth is chosen: ${resolved.cloths.face.name} stands in. Enter your own cloth’s usable width, repeat and weight before you cut.`,
    cite: cite("demo"),
    remedies: [],
  };
}

function stitchedBlackout(resolved: ResolvedShade, { ribLines }: ClothPlan): Finding[] {
  if (resolved.cloths.blackout === undefined) return [];
  const pockets = resolved.making.ribs.kind === "through-pocket" && ribLines.length > 0;
  return [
    {
      ...clothBase(resolved),
      id: "cloth.blackout-pinholes",
      severity: pockets ? "fix" : "note",
      path: `${resolved.path}/shade/blackout`,
      text: pockets
        ? "Pockets stitched through blackout let light in along every row of needle holes."
        : "Rings are sewn through the blackout: use few stitches, set off from row to row, or glue a patch behind them, since every needle hole shows as a point of light.",
      cite: cite("blackout-guide"),
      remedies: pockets
        ? [
            {
              label: "Form the pockets in the lining alone",
              patch: settingPatch(resolved, "ribs", "kind", "lining-pocket"),
            },
          ]
        : [],
    },
  ];
}

/** Strips and bare battens have no pocket to be too deep. */
function deepPockets(resolved: ResolvedShade, { ribLines }: ClothPlan): Finding[] {
  const { kind, pocketMm } = resolved.making.ribs;
  const heights = ribLines.map(({ fromHemMm }) => fromHemMm);
  const smallest = Math.min(...heights.map((mm, i) => mm - (heights[i - 1] ?? 0)));
  if (kind === "strip-pocket" || kind === "bare" || pocketMm < smallest / 2) return [];
  return [
    {
      ...clothBase(resolved),
      id: "cloth.pocket-too-deep",
      severity: "stop",
      path: `${resolved.path}/shade/making/ribs/pocketMm`,
      text: `A pocket ${lengthText(pocketMm, resolved.units)} deep does not fit between rows ${lengthText(smallest, resolved.units)} apart.`,
      cite: cite("geometry"),
      remedies:
        smallest > 20
          ? [{ label: "Make it 10 mm deep", patch: settingPatch(resolved, "ribs", "pocketMm", 10) }]
          : [],
    },
  ];
}

function liningOverHem(resolved: ResolvedShade): Finding[] {
  const needsLining = resolved.making.ribs.kind === "lining-pocket" && resolved.cloths.lining === undefined;
  if (!needsLining) return [];
  return [
    {
      ...clothBase(resolved),
      id: "cloth.pockets-without-lining",
      severity: "stop",
      path: `${resolved.path}/shade/lining`,
      text: "Rib pockets are to be formed in the lining, but the shade has none.",
      cite: cite("pocket-spacing"),
      remedies: [
        {
          label: "Sew separate pocket strips",
          patch: settingPatch(resolved, "ribs", "kind", "strip-pocket"),
        },
      ],
    },
  ];
}

import type { Finding } from "../figures/index.ts";
import { type Cloth, settingPatch } from "../job/index.ts";
import type { ClothPlan } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import { listed } from "../words/index.ts";
import type { ClothInput, ClothShade } from "./cloth-input.ts";
import type { CutStory } from "./cut-layer.ts";
import { clothBase, judgeLayer, judgeTurn } from "./judge-layer.ts";
import { judgeCentring, judgeCutMotif, judgeDirection } from "./judge-motif.ts";
import { judgeTrims } from "./judge-trims.ts";

/** What the cloth itself makes difficult. */
export function judgeCloth(
  input: ClothInput,
  cuts: readonly CutStory[],
  cloth: ClothPlan,
  cloths: ReadonlyMap<string, Cloth>,
): Finding[] {
  const { shade, size } = input;
  return [
    ...missingCloths(shade),
    ...(shade.faceAssumed ? [assumedFace(shade)] : []),
    ...cuts.flatMap((cut) => [
      ...judgeLayer(input, cut),
      ...judgeTurn(shade, cut),
      ...judgeCutMotif(input, cut),
      ...judgeCentring(input, cut),
    ]),
    ...judgeDirection(shade, cuts),
    ...stitchedBlackout(shade, cloth),
    ...(cloth.ribLines.length === 0 ? [] : [...deepPockets(shade, cloth), ...liningOverHem(shade)]),
    ...judgeTrims(shade, size, cloth, cloths),
  ];
}

/** `usableWidthMm` as a maker says it. */
function fieldWords(field: string): string {
  const words = field.replace(/(?:Mm|Gsm)$/, "").replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return `its ${words === "mass" ? "weight" : words}`;
}

function missingCloths(shade: ClothShade): Finding[] {
  return shade.missing.map((reference) => ({
    ...clothBase(shade),
    id: "cloth.unknown-part",
    severity: "stop",
    path: reference.path,
    text:
      reference.unknown === undefined
        ? `There is no ${reference.what} “${reference.asked}” in this job. “${reference.used}” stands in until you choose one.`
        : `“${reference.asked}” cannot be planned with yet: not known is ${listed(reference.unknown.map(fieldWords))}. “${reference.used}” is drawn in its place; make nothing of it until that is measured.`,
    cite: cite("our-choice"),
    remedies: [{ label: "Let the planner choose", patch: [{ op: "remove", path: reference.path }] }],
  }));
}

function assumedFace(shade: ClothShade): Finding {
  return {
    ...clothBase(shade),
    id: "cloth.face-assumed",
    severity: "note",
    path: `${shade.path}/shade/face`,
    text: `No face cloth is chosen: ${shade.cloths.face.name} stands in. Enter your own cloth’s usable width, repeat and weight before you cut.`,
    cite: cite("demo"),
    remedies: [],
  };
}

function stitchedBlackout(shade: ClothShade, { ribLines }: ClothPlan): Finding[] {
  if (shade.cloths.blackout === undefined) return [];
  const pockets = shade.making.ribs.kind === "through-pocket" && ribLines.length > 0;
  return [
    {
      ...clothBase(shade),
      id: "cloth.blackout-pinholes",
      severity: pockets ? "fix" : "note",
      path: `${shade.path}/shade/blackout`,
      text: pockets
        ? "Pockets stitched through blackout let light in along every row of needle holes."
        : "Rings are sewn through the blackout: use few stitches, set off from row to row, or glue a patch behind them, since every needle hole shows as a point of light.",
      cite: cite("blackout-guide"),
      remedies: pockets
        ? [
            {
              label: "Form the pockets in the lining alone",
              patch: settingPatch(shade, "ribs", "kind", "lining-pocket"),
            },
          ]
        : [],
    },
  ];
}

/** Strips and bare battens have no pocket to be too deep. */
function deepPockets(shade: ClothShade, { ribLines }: ClothPlan): Finding[] {
  const { kind, pocketMm } = shade.making.ribs;
  const heights = ribLines.map(({ fromHemMm }) => fromHemMm);
  const smallest = Math.min(...heights.map((mm, i) => mm - (heights[i - 1] ?? 0)));
  if (kind === "strip-pocket" || kind === "bare" || pocketMm < smallest / 2) return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.pocket-too-deep",
      severity: "stop",
      path: `${shade.path}/shade/making/ribs/pocketMm`,
      text: `A pocket ${lengthText(pocketMm, shade.units)} deep does not fit between rows ${lengthText(smallest, shade.units)} apart.`,
      cite: cite("geometry"),
      remedies:
        smallest > 20
          ? [{ label: "Make it 10 mm deep", patch: settingPatch(shade, "ribs", "pocketMm", 10) }]
          : [],
    },
  ];
}

function liningOverHem(shade: ClothShade): Finding[] {
  const needsLining = shade.making.ribs.kind === "lining-pocket" && shade.cloths.lining === undefined;
  if (!needsLining) return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.pockets-without-lining",
      severity: "stop",
      path: `${shade.path}/shade/lining`,
      text: "Rib pockets are to be formed in the lining, but the shade has none.",
      cite: cite("pocket-spacing"),
      remedies: [
        {
          label: "Sew separate pocket strips",
          patch: settingPatch(shade, "ribs", "kind", "strip-pocket"),
        },
      ],
    },
  ];
}

import type { Finding } from "../figures/index.ts";
import { settingPatch } from "../job/index.ts";
import { LAYER_NAMES } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { clothLengthText, lengthText } from "../units/index.ts";
import type { ClothInput, ClothShade } from "./cloth-input.ts";
import type { CutStory } from "./cut-layer.ts";
import { clothBase } from "./judge-layer.ts";

import { offTheBoltMm } from "./off-the-bolt.ts";
import { acrossIsKnown, USUAL_ACROSS } from "./place-motif.ts";
import { shapeAcross } from "./upright-shape.ts";

/** Whether the pattern falls where it is wanted, and what the cloth does not say. */
export function judgeCutMotif(input: ClothInput, story: CutStory): Finding[] {
  const { shade } = input;
  const { cut, cloth, shape } = story;
  const { repeat } = cloth;
  if (repeat === undefined) return [];
  const { units } = shade;
  const name = LAYER_NAMES[cut.layer];
  const base = { ...clothBase(shade), path: `${shade.path}/shade/${cut.layer}` };
  const findings: Finding[] = [];
  if (shape.missMm > 0.5) {
    findings.push({
      ...base,
      id: "cloth.motif-off-place",
      severity: "fix",
      text: `${name}: across, the pattern misses its place by ${lengthText(shape.missMm, units)}: ${cut.clothName} is not wide enough to move it there. It lies in the middle of the cloth.`,
      cite: cite("geometry"),
      remedies: waysToCentre(input, story),
    });
  }
  const { across = USUAL_ACROSS } = shade.making.pattern;
  const asksAcross = cut.panels.length > 1 || across !== USUAL_ACROSS;
  if (repeat.horizontalMm === undefined && asksAcross) {
    findings.push({
      ...base,
      id: "cloth.repeat-across-unknown",
      severity: "unproven",
      text: `${name}: how wide a repeat of ${cut.clothName} is has not been given. It is taken to match where two usable widths are joined, with a motif in the middle; measure it before you cut.`,
      cite: cite("our-choice"),
      remedies: [],
    });
  }
  if (
    repeat.horizontalMm !== undefined &&
    cut.panels.length > 1 &&
    !acrossIsKnown(repeat, cut.usableWidthMm, shade.making.hems.seamMm)
  ) {
    findings.push({
      ...base,
      id: "cloth.repeat-wide-as-cloth",
      severity: "unproven",
      text: `${name}: a repeat is ${lengthText(repeat.horizontalMm, units)} wide and the cloth ${lengthText(cut.usableWidthMm, units)}, which leaves no seam between two. Check that the print goes on into the selvedge by ${lengthText(shade.making.hems.seamMm, units)}.`,
      cite: cite("geometry"),
      remedies: [],
    });
  }
  if (repeat.match === "half-drop" && cut.panels.length === 1) {
    findings.push({
      ...base,
      id: "cloth.half-drop-on-one-width",
      severity: "note",
      text: `${name}: one width makes the layer, so the half drop asks for nothing more.`,
      cite: cite("half-drop-faq"),
      remedies: [],
    });
  }
  const repeatMm = shape.motif?.repeatYMm ?? repeat.verticalMm;
  if (repeatMm > cut.cutLengthMm - cut.edges.topMm - cut.edges.bottomMm) {
    findings.push({
      ...base,
      id: "cloth.motif-longer-than-shade",
      severity: "note",
      text: `${name}: one repeat, ${lengthText(repeatMm, units)}, is longer than the shade: no motif shows whole from top to hem.`,
      cite: cite("geometry"),
      remedies: [],
    });
  }
  return findings;
}

/** The ways to centre the pattern that this cloth is wide enough for. */
function waysToCentre(input: ClothInput, { cut, cloth, shape }: CutStory): Finding["remedies"] {
  if (cut.turned) return [];
  return (["centre-motif", "between-motifs"] as const)
    .filter((way) => way !== shape.across)
    .filter((way) => shapeAcross(input, cut.layer, cloth, way).missMm <= 0.5)
    .map((way) => ({
      label: ACROSS_LABELS[way],
      patch: settingPatch(input.shade, "pattern", "across", way),
    }));
}

const OTHER_ACROSS = { "centre-motif": "between-motifs", "between-motifs": "centre-motif" } as const;
const ACROSS_WORDS = {
  "centre-motif": "a motif in the middle",
  "between-motifs": "the gap between two motifs in the middle",
};

const ACROSS_LABELS = {
  "centre-motif": "Centre a motif",
  "between-motifs": "Centre the gap between two motifs",
};

/** Whether the other way to centre the pattern would take less cloth. */
export function judgeCentring(input: ClothInput, { cut, cloth, shape }: CutStory): Finding[] {
  const { shade } = input;
  const asked = shade.making.pattern.across;
  if (asked === "offset" || cut.turned || cut.motif?.acrossKnown !== true) return [];
  const { across } = shape;
  if (across === "offset") return [];
  const other = OTHER_ACROSS[across];
  const otherwise = shapeAcross(input, cut.layer, cloth, other);
  const moreMm = offTheBoltMm(shade, cloth, otherwise).lengthMm - cut.lengthMm;
  const base = {
    ...clothBase(shade),
    severity: "note" as const,
    path: `${shade.path}/shade/making/pattern/across`,
    cite: cite("geometry"),
    remedies: [{ label: ACROSS_LABELS[other], patch: settingPatch(shade, "pattern", "across", other) }],
  };
  const name = LAYER_NAMES[cut.layer];
  const length = (mm: number) => clothLengthText(mm, shade.units);
  if (asked === undefined) {
    if (across !== "between-motifs") return [];
    const why =
      otherwise.missMm > 0.5
        ? `the cloth is not wide enough to bring a motif there`
        : `a motif there would take ${length(Math.max(0, moreMm))} more cloth`;
    const remedies = otherwise.missMm > 0.5 ? [] : base.remedies;
    return [
      {
        ...base,
        id: "cloth.gap-centred",
        text: `${name}: the gap between two motifs comes in the middle, since ${why}.`,
        remedies,
      },
    ];
  }
  if (moreMm > -1 || otherwise.missMm > 0.5) return [];
  return [
    {
      ...base,
      id: "cloth.motif-costs",
      text: `${name}: with ${ACROSS_WORDS[across]} it takes ${length(-moreMm)} more cloth than with ${ACROSS_WORDS[other]}.`,
    },
  ];
}

/** Cloth with a top or a pile: every piece one way up. */
export function judgeDirection(shade: ClothShade, stories: readonly CutStory[]): Finding[] {
  const napped = stories.filter(({ cloth }) => cloth.nap === true);
  return napped.map(({ cut, shape }) => ({
    ...clothBase(shade),
    id: "cloth.nap",
    severity: "note",
    path: `${shade.path}/shade/${cut.layer}`,
    text: `${LAYER_NAMES[cut.layer]}: ${cut.clothName} has a pile. Cut every piece the same way up, the pile stroking ${shade.making.pattern.pile}${shape.drops > 1 ? ", or the widths show as two shades" : ""}; it creases where folds are pressed.`,
    cite: cite("blackout-guide", "velvet creases, poor for Roman shades"),
    remedies: [],
  }));
}

import type { Finding } from "../figures/index.ts";
import { type ResolvedShade, settingPatch } from "../job/index.ts";
import { LAYER_NAMES } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { clothLengthText, lengthText } from "../units/index.ts";
import type { ClothInput } from "./cloth-input.ts";
import type { CutStory } from "./cut-layer.ts";
import { clothBase } from "./judge-layer.ts";

import { offTheBoltMm } from "./off-the-bolt.ts";
import { acrossIsKnown } from "./place-motif.ts";
import { uprightShape, withAcross } from "./upright-shape.ts";

/** Whether the pattern falls where it is wanted, and what the cloth does not say. */
export function judgeMotif(input: ClothInput, story: CutStory): Finding[] {
  const { resolved } = input;
  const { cut, cloth, shape } = story;
  const { repeat } = cloth;
  if (repeat === undefined) return [];
  const { units } = resolved;
  const name = LAYER_NAMES[cut.layer];
  const base = { ...clothBase(resolved), path: `${resolved.path}/shade/${cut.layer}` };
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
  const { across = "centre-motif" } = resolved.making.pattern;
  const asksAcross = cut.panels.length > 1 || across !== "centre-motif";
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
    !acrossIsKnown(repeat, cut.usableWidthMm, resolved.making.hems.seamMm)
  ) {
    findings.push({
      ...base,
      id: "cloth.repeat-wide-as-cloth",
      severity: "unproven",
      text: `${name}: a repeat is ${lengthText(repeat.horizontalMm, units)} wide and the cloth ${lengthText(cut.usableWidthMm, units)}, which leaves no seam between two. Check that the print goes on into the selvedge by ${lengthText(resolved.making.hems.seamMm, units)}.`,
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
    .filter((way) => uprightShape(withAcross(input, way), cut.layer, cloth).missMm <= 0.5)
    .map((way) => ({
      label: ACROSS_LABELS[way],
      patch: settingPatch(input.resolved, "pattern", "across", way),
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
  const { resolved } = input;
  const asked = resolved.making.pattern.across;
  if (asked === "offset" || cut.turned || cut.motif?.acrossKnown !== true) return [];
  const { across } = shape;
  if (across === "offset") return [];
  const other = OTHER_ACROSS[across];
  const changed = withAcross(input, other);
  const otherwise = uprightShape(changed, cut.layer, cloth);
  const moreMm = offTheBoltMm(changed.resolved, cloth, otherwise).lengthMm - cut.lengthMm;
  const base = {
    ...clothBase(resolved),
    severity: "note" as const,
    path: `${resolved.path}/shade/making/pattern/across`,
    cite: cite("geometry"),
    remedies: [{ label: ACROSS_LABELS[other], patch: settingPatch(resolved, "pattern", "across", other) }],
  };
  const name = LAYER_NAMES[cut.layer];
  const length = (mm: number) => clothLengthText(mm, resolved.units);
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
export function judgeDirection(resolved: ResolvedShade, stories: readonly CutStory[]): Finding[] {
  const napped = stories.filter(({ cloth }) => cloth.nap === true);
  return napped.map(({ cut, shape }) => ({
    ...clothBase(resolved),
    id: "cloth.nap",
    severity: "note",
    path: `${resolved.path}/shade/${cut.layer}`,
    text: `${LAYER_NAMES[cut.layer]}: ${cut.clothName} has a pile. Cut every piece the same way up, the pile stroking ${resolved.making.pattern.pile}${shape.drops > 1 ? ", or the widths show as two shades" : ""}; it creases where folds are pressed.`,
    cite: cite("blackout-guide", "velvet creases, poor for Roman shades"),
    remedies: [],
  }));
}

import type { Finding } from "../account/index.ts";
import { type Brief, settingPatch } from "../job/index.ts";
import { LAYER_NAMES } from "../shade/index.ts";
import { cite } from "../sources/index.ts";
import { clothLengthText, lengthText } from "../units/index.ts";
import type { ClothInput } from "./cloth-input.ts";
import type { CutStory } from "./cut-layer.ts";
import { clothBase } from "./judge-layer.ts";
import { uprightShape } from "./layer-shape.ts";
import { offTheBoltMm } from "./off-the-bolt.ts";
import { acrossIsKnown } from "./place-motif.ts";

/** Whether the pattern falls where it is wanted, and what the cloth does not say. */
export function judgeMotif(brief: Brief, story: CutStory): Finding[] {
  const { cut, cloth, shape } = story;
  const { repeat } = cloth;
  if (repeat === undefined) return [];
  const { units } = brief;
  const name = LAYER_NAMES[cut.layer];
  const base = { ...clothBase(brief), path: `${brief.path}/shade/${cut.layer}` };
  const { across } = brief.making.pattern;
  const findings: Finding[] = [];
  if (shape.missMm > 0.5) {
    findings.push({
      ...base,
      id: "cloth.motif-off-place",
      weight: "fix",
      text: `${name}: across, the pattern misses its place by ${lengthText(shape.missMm, units)}: ${cut.clothName} is not wide enough to move it there. It lies in the middle of the cloth.`,
      cite: cite("geometry"),
      remedies:
        across === "between-motifs"
          ? [{ label: "Centre a motif", patch: settingPatch(brief, "pattern", "across", "centre-motif") }]
          : [
              {
                label: "Centre the gap between two motifs",
                patch: settingPatch(brief, "pattern", "across", "between-motifs"),
              },
            ],
    });
  }
  const asksAcross = cut.panels.length > 1 || across !== "centre-motif";
  if (repeat.horizontalMm === undefined && asksAcross) {
    findings.push({
      ...base,
      id: "cloth.repeat-across-unknown",
      weight: "unproven",
      text: `${name}: how wide a repeat of ${cut.clothName} is has not been given. It is taken to match where two usable widths are joined, with a motif in the middle; measure it before you cut.`,
      cite: cite("our-choice"),
      remedies: [],
    });
  }
  if (
    repeat.horizontalMm !== undefined &&
    cut.panels.length > 1 &&
    !acrossIsKnown(repeat, cut.usableWidthMm, brief.making.hems.seamMm)
  ) {
    findings.push({
      ...base,
      id: "cloth.repeat-wide-as-cloth",
      weight: "unproven",
      text: `${name}: a repeat is ${lengthText(repeat.horizontalMm, units)} wide and the cloth ${lengthText(cut.usableWidthMm, units)}, which leaves no seam between two. Check that the print goes on into the selvedge by ${lengthText(brief.making.hems.seamMm, units)}.`,
      cite: cite("geometry"),
      remedies: [],
    });
  }
  if (repeat.match === "half-drop" && cut.panels.length === 1) {
    findings.push({
      ...base,
      id: "cloth.half-drop-on-one-width",
      weight: "mind",
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
      weight: "mind",
      text: `${name}: one repeat, ${lengthText(repeatMm, units)}, is longer than the shade: no motif shows whole from top to hem.`,
      cite: cite("geometry"),
      remedies: [],
    });
  }
  return findings;
}

const OTHER_ACROSS = { "centre-motif": "between-motifs", "between-motifs": "centre-motif" } as const;
const ACROSS_WORDS = {
  "centre-motif": "a motif in the middle",
  "between-motifs": "the gap between two motifs in the middle",
};

/** Whether the other way to centre the pattern would take less cloth. */
export function judgeCentring(input: ClothInput, { cut, cloth }: CutStory): Finding[] {
  const { brief } = input;
  const { across } = brief.making.pattern;
  if (across === "offset" || cut.turned || cut.motif?.acrossKnown !== true) return [];
  const other = OTHER_ACROSS[across];
  const making = { ...brief.making, pattern: { ...brief.making.pattern, across: other } };
  const changed = { ...brief, making };
  const shape = uprightShape({ ...input, brief: changed }, cut.layer, cloth);
  const savedMm = cut.lengthMm - offTheBoltMm(changed, cloth, shape).lengthMm;
  if (savedMm < 1 || shape.missMm > 0.5) return [];
  return [
    {
      ...clothBase(brief),
      id: "cloth.motif-costs",
      weight: "mind",
      path: `${brief.path}/shade/making/pattern/across`,
      text: `${LAYER_NAMES[cut.layer]}: with ${ACROSS_WORDS[across]} it takes ${clothLengthText(savedMm, brief.units)} more cloth than with ${ACROSS_WORDS[other]}.`,
      cite: cite("geometry"),
      remedies: [
        {
          label: other === "between-motifs" ? "Centre the gap between two motifs" : "Centre a motif",
          patch: settingPatch(brief, "pattern", "across", other),
        },
      ],
    },
  ];
}

/** Cloth with a top or a pile: every piece one way up. */
export function judgeDirection(brief: Brief, stories: readonly CutStory[]): Finding[] {
  const napped = stories.filter(({ cloth }) => cloth.nap === true);
  return napped.map(({ cut, shape }) => ({
    ...clothBase(brief),
    id: "cloth.nap",
    weight: "mind",
    path: `${brief.path}/shade/${cut.layer}`,
    text: `${LAYER_NAMES[cut.layer]}: ${cut.clothName} has a pile. Cut every piece the same way up, the pile stroking ${brief.making.pattern.pile}${shape.drops > 1 ? ", or the widths show as two shades" : ""}; it creases where folds are pressed.`,
    cite: cite("blackout-guide", "velvet creases, poor for Roman shades"),
    remedies: [],
  }));
}

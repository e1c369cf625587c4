import type { Finding, Remedy } from "../../../figures/index.ts";
import { layersThicknessMm, leaveOutPatch, settingPatch, stylePatch } from "../../../job/index.ts";
import { type Form, type Grid, LAYERS, type Size } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { lengthText, trimmed } from "../../../units/index.ts";
import { atShade } from "../../base/at-shade.ts";
import { needlessRibs } from "../../base/needless-ribs.ts";
import { noRoomForRow } from "../../base/no-room-for-row.ts";
import type { ShadeWith } from "../../base/style-shade.ts";
import { LEAST_FULLNESS, MOST_FULLNESS } from "./fullness.ts";
import type { HobbledSpacing } from "./spacing.ts";

type HobbledShade = ShadeWith<"hobble" | "mount" | "ribs", "mount" | "cloths">;

/** A hobbled shade as it is laid. `isTooShort`: not one fold fits below the headrail allowance. */
export interface HobbledLaid {
  shade: HobbledShade;
  size: Size;
  grid: Grid;
  form: Form;
  spacing: HobbledSpacing;
  isTooShort: boolean;
}

/** Layers thicker than this together do not fall in a soft fold: our choice. */
const THICK_MM = 2.5;
const HEAVY_GSM = 700;

/** What soft folds do not go with, each with the reason. */
export function judgeHobbled(laid: HobbledLaid): Finding[] {
  const { shade, size, isTooShort } = laid;
  return [
    ...(isTooShort ? [noRoomForRow(shade, size, laid.spacing.tapeMm)] : []),
    ...offFullness(laid),
    ...foldOverHem(laid),
    ...pattern(laid),
    ...stiffCloth(shade),
    ...(shade.cloths.blackout === undefined ? [] : [blackoutTapes(shade)]),
    ...needlessRibs(shade, "Soft folds hang between the tapes: a rib would hold them flat"),
  ];
}

function offFullness({ shade, spacing }: HobbledLaid): Finding[] {
  const fullness = spacing.clothMm / spacing.tapeMm;
  if (fullness >= LEAST_FULLNESS - 1e-6 && fullness <= MOST_FULLNESS + 1e-6) return [];
  const isLean = fullness < LEAST_FULLNESS;
  const text = (mm: number) => lengthText(mm, shade.units);
  const nearest = isLean ? LEAST_FULLNESS : MOST_FULLNESS;
  const { clothMm } = shade.making.hobble;
  const remedies: Remedy[] =
    clothMm !== undefined
      ? [
          {
            label: `Fix the cloth at ${text(nearest * spacing.tapeMm)}`,
            patch: settingPatch(shade, "hobble", "clothMm", nearest * spacing.tapeMm),
          },
        ]
      : spacing.match !== undefined
        ? [
            {
              label: "Leave the pattern as it falls",
              patch: settingPatch(shade, "hobble", "match", false),
            },
          ]
        : [
            {
              label: `Take a fullness of ${trimmed(nearest, 2)}`,
              patch: settingPatch(shade, "hobble", "fullness", nearest),
            },
          ];
  return [
    {
      ...atShade(shade, clothMm === undefined ? "making/hobble/fullness" : "making/hobble/clothMm"),
      id: "shape.hobble-fullness",
      severity: isLean ? "fix" : "note",
      text: `${text(spacing.clothMm)} of cloth hang on ${text(spacing.tapeMm)} of tape, a fullness of ${trimmed(fullness, 2)}. ${isLean ? "Under 1.5 the folds hardly show." : "Over 2 they hang long and heavy."}`,
      cite: isLean ? cite("hobbled-lean") : cite("singer-sewing", "2 × the length"),
      figures: ["shape.hobble-cloth", "shape.hobble-tape"],
      remedies,
    },
  ];
}

/** The lowest fold hangs past the hem, onto the sill where there is one. */
function foldOverHem({ shade, form }: HobbledLaid): Finding[] {
  const [bottom] = form.stretches;
  const pastMm = bottom === undefined ? 0 : (bottom.clothMm - bottom.cordMm) / 2;
  if (pastMm < 1) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const { insideLengthOffMm } = shade.making.mount;
  const offMm = Math.ceil(pastMm) + insideLengthOffMm;
  const isInside = shade.mount === "inside" && insideLengthOffMm < pastMm;
  return [
    {
      ...atShade(shade, isInside ? "making/mount/insideLengthOffMm" : "style"),
      id: "shape.hobble-fold-over-hem",
      severity: "note",
      text: `The lowest fold hangs up to ${text(pastMm)} below the hem, lowered and raised${isInside ? `, and the hem is only ${text(insideLengthOffMm)} above the sill: the fold lies on it` : ""}.`,
      cite: cite("geometry", "half of the slack, where cloth is limp"),
      figures: ["shape.hobble-cloth", "shape.hobble-tape"],
      remedies: isInside
        ? [
            {
              label: `End the hem ${text(offMm)} above the sill`,
              patch: settingPatch(shade, "mount", "insideLengthOffMm", Math.min(3000, offMm)),
            },
          ]
        : [],
    },
  ];
}

function pattern({ shade, spacing }: HobbledLaid): Finding[] {
  const text = (mm: number) => lengthText(mm, shade.units);
  if (spacing.match !== undefined && spacing.match.folds > 1) {
    const { folds, repeats, repeatMm } = spacing.match;
    return [
      {
        ...atShade(shade, "making/hobble/match"),
        id: "shape.hobble-every-nth",
        severity: "note",
        text: `The pattern comes back on every ${ordinal(folds)} fold: ${folds} folds take ${repeats === 1 ? "one repeat" : `${repeats} repeats`} of ${text(repeatMm)}. The folds between show other parts of it.`,
        cite: cite("hobbled-workroom", "pattern on hobbled shades"),
        figures: ["shape.hobble-cloth"],
        remedies: [],
      },
    ];
  }
  if (spacing.unmatched === undefined) return [];
  return [
    {
      ...atShade(shade, "making/hobble/match"),
      id: "shape.hobble-pattern-unmatched",
      severity: "fix",
      text: `A repeat of ${text(spacing.unmatched.repeatMm)} does not come back on the folds: no whole number of up to four folds on ${text(spacing.tapeMm)} of tape takes whole repeats with a fullness of 1.5 to 2. The folds show ever other parts of the motif.`,
      cite: cite("hobbled-workroom", "cloth between rows = repeats × repeat / folds"),
      figures: ["shape.hobble-tape"],
      remedies: [
        ...tapeThatMatches(shade, spacing),
        { label: "Leave the pattern as it falls", patch: settingPatch(shade, "hobble", "match", false) },
      ],
    },
  ];
}

/** A tape spacing on which one repeat, or a part of it, fills a fold: tried as the planner would lay it. */
function tapeThatMatches(shade: HobbledShade, { spacings, tapeMm, unmatched }: HobbledSpacing): Remedy[] {
  if (unmatched === undefined || shade.making.hobble.rule !== "tape") return [];
  if (shade.making.hobble.repeats !== undefined || shade.making.hobble.folds !== undefined) return [];
  const lengthMm = spacings * tapeMm;
  for (const folds of [1, 2, 3, 4]) {
    const clothMm = unmatched.repeatMm / folds;
    for (
      let q = Math.ceil((LEAST_FULLNESS * lengthMm) / clothMm);
      (q * clothMm) / lengthMm <= MOST_FULLNESS;
      q += 1
    ) {
      const wishMm = lengthMm / q;
      if (wishMm < 40 || wishMm > 2 * tapeMm) continue;
      // A hair more than the spacing itself, so that rounding cannot ask for one more.
      const setMm = wishMm + 1e-6;
      return [
        {
          label: `Space the tape ${lengthText(wishMm, shade.units)}`,
          patch: settingPatch(shade, "hobble", "tapeMm", setMm),
        },
      ];
    }
  }
  return [];
}

function ordinal(count: number): string {
  return ["", "", "second", "third", "fourth"][count] ?? `${count}th`;
}

function stiffCloth(shade: HobbledShade): Finding[] {
  const { face } = shade.cloths;
  const gsm = LAYERS.reduce((sum, layer) => sum + (shade.cloths[layer]?.massGsm ?? 0), 0);
  const thickMm = layersThicknessMm(shade.cloths);
  const pile = face.nap === true;
  if (!pile && thickMm <= THICK_MM && gsm <= HEAVY_GSM) return [];
  const why = pile
    ? `${face.name} has a pile: it creases where a fold is held, and the folds stay marked`
    : `the layers together are ${thickMm > THICK_MM ? `about ${trimmed(thickMm, 1)} mm thick` : `${trimmed(gsm, 0)} g/m²`}, and so much cloth stands out stiffly where it should hang in a soft fold`;
  return [
    {
      ...atShade(shade, "style"),
      id: "shape.hobbled-cloth-too-stiff",
      severity: "fix",
      text: `Not a cloth for a hobbled shade: ${why}.`,
      cite: pile ? cite("velvet-guide") : cite("our-choice", "over 700 g/m² or 2.5 mm"),
      remedies: [
        {
          label: "Make it a flat shade",
          patch: stylePatch(shade, "flat"),
        },
        ...(shade.cloths.interlining === undefined || pile
          ? []
          : [
              {
                label: "Leave the interlining out",
                patch: leaveOutPatch(shade, "interlining"),
              },
            ]),
      ],
    },
  ];
}

function blackoutTapes(shade: HobbledShade): Finding {
  return {
    ...atShade(shade, "blackout"),
    id: "shape.hobbled-blackout",
    severity: "note",
    text: "Every mark of the tapes is sewn through the blackout: each shows as a point of light. Blackout also makes the soft folds stiff.",
    cite: cite("blackout-guide"),
    remedies: [
      {
        label: "Leave the blackout out",
        patch: leaveOutPatch(shade, "blackout"),
      },
    ],
  };
}

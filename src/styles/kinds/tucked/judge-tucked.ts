import type { Finding } from "../../../figures/index.ts";
import { layersThicknessMm, leaveOutPatch, settingPatch, stylePatch } from "../../../job/index.ts";
import type { Grid, Size } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { lengthText, trimmed } from "../../../units/index.ts";
import { atShade } from "../../base/at-shade.ts";
import { needlessRibs } from "../../base/needless-ribs.ts";
import { noRoomForRow } from "../../base/no-room-for-row.ts";
import type { ShadeWith } from "../../base/style-shade.ts";
import type { Tucks } from "./tucks.ts";

type TuckedShade = ShadeWith<"tuck" | "ribs", "cloths">;

/** A tucked shade as it is laid. `isTooShort`: no row of rings fits below the headrail allowance. */
export interface TuckedLaid {
  shade: TuckedShade;
  size: Size;
  grid: Grid;
  tucks: Tucks;
  isTooShort: boolean;
}

/** A tuck is a fold of all layers: thicker than this, doubled, it neither presses flat nor breaks. Our choice. */
const THICK_MM = 2;
/** Under this a row of stitches holds no tuck. */
const LEAST_DEPTH_MM = 3;
const PATTERN_SLACK_MM = 1;

/** What tucks do not go with, each with the reason. */
export function judgeTucked(laid: TuckedLaid): Finding[] {
  const { shade, size, tucks, isTooShort } = laid;
  return [
    ...(isTooShort ? [noRoomForRow(shade, size, tucks.spacingMm)] : []),
    ...depth(laid),
    ...thickness(shade),
    ...(shade.cloths.blackout === undefined ? [] : [pinholes(shade, tucks)]),
    ...pattern(laid),
    ...needlessRibs(shade, "The tucks are what the folds break on"),
  ];
}

function depth({ shade, tucks }: TuckedLaid): Finding[] {
  const text = (mm: number) => lengthText(mm, shade.units);
  const { depthMm, spacingMm } = tucks;
  if (depthMm < LEAST_DEPTH_MM)
    return [
      {
        ...atShade(shade, "making/tuck/depthMm"),
        id: "shape.tuck-too-shallow",
        severity: "fix",
        text: `A tuck ${text(depthMm)} deep is no more than a row of stitches: the folds have nothing to break on.`,
        cite: cite("our-choice", "at least 3 mm"),
        remedies: [
          { label: "Make it 1/4 in (6 mm) deep", patch: settingPatch(shade, "tuck", "depthMm", 6.35) },
        ],
      },
    ];
  if (depthMm <= spacingMm / 2) return [];
  const overlaps = depthMm >= spacingMm;
  const cureMm = Math.floor(spacingMm / 4);
  return [
    {
      ...atShade(shade, "making/tuck/depthMm"),
      id: "shape.tuck-too-deep",
      severity: overlaps ? "stop" : "fix",
      text: `Tucks ${text(depthMm)} deep stand ${text(spacingMm)} apart: ${overlaps ? "each reaches past the stitching of the next and cannot be sewn so" : "each hides more than half of the cloth to the next, and the shade hangs as stiff as a mat"}.`,
      cite: cite("geometry"),
      figures: ["shape.tuck-spacing"],
      remedies:
        cureMm < LEAST_DEPTH_MM
          ? []
          : [
              {
                label: `Make them ${text(cureMm)} deep`,
                patch: settingPatch(shade, "tuck", "depthMm", cureMm),
              },
            ],
    },
  ];
}

function thickness(shade: TuckedShade): Finding[] {
  const { face } = shade.cloths;
  const thickMm = layersThicknessMm(shade.cloths);
  if (face.nap !== true && thickMm <= THICK_MM) return [];
  return [
    {
      ...atShade(shade, "style"),
      id: "shape.tucked-cloth-too-thick",
      severity: "fix",
      text:
        face.nap === true
          ? `${face.name} has a pile: sewn tucks crush it, and its folded edges wear bare.`
          : `The layers together are about ${trimmed(thickMm, 1)} mm thick: folded into a tuck they do not press flat.`,
      cite: face.nap === true ? cite("velvet-guide") : cite("our-choice", "over 2 mm"),
      remedies: [
        {
          label: "Make it a flat shade",
          patch: stylePatch(shade, "flat"),
        },
      ],
    },
  ];
}

function pinholes(shade: TuckedShade, { sewn }: Tucks): Finding {
  return {
    ...atShade(shade, "blackout"),
    id: "shape.tuck-pinholes",
    severity: "fix",
    text: `${sewn} tucks stitched through the blackout from edge to edge let light in along every row of needle holes.`,
    cite: cite("blackout-guide"),
    remedies: [
      {
        label: "Leave the blackout out",
        patch: leaveOutPatch(shade, "blackout"),
      },
      {
        label: "Make it a flat shade",
        patch: stylePatch(shade, "flat"),
      },
    ],
  };
}

/** Every tuck swallows two depths of the pattern; only whole repeats from tuck to tuck hide that. */
function pattern({ shade, tucks }: TuckedLaid): Finding[] {
  const { repeat } = shade.cloths.face;
  if (repeat === undefined || tucks.sewn === 0) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const pitchMm = tucks.spacingMm + 2 * tucks.depthMm;
  const times = pitchMm / repeat.verticalMm;
  const offMm = Math.abs(times - Math.round(times)) * repeat.verticalMm;
  if (Math.round(times) > 0 && offMm * tucks.sewn < PATTERN_SLACK_MM) return [];
  return [
    {
      ...atShade(shade, "making/tuck/spacingMm"),
      id: "shape.tucks-break-pattern",
      severity: "fix",
      text: `Every tuck swallows ${text(2 * tucks.depthMm)} of a pattern that repeats every ${text(repeat.verticalMm)}, and from tuck to tuck it is ${text(pitchMm)} of cloth: the motifs no longer meet across the tucks. Tucks want a plain cloth, or a small all-over pattern.`,
      cite: cite("geometry", "cloth from tuck to tuck against the repeat"),
      figures: ["shape.tuck-spacing"],
      remedies: [],
    },
  ];
}

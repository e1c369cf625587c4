import type { Finding, PatchOperation } from "../figures/index.ts";
import { LIFT_TRAITS, STYLE_TRAITS, settingPatch, splitWindow, styleWithArticle } from "../job/index.ts";
import type { Size } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import { wishMm } from "./beside.ts";
import type { MeasuredShade } from "./measure-reads.ts";

/** Wider than this one shade is heavy, its rods are hard to get and its hem hard to keep straight. */
const ONE_SHADE_WIDE = sourced(2000, "mm", cite("extra-wide", "usual most about 2 m; rods stop at 2.4 m"));
const ONE_SHADE_LONG = sourced(3600, "mm", cite("clutch-sheet", "12 ft of drop on cord of 0.9 mm"));

/** Corners, heads that are not level, and windows too wide or too tall for one shade. */
export function judgeBeyond(shade: MeasuredShade, size: Size): Finding[] {
  return [
    ...(["left", "right"] as const).flatMap((side) => corner(shade, size, side)),
    ...headFor(shade, size),
    ...tooWide(shade, size),
    ...tooLong(shade, size),
  ];
}

function base(shade: MeasuredShade, path: string) {
  return { stage: "measure", shadeId: shade.shadeId, path: `${shade.path}/${path}` } as const;
}

function corner(shade: MeasuredShade, size: Size, side: "left" | "right"): Finding[] {
  const beside = shade.opening[side];
  if (beside === undefined || shade.mount === "to-size") return [];
  const { mount } = shade.making;
  const wish = wishMm(shade);
  const gotMm =
    side === "left"
      ? (size.openingLeftMm ?? wish)
      : size.finishedWidthMm - size.openingWidthMm - (size.openingLeftMm ?? wish);
  if (gotMm >= wish - 1) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const meets = beside.shade ? "the shade beside it" : "the wall beside it";
  return [
    {
      ...base(shade, `opening/${side}`),
      id: "measure.corner",
      severity: gotMm < 0 && shade.mount === "outside" ? "fix" : "note",
      text:
        gotMm >= 0
          ? `At its ${side} the shade overlaps the wall by ${text(gotMm)} in place of ${text(wish)}, to keep clear of ${meets}. Light comes in along that edge.`
          : `At its ${side} the shade ends ${text(-gotMm)} inside the opening, to keep clear of ${meets}: ${text(shade.board.depthMm + mount.foldRoomMm)} stand out from the wall.`,
      cite: cite("geometry", "each keeps to its own side of the line that halves the corner"),
      figures: [`measure.reach-${side}`],
      remedies: [],
    },
  ];
}

function headFor(shade: MeasuredShade, size: Size): Finding[] {
  const { head } = size;
  if (head === undefined) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const path = "opening/head";
  const found: Finding[] = [];
  if (!STYLE_TRAITS[shade.style].hangsUnderShapedHead) {
    found.push({
      ...base(shade, path),
      id: "measure.head-not-for-style",
      severity: "stop",
      text: `Under a head that is not level only cloth that lies flat keeps its rows level: a flat or a ribbed shade, not ${styleWithArticle(shade.style)} one, whose gathers or pleats would hang by unequal lengths.`,
      cite: cite("geometry", "every row hangs level by cords of its own length"),
      remedies: [
        {
          label: "Make it a flat shade",
          patch: [{ op: "add", path: `${shade.path}/shade/style`, value: "flat" }],
        },
      ],
    });
  }
  found.push({
    ...base(shade, path),
    id: "measure.head",
    severity: "note",
    text:
      head.kind === "angled"
        ? `The head slopes by ${text(head.fallMm)}. The upper part stays; the shade rises to below its low end. Its board, cut ${text(size.boardOnSlopeMm ?? size.boardLengthMm)} long, lies on the slope, and the top of the cloth is cut by a template.`
        : `The head rises in an arc of ${text(head.fallMm)}. The arc stays covered; the shade rises to below its ends. The board there is cut to the arc, and the top of the cloth by a template.`,
    cite: cite("geometry"),
    ...(size.boardOnSlopeMm === undefined ? {} : { figures: ["measure.board-on-slope"] }),
    remedies: [],
  });
  if (head.kind === "arched" && head.fallMm > size.finishedWidthMm / 2) {
    found.push({
      ...base(shade, path),
      id: "measure.arc-too-high",
      severity: "fix",
      text: `An arc ${text(head.fallMm)} high over ${text(size.finishedWidthMm)} is more than half a circle. Measure its rise again.`,
      cite: cite("geometry", "an arc of a circle rises half its width at most"),
      remedies: [],
    });
  }
  if (LIFT_TRAITS[shade.liftKind].takeUp === "tube") {
    found.push({
      ...base(shade, path),
      id: "measure.head-and-tube",
      severity: "fix",
      text: `A lift tube must lie level, and here the board ${head.kind === "angled" ? "slopes" : "follows an arc"}: hang the tube on a level board of its own below the low ${head.kind === "angled" ? "end" : "ends"}, or raise the shade by a cord lock. It is drawn along the ${head.kind === "angled" ? "slope" : "arc"} all the same; its marks are measured along a level board.`,
      cite: cite("geometry", "cords on one tube wind up alike only from one level"),
      remedies: [
        {
          label: "Raise it by a cord lock",
          changes: "Its cords hang free then: see the review of cords.",
          patch: settingPatch(shade, "lift", "kind", "cord-lock"),
        },
      ],
    });
  }
  return found;
}

function tooWide(shade: MeasuredShade, size: Size): Finding[] {
  if (size.finishedWidthMm <= ONE_SHADE_WIDE.value) return [];
  const parts = Math.ceil(size.finishedWidthMm / ONE_SHADE_WIDE.value);
  const text = (mm: number) => lengthText(mm, shade.units);
  return [
    {
      ...base(shade, "opening/widthsMm"),
      id: "measure.wide-for-one",
      severity: "note",
      text: `One shade ${text(size.finishedWidthMm)} wide is heavy and its hem hard to keep straight; about ${text(ONE_SHADE_WIDE.value)} is the usual most. ${parts} side by side, each on its own board, are lighter, and their folds can be lined up.`,
      cite: ONE_SHADE_WIDE.cite,
      // A shade made to size has no figure of its width.
      ...(shade.mount === "to-size" ? {} : { figures: ["measure.finished-width"] }),
      remedies: [
        {
          label: `Split it into ${parts} side by side`,
          changes: "Each gets its own page; line up the folds of the room afterwards.",
          patch: splitWindow(shade.window, shade.path, parts) as PatchOperation[],
        },
      ],
    },
  ];
}

function tooLong(shade: MeasuredShade, size: Size): Finding[] {
  if (size.finishedLengthMm <= ONE_SHADE_LONG.value) return [];
  return [
    {
      ...base(shade, "opening/heightsMm"),
      id: "measure.long-for-one",
      severity: "note",
      text: `A drop of ${lengthText(size.finishedLengthMm, shade.units)} is longer than the one sheet that was read allows on thin cord, ${lengthText(ONE_SHADE_LONG.value, shade.units)}. Where the window has a transom, an upper and a lower shade share it.`,
      cite: ONE_SHADE_LONG.cite,
      remedies: [],
    },
  ];
}

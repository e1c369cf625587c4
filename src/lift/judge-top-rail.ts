import type { Finding } from "../figures/index.ts";
import { STYLE_TRAITS, settingPatch, styleWithArticle } from "../job/index.ts";
import type { TopRail } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import type { LiftShade } from "./lift-input.ts";

/** A top that comes down: what it asks for, and where it cannot be. */
export function judgeTopRail(shade: LiftShade, rail: TopRail | undefined): Finding[] {
  const askedMm = shade.making.fold.topDropMm;
  if (askedMm <= 0) return [];
  const base = {
    stage: "rig",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/fold/topDropMm`,
  } as const;
  const fromBoard = {
    label: "Hang it from the board",
    patch: settingPatch(shade, "fold", "topDropMm", 0),
  };
  if (!STYLE_TRAITS[shade.style].takesTopRail) {
    return [
      {
        ...base,
        id: "rig.top-not-for-style",
        severity: "fix",
        text: `The top of ${styleWithArticle(shade.style)} shade cannot be let down: only flat cloth hangs from a rail as it hangs from a board. It is planned from the board.`,
        cite: cite("our-choice", "gathers and pleats need the board’s width of heading"),
        remedies: [fromBoard],
      },
    ];
  }
  if (shade.opening.head !== undefined) {
    return [
      {
        ...base,
        id: "rig.top-under-head",
        severity: "stop",
        text: "Under a head that is not level no rail can hang: the top of this shade must stay at its board.",
        cite: cite("geometry"),
        remedies: [fromBoard],
      },
    ];
  }
  if (rail === undefined) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  return [
    {
      ...base,
      id: "rig.top-down",
      severity: "note",
      text: `Its top comes down by ${text(rail.dropMm)} on ${rail.cords.length} cords of its own, over a second lock at the ${rail.side} end of the board, seen from the room. With the top down ${text(rail.dropMm)} of cord run bare between board and rail, whatever encloses them further down: the review of cords counts them.`,
      cite: cite("geometry", "cord between board and rail"),
      remedies: [fromBoard],
    },
    ...(rail.dropMm < askedMm - 1
      ? [
          {
            ...base,
            id: "rig.top-drop-limited",
            severity: "note" as const,
            text: `The top can come down ${text(rail.dropMm)} at most, to where the raised stack hangs; ${text(askedMm)} was asked for.`,
            cite: cite("geometry"),
            remedies: [],
          },
        ]
      : []),
  ];
}

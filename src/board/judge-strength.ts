import type { Finding, Remedy } from "../figures/index.ts";
import { partChoice, SCREW_GAUGES, settingPatch } from "../job/index.ts";
import { WOOD_SPECIES } from "../mechanics/index.ts";
import type { BoardPlan, BoardStrength } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import {
  downToMark,
  forceText,
  lengthText,
  massText,
  smallLengthText,
  trimmed,
  type UnitChoice,
} from "../units/index.ts";
import { atSetting } from "./at-setting.ts";
import type { BoardShade } from "./board-input.ts";
import { CHILD, CORD_PULL, TUG, WOOD_FACTOR } from "./board-strength.ts";
import { NEAREST_FIXINGS_MM } from "./fixings.ts";

/** Anchor loads in tables are ultimate: so many times what an anchor carries is asked of its rating in a hollow wall. */
export const HOLLOW_FACTOR = 4;

/** The pull on the shade by which strength is judged, in words. */
export function withHandText(hand: BoardStrength["hand"], units: UnitChoice): string {
  return hand === "child" ? `with ${childText(units)} hanging on it` : "when somebody tugs";
}

/** The child by its mass; in pounds with the figure that was taken beside them. */
function childText(units: UnitChoice): string {
  const kg = `${CHILD.value} kg`;
  return `a child of ${units.system === "metric" ? kg : `${massText(CHILD.value, units, 0)} (${kg})`}`;
}

/** Does the board bend or break, do its screws hold, and is the plug or anchor rated for it? */
export function judgeBoardStrength(shade: BoardShade, board: BoardPlan): Finding[] {
  const { strength } = board;
  if (strength === undefined) return [];
  return [
    ...bends(shade, board, strength),
    ...breaks(shade, board, strength),
    ...screws(shade, board, strength),
    ...rating(shade, board, strength),
  ];
}

function bends(
  shade: BoardShade,
  board: BoardPlan,
  { deflectionMm, deflectionAtMm, deflectionLimitMm }: BoardStrength,
): Finding[] {
  if (deflectionMm <= deflectionLimitMm) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const small = (mm: number) => smallLengthText(mm, shade.units);
  return [
    {
      ...atSetting(shade, "board/bracketSpacingMm"),
      id: "board.bends",
      severity: "fix",
      text: `With a hand at the cords the board bends ${small(deflectionMm)}, ${text(Math.max(0, deflectionAtMm - board.leftMm))} from its left end; ${small(deflectionLimitMm)} is what nobody sees. Fix it at more places, or take a thicker board.`,
      cite: cite("from-memory", "span/360"),
      figures: ["board.deflection", "board.deflection-limit"],
      remedies: [...closer(shade, board), ...thicker(shade)],
    },
  ];
}

function breaks(
  shade: BoardShade,
  board: BoardPlan,
  { stressNPerMm2, ruptureNPerMm2, hand }: BoardStrength,
): Finding[] {
  const wood = WOOD_SPECIES[shade.making.board.wood];
  const from = cite("wood-handbook", `table ${wood.table}: mean modulus of rupture of clear wood`);
  if (ruptureNPerMm2 === undefined) {
    if (stressNPerMm2 < 1) return [];
    return [
      {
        ...atSetting(shade, "board/wood"),
        id: "board.rupture-unknown",
        severity: "unproven",
        text: `Bending puts ${trimmed(stressNPerMm2, 1)} N/mm² on the board ${withHandText(hand, shade.units)}. How much ${wood.name.toLowerCase()} bears was not read; look it up, or take a wood of which it is known.`,
        cite: from,
        remedies: [],
      },
    ];
  }
  if (stressNPerMm2 * WOOD_FACTOR.value <= ruptureNPerMm2) return [];
  return [
    {
      ...atSetting(shade, "board/section"),
      id: "board.breaks",
      severity: "stop",
      text: `Bending puts ${trimmed(stressNPerMm2, 1)} N/mm² on the board ${withHandText(hand, shade.units)}. ${wood.name} breaks at ${trimmed(ruptureNPerMm2, 0)} N/mm² on the average of clear pieces, and ${WOOD_FACTOR.value} times the load is asked for.`,
      cite: from,
      remedies: [...closer(shade, board), ...thicker(shade)],
    },
  ];
}

function screws(
  shade: BoardShade,
  board: BoardPlan,
  { screwShare, pullN, shearN, hand }: BoardStrength,
): Finding[] {
  if (screwShare === undefined || screwShare <= 1) return [];
  const { screwGauge, wallWood } = shade.making.board;
  const at = SCREW_GAUGES.indexOf(screwGauge);
  const thickerScrew: Remedy[] = SCREW_GAUGES.slice(at + 1, at + 2).map((gauge) => ({
    label: `Use No. ${gauge} screws`,
    patch: settingPatch(shade, "board", "screwGauge", gauge),
  }));
  const along = shearN > 0 ? ` and ${forceText(shearN, shade.units)} down along it` : "";
  return [
    {
      ...atSetting(shade, "board/screwGauge"),
      id: "board.screws-pull",
      severity: "stop",
      text: `The hardest worked screw takes ${forceText(pullN, shade.units)} out of the wood${along} ${withHandText(hand, shade.units)}${board.fixing === "brackets" ? ", prying counted" : ""}: ${trimmed(screwShare, 1)} times what a No. ${screwGauge} screw in ${WOOD_SPECIES[wallWood].name.toLowerCase()} may be put to, at a factor of ${WOOD_FACTOR.value} on its mean strength.`,
      cite: cite("wood-handbook", "eq. 8-10 and 8-13"),
      figures: ["board.screw-share", "board.screw-withdrawal", "board.hand-load"],
      remedies: [...thickerScrew, ...closer(shade, board)],
    },
  ];
}

/** Plugs and anchors hold what their makers state for the wall at hand, and nothing else is known of them. */
function rating(shade: BoardShade, board: BoardPlan, { pullN, shearN, hand }: BoardStrength): Finding[] {
  const { substrate, fixingRatedN } = shade.making.board;
  if ((substrate !== "masonry" && substrate !== "hollow-wall") || fixingRatedN === undefined) return [];
  const hollow = substrate === "hollow-wall";
  const neededN = Math.hypot(pullN, shearN) * (hollow ? HOLLOW_FACTOR : 1);
  if (neededN <= fixingRatedN) return [];
  const what = hollow ? "anchor" : "plug";
  const prying = board.fixing === "brackets" ? ", prying counted" : "";
  const force = (loadN: number) => forceText(loadN, shade.units);
  return [
    {
      ...atSetting(shade, "board/fixingRatedN"),
      id: "board.rating-too-low",
      severity: "stop",
      text: `${force(Math.hypot(pullN, shearN))} come on the hardest worked ${what} ${withHandText(hand, shade.units)}${prying}${hollow ? `, and ${HOLLOW_FACTOR} times as much is asked of its rating: ${force(neededN)}` : ""}. Its maker states ${force(fixingRatedN)}.`,
      cite: hollow
        ? cite("common-practice", "tabulated anchor loads are ultimate; a factor of four at least")
        : cite("common-practice", "plugs by their maker’s rating"),
      figures: [...(board.fixing === "brackets" ? ["board.screw-pull"] : []), "board.hand-load"],
      remedies: closer(shade, board),
    },
  ];
}

/** One fixing more, where there is room for it. */
function closer(shade: BoardShade, board: BoardPlan): Remedy[] {
  const count = board.brackets.length;
  const first = board.brackets[0]?.xMm ?? 0;
  const last = board.brackets.at(-1)?.xMm ?? first;
  const apartMm = downToMark((last - first) / count, shade.units.ruler);
  if (apartMm < NEAREST_FIXINGS_MM || apartMm >= shade.making.board.bracketSpacingMm) return [];
  const what = board.fixing === "brackets" ? "brackets" : "screws";
  return [
    {
      label: `Set the ${what} at most ${lengthText(apartMm, shade.units)} apart`,
      patch: settingPatch(shade, "board", "bracketSpacingMm", apartMm),
    },
  ];
}

function thicker(shade: BoardShade): Remedy[] {
  const { board } = shade;
  return shade.parts.boards
    .filter(({ thicknessMm, depthMm }) => thicknessMm > board.thicknessMm && depthMm >= board.depthMm)
    .sort((a, b) => a.thicknessMm - b.thicknessMm)
    .slice(0, 1)
    .map(partChoice(shade, "board", "section"));
}

/** What is taken for granted in all of this, in one sentence. */
export function strengthNote(units: UnitChoice): string {
  return `Strength is judged by the heaviest of the hand’s pull ${TUG.value} times, ${forceText(CORD_PULL.value, units)} at the cord and ${childText(units)} hanging on the shade; bend by the first. Strengths are means of clear, dry wood over a factor of ${WOOD_FACTOR.value}. Local codes, licensed practice and the instructions of the hardware’s makers prevail.`;
}

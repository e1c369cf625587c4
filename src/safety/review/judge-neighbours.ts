import { type Finding, lazy, type Remedy } from "../../figures/index.ts";
import { type Beside, settingPatch } from "../../job/index.ts";
import { type HangingCords, hangingCords } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import type { ReviewInput } from "./review-input.ts";

const SIDES = ["left", "right"] as const;
type Side = (typeof SIDES)[number];
const OTHER = { left: "right", right: "left" } as const;

type NeighbourInput = Pick<ReviewInput, "shade" | "size" | "lift">;

/** Shades that are worked together share cords, or could: what the review of one shade sees is not all of it. */
function judgeTogether({ shade, lift }: NeighbourInput): Finding[] {
  const sides = SIDES.filter((side) => {
    const beside = shade.opening[side];
    return beside?.shade === true && beside.together === true;
  });
  const hanging = hangingCords(lift);
  const longestMm = Math.max(0, ...hanging.map(({ downMm, upMm }) => Math.max(downMm, upMm)));
  return sides.map((side): Finding => {
    const wallMm = shade.opening[side]?.wallMm ?? 0;
    const text = (mm: number) => lengthText(mm, shade.units);
    const loop =
      longestMm === 0
        ? "Cords that run on from one to the other are bare between the two, where a child can draw them out."
        : `Cords joined between the two hang in one loop: of this shade alone up to ${text(longestMm)}, as much again of the other, and ${text(2 * wallMm)} between the openings.`;
    return {
      id: "safety.shared-cords",
      severity: "fix",
      stage: "safety",
      shadeId: shade.shadeId,
      path: `${shade.path}/opening/${side}/together`,
      text: `It is worked together with the shade at its ${side}. ${loop} No rule that was read takes that for one shade’s cords, and this plan counts its own alone. Work each by itself, and join no cords.`,
      cite: cite("cordless-advice", "never tie cords together"),
      remedies: [
        {
          label: "Work each by itself",
          patch: [{ op: "remove", path: `${shade.path}/opening/${side}/together` }],
        },
      ],
    };
  });
}

/** How far apart two openings are, straight across their corner, mm; past an outer corner, round it. */
function betweenMm({ wallMm, angleDeg }: Beside): number {
  return 2 * wallMm * Math.sin((Math.min(angleDeg, 180) / 2) * (Math.PI / 180));
}

/** From where cords hang to the nearer edge of the shade at one side, mm. */
function acrossMm({ shade, size }: NeighbourInput, cords: HangingCords, side: Side): number {
  const beside = shade.opening[side];
  const toEdge = side === "left" ? cords.exitX : size.finishedWidthMm - cords.exitX;
  return Math.max(0, toEdge) + (beside === undefined ? 0 : betweenMm(beside));
}

/**
 * Cords that could be tied to those of the shade beside it: that one’s are taken to hang at its nearer edge and to be
 * as long, and two reach each other where together they span what lies between.
 */
function judgeApart(input: NeighbourInput): Finding[] {
  const { shade, lift } = input;
  const text = (mm: number) => lengthText(mm, shade.units);
  return hangingCords(lift).flatMap((cords) => {
    const longestMm = Math.max(cords.downMm, cords.upMm);
    return SIDES.filter(
      (side) => shade.opening[side]?.shade === true && acrossMm(input, cords, side) <= 2 * longestMm,
    ).map((side): Finding => {
      const remedies = lazy(() => waysApart(input, cords));
      return {
        id: "safety.neighbour-cords",
        severity: "fix",
        stage: "safety",
        shadeId: shade.shadeId,
        path: `${shade.path}/shade/making/lift/controlSide`,
        text: `Its cords hang on the ${cords.side}, up to ${text(longestMm)} of them, ${text(acrossMm(input, cords, side))} from the shade at its ${side}: cords as long on that one reach them. They can be tied or twist into one loop, which the review of one shade does not see. Keep them on cleats of their own, well apart, or choose a lift without free cords for one of the two.`,
        cite: cite("cordless-advice", "never tie cords together"),
        get remedies() {
          return remedies();
        },
      };
    });
  });
}

/** Ways that may keep them apart: whether one does is for who offers it to try. */
function waysApart({ shade, lift }: NeighbourInput, { raises, side }: HangingCords): Remedy[] {
  const set = (label: string, group: "lift" | "fold", key: string, value: unknown): Remedy => ({
    label,
    patch: settingPatch(shade, group, key, value),
  });
  if (raises === "top-rail") return [set("Hang it from the board", "fold", "topDropMm", 0)];
  const spring = lift.kind === "spring" ? [] : [set("Raise it by a spring", "lift", "kind", "spring")];
  return [set(`Work it from the ${OTHER[side]}`, "lift", "controlSide", OTHER[side]), ...spring];
}

/** Other shades close by: worked together with this one, or near enough for their cords to meet. */
export function judgeNeighbours(input: NeighbourInput): Finding[] {
  return [...judgeTogether(input), ...judgeApart(input)];
}

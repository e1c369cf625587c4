import { type Finding, lazy } from "../../figures/index.ts";
import { settingPatch } from "../../job/index.ts";
import { hangingCords } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import type { ReviewInput } from "./review-input.ts";

const OTHER = { left: "right", right: "left" } as const;

/** Shades that are worked together share cords, or could: what the review of one shade sees is not all of it. */
function judgeTogether({ shade, lift }: Pick<ReviewInput, "shade" | "lift">): Finding[] {
  const sides = (["left", "right"] as const).filter((side) => {
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

/** Cords that hang on the side on which another shade hangs close by: of the two a loop can be made. */
export function judgeNeighbours({ shade, lift }: Pick<ReviewInput, "shade" | "lift">): Finding[] {
  const { opening } = shade;
  const together = judgeTogether({ shade, lift });
  const near = hangingCords(lift)
    .filter(({ side }) => opening[side]?.shade === true)
    .map(({ side, raises }): Finding => {
      const other = OTHER[side];
      const movable = raises === "shade" && opening[other]?.shade !== true;
      const remedies = lazy(() =>
        movable
          ? [
              {
                label: `Work it from the ${other}`,
                patch: settingPatch(shade, "lift", "controlSide", other),
              },
            ]
          : [],
      );
      return {
        id: "safety.neighbour-cords",
        severity: "fix",
        stage: "safety",
        shadeId: shade.shadeId,
        path: `${shade.path}/shade/making/lift/controlSide`,
        text: `Its cords hang on the ${side}, and another shade hangs beside it there. Cords of two shades that reach each other can be tied or twist into one loop, which the review of one shade does not see. Keep them on cleats of their own, well apart, or work one of the two from the other side.`,
        cite: cite("cordless-advice", "never tie cords together"),
        get remedies() {
          return remedies();
        },
      };
    });
  return [...together, ...near];
}

import { type Finding, lazy } from "../../figures/index.ts";
import { settingPatch } from "../../job/index.ts";
import { hangingCords } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import type { ReviewInput } from "./review-input.ts";

const OTHER = { left: "right", right: "left" } as const;

/** Cords that hang on the side on which another shade hangs close by: of the two a loop can be made. */
export function judgeNeighbours({ shade, lift }: Pick<ReviewInput, "shade" | "lift">): Finding[] {
  const { opening } = shade;
  return hangingCords(lift)
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
}

import type { Form, Size } from "../../../shade-plan/index.ts";

/** Tucks as the drawings and the steps need them. */
export interface DrawnTucks {
  depthMm: number;
  face: "back" | "front";
  /** Stitching of each, above the hem of the finished shade, mm. */
  fromHemMm: number[];
}

/** The tucks as they come to lie on the finished shade, read back from the marks on the flat cloth. */
export function tucksOf({ marks, allowances, ribs }: Form, size: Pick<Size, "finishedLengthMm">): DrawnTucks {
  const tucks = marks.filter(({ kind }) => kind === "tuck");
  const cloth = allowances.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const depthMm = cloth / 2 / (tucks.length + 1);
  return {
    depthMm,
    face: ribs.face,
    fromHemMm: tucks
      .map(({ atMm }, i) => atMm - 2 * depthMm * i - depthMm)
      .filter((up) => up < size.finishedLengthMm),
  };
}

import type { Step } from "../shade-plan/index.ts";
import { counted, IRON } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { sentences } from "./wording.ts";

/** The band that lengthens the face, joined before anything is measured on it. */
export function bottomBandSteps({ resolved, cloth, size, len }: Bench): Step[] {
  const trim = cloth.trims.find(({ id }) => id === "bottom-band");
  const band = cloth.bands.find(({ part }) => part === "bottom-band");
  if (trim === undefined || band === undefined) return [];
  return [
    {
      id: "make-bottom-band",
      chapter: "make",
      title: "Join the bottom band",
      text: sentences(
        trim.count > 1 &&
          `Sew the ${counted(trim.count, "piece")} of the band end to end first, no seam in its middle, and press the seams open.`,
        `Lay the band on the lower edge of the face, right sides together, sew ${len(resolved.making.hems.seamMm)} from the edge and press the seam down, into the band. From here on face and band are one.`,
      ),
      check: `From the seam to the hem line to come it is ${len(band.heightMm)}, so the seam lies ${len(size.finishedLengthMm - band.heightMm)} below the top line.`,
      caution: IRON,
      sheet: "cutting",
    },
  ];
}

/** The banding sewn on the face, before its edges are hemmed. */
export function bandingSteps({ resolved, cloth, len }: Bench): Step[] {
  const bands = cloth.bands.filter(({ part }) => part !== "bottom-band");
  const side = bands.find(({ part }) => part === "left");
  const across = bands.find(({ part }) => part === "bottom" || part === "top");
  if (bands.length === 0) return [];
  const { insetMm, turnMm, corners } = resolved.making.banding;
  const wide = side?.widthMm ?? across?.heightMm ?? 0;
  const meets = side !== undefined && across !== undefined;
  return [
    {
      id: "make-banding",
      chapter: "make",
      title: "Sew the banding on",
      text: sentences(
        insetMm > 0
          ? `Press ${len(turnMm)} under along both long edges of every strip: ${len(wide)} is left. Lay the strips on the right side of the face, their outer edges ${len(insetMm)} inside the finished edges to come.`
          : `Press ${len(turnMm)} under along the inner edge of every strip. Lay the strips on the right side of the face, raw edges level with those of the face, so that ${len(wide)} shows inside the finished edge to come.`,
        joined(
          cloth.trims.filter(
            ({ id, count }) => id !== "banding-side" && id.startsWith("banding") && count > 1,
          ).length > 0,
        ),
        meets &&
          corners === "mitred" &&
          "At each corner fold both strips back on themselves along the slant from the outer corner to the inner one, press, sew along the crease, and cut the rest away.",
        meets &&
          corners === "butted" &&
          `Sew the sides first; the ends of the others are turned under by ${len(turnMm)} and lie against them.`,
        "Baste, then sew close to each pressed edge.",
      ),
      check: "The face lies flat beside every strip: if it puckers, the strip was pulled.",
      caution: IRON,
      sheet: "front",
    },
  ];
}

function joined(pieced: boolean): string | false {
  return pieced && "Sew pieces of one strip end to end first, the same way up, no seam in the middle.";
}

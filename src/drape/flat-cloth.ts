import type { Form } from "../shade-plan/index.ts";

/**
 * Where the cloth at a finished place lies once pleats and gathers are spread out: across it, mm, the middle of the cloth
 * counted as the middle of the shade.
 */
export function spreadOut({ across, swags, pleats }: Form, widthMm: number): (xMm: number) => number {
  const more =
    across === "gathered"
      ? (xMm: number) =>
          swags.reduce((sum, { fromMm, toMm, arcMm }) => {
            const share = Math.min(1, Math.max(0, (xMm - fromMm) / (toMm - fromMm)));
            return sum + share * (arcMm - (toMm - fromMm));
          }, 0)
      : (xMm: number) =>
          across === "pleated"
            ? pleats.reduce((sum, pleat) => sum + (pleat.xMm < xMm ? pleat.foldedMm : 0), 0)
            : 0;
  const halfMm = (more(widthMm + 1) - more(-1)) / 2 + more(-1);
  return (xMm) => xMm + more(xMm) - halfMm;
}

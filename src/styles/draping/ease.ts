import type { Ease, Form } from "../../shade-plan/index.ts";

const SAME_MM = 1e-6;

/** What of it is open at a height above the hem on the flat cloth, mm: a wedge that closes upwards. */
function openMm({ extraMm, untilMm }: Ease, aboveHemMm: number): number {
  if (untilMm === undefined) return extraMm;
  return untilMm <= 0 ? 0 : extraMm * Math.max(0, 1 - aboveHemMm / untilMm);
}

/** More cloth between two lines than their distance, at a height above the hem, mm. */
export function easeBetween(
  { ease = [] }: Pick<Form, "ease">,
  fromMm: number,
  toMm: number,
  aboveHemMm: number,
): number {
  return ease
    .filter((one) => Math.abs(one.fromMm - fromMm) < SAME_MM && Math.abs(one.toMm - toMm) < SAME_MM)
    .reduce((sum, one) => sum + openMm(one, aboveHemMm), 0);
}

/** Whether the cloth beside the outer columns hangs down as tails. */
export function hasTails({ ease = [] }: Pick<Form, "ease">, widthMm: number): boolean {
  return ease.some(
    ({ fromMm, toMm }) => fromMm < SAME_MM !== toMm > widthMm - SAME_MM && toMm - fromMm < widthMm,
  );
}

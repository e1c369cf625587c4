import { surfaceFindings } from "../drape/index.ts";
import type { Plan } from "./plan-types.ts";

/**
 * The plan with what is read from the cloth of each shade as it hangs, beside its other findings. That takes about a second
 * for a shade that hangs in swags, so `plan` leaves it to who asks for it.
 */
export function withSurface(plan: Plan): Plan {
  return {
    ...plan,
    shades: plan.shades.map((shade) => ({
      ...shade,
      findings: [
        ...shade.findings,
        ...surfaceFindings({ drape: shade, shadeId: shade.shadeId, units: plan.units }),
      ],
    })),
  };
}

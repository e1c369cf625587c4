import { surfaceFindings } from "../drape/findings/index.ts";
import type { Finding } from "../figures/index.ts";
import type { Plan, ShadePlan } from "./plan-types.ts";

/**
 * The plan with what is read from the cloth of each shade as it hangs, beside its other findings. That takes about a second
 * for a shade that hangs in swags, so `plan` leaves it to who asks for it.
 *
 * @param known what is known of a shade already; undefined where it is still to be read
 */
export function withSurface(
  plan: Plan,
  known: (shade: ShadePlan) => readonly Finding[] | undefined = () => undefined,
): Plan {
  return {
    ...plan,
    shades: plan.shades.map((shade) => ({
      ...shade,
      findings: [
        ...shade.findings,
        ...(known(shade) ?? surfaceFindings({ drape: shade, shadeId: shade.shadeId, units: plan.units })),
      ],
    })),
  };
}

import {
  type Job,
  type MakingGroup,
  ownUsualPart,
  PART_SETTINGS,
  PLAIN_LIFT,
  partsOf,
  resolveShade,
  type StyleKind,
  type Window,
} from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { carefulLift } from "../../safety/index.ts";
import { STYLE_MODULES } from "../../styles/index.ts";

const WORKED: Record<string, (plan: ShadePlan) => unknown> = {
  "fold.headrailMm": ({ grid }) => grid.headrailMm,
  "fold.rows": ({ grid }) => grid.rows.length,
  "fold.spacingMm": ({ grid }) => grid.spacingsMm[0],
  "relax.dipMm": ({ form }) => form.swags[0]?.sagMm ?? form.panel?.dipMm,
  "relax.extraWidthMm": ({ form }) => (form.panel === undefined ? undefined : form.ease?.[0]?.extraMm),
  "pleat.insetMm": ({ style, grid }) => (setsPleatsIn(style) ? grid.columns[0]?.xMm : undefined),
  "columns.count": ({ grid }) => grid.columns.length,
  "lift.kind": ({ lift }) => lift.kind,
  "lift.rearCords": ({ lift }) => lift.rearCords,
  "lift.lock": ({ lift }) => ("lockId" in lift ? lift.lockId : undefined),
  "lift.turnEye": ({ lift }) => ("turn" in lift ? lift.turn.id : undefined),
  "lift.drive": ({ lift }) => ("drive" in lift ? lift.drive.id : undefined),
  "lift.loopDropMm": ({ lift }) => ("loopDropMm" in lift ? lift.loopDropMm : undefined),
  "lift.wandMm": ({ lift }) => ("wandMm" in lift ? lift.wandMm : undefined),
  "lift.seatMm": ({ lift }) => ("seat" in lift ? lift.seat.xMm : undefined),
  "lift.tailMm": ({ lift }) => ("tailLoweredMm" in lift ? lift.tailLoweredMm : undefined),
};

/** Whether the pleats of a style stand in from its edges by a setting of their own. */
function setsPleatsIn(style: StyleKind): boolean {
  return STYLE_MODULES[style].asks.some((ask) => ask.group === "pleat" && ask.keys.includes("insetMm"));
}

/**
 * What a setting that the maker chose would be without that choice, where it can be told without planning: the lift
 * follows the place and the purpose, and its cords go with it; a part of one’s own goes before an example.
 */
export function withoutChoice(
  job: Pick<Job, "place" | "purpose" | "goods" | "units" | "workshop" | "cloths" | "hardware">,
  window: Window,
  group: MakingGroup,
  name: string,
): unknown {
  if (group !== "lift") return undefined;
  const part = PART_SETTINGS.find((setting) => setting === name);
  if (part !== undefined) return ownUsualPart(partsOf(job), part);
  const own = window.shade.making;
  if (name === "kind") {
    if (own?.lift?.kind === undefined) return undefined;
    const unchosen = { ...window.shade, making: { ...own, lift: {} } };
    const room = { id: "", name: "" };
    return resolveShade(job, partsOf(job), room, { ...window, shade: unchosen }, "", carefulLift(job))
      .liftKind;
  }
  if (name !== "rearCords") return undefined;
  return (own?.lift?.kind === undefined ? carefulLift(job) : PLAIN_LIFT).rearCords;
}

/** What the shade came to where a setting is worked out, to stand in its empty field. */
export function workedOut(plan: ShadePlan, group: MakingGroup, name: string): unknown {
  return WORKED[`${group}.${name}`]?.(plan);
}

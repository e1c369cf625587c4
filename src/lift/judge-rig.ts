import type { Finding } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import type { CordLockLift, TubeLift } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { cordLengthText, fineText, lengthText } from "../units/index.ts";
import type { FoundSeat } from "./find-seat.ts";
import type { LiftInput } from "./lift-input.ts";
import { EYE_OPENING, type RigLayout } from "./rig-threading.ts";

/** Share of a round opening that a bundle of cords can fill. */
const BUNDLE_FILL = 0.7;
const bundleCite = cite("from-memory", "a bundle of cords fills about 70 % of a round opening");

/** What to note when threading: a rig that failed its check, shared slots, crowded eyes, short spools. */
export function judgeRig(
  input: LiftInput,
  layout: RigLayout,
  seat: FoundSeat,
  lift: CordLockLift,
  faults: string[],
): Finding[] {
  const { resolved } = input;
  return [
    ...(faults.length === 0 ? [] : [failedCheck(resolved, faults)]),
    ...(seat.threading.shared ? [sharedSlot(resolved, lift)] : []),
    ...crowdedEye(resolved, layout, seat),
    ...shortSpool(resolved, lift),
  ];
}

function base(resolved: ResolvedShade) {
  return { stage: "rig", shadeId: resolved.shadeId, remedies: [] } as const;
}

function failedCheck(resolved: ResolvedShade, faults: string[]): Finding {
  return {
    ...base(resolved),
    remedies: [],
    id: "rig.check-failed",
    severity: "stop",
    text: `The drawn rig does not pass its own check: ${faults.slice(0, 3).join("; ")}. Do not thread it so.`,
    cite: cite("geometry", "crossings counted on the drawn paths"),
  };
}

function sharedSlot(resolved: ResolvedShade, lift: CordLockLift): Finding {
  const both = lift.slots.find(({ cords }) => {
    const ends = new Set(
      cords.map((number) => lift.cords.find((cord) => cord.number === number)?.entersFrom),
    );
    return ends.size > 1;
  });
  return {
    ...base(resolved),
    remedies: [],
    id: "rig.shared-slot",
    severity: "note",
    text: `The slots do not suffice to keep the cords of both ends apart: slot ${both?.number ?? ""} takes cords ${both?.cords.join(" and ") ?? ""} from both. Thread them so that neither winds around the other.`,
    cite: cite("our-choice", "cords of one end keep to slots of their own where that is possible"),
  };
}

function crowdedEye(resolved: ResolvedShade, layout: RigLayout, seat: FoundSeat): Finding[] {
  const inner = layout.eyesMm.length - seat.gap.outer;
  const most = Math.max(inner, seat.gap.outer);
  const bundleMm = resolved.cord.diameterMm * Math.sqrt(most / BUNDLE_FILL);
  const openingMm = EYE_OPENING.value * resolved.eye.outsideDiameterMm;
  if (bundleMm <= openingMm) return [];
  return [
    {
      ...base(resolved),
      remedies: [],
      id: "rig.crowded-eye",
      severity: "fix",
      path: `${resolved.path}/shade/making/lift/eye`,
      text: `${most} cords of ${fineText(resolved.cord.diameterMm)} run through the last eye before the lock: a bundle of about ${fineText(bundleMm)} in an opening of about ${fineText(openingMm)}. Take a larger eye, or a pulley for each cord there.`,
      cite: bundleCite,
    },
  ];
}

/** Is any cord longer than a spool holds? */
export function shortSpool(resolved: ResolvedShade, lift: CordLockLift | TubeLift): Finding[] {
  const { spoolMm } = resolved.cord;
  const longest = lift.cords.reduce((most, { cutMm }) => Math.max(most, cutMm), 0);
  if (spoolMm === undefined || longest <= spoolMm) return [];
  return [
    {
      ...base(resolved),
      remedies: [],
      id: "rig.short-spool",
      severity: "stop",
      path: `${resolved.path}/shade/making/lift/cord`,
      text: `The longest cord is ${lengthText(longest, resolved.units)}; a spool of “${resolved.cord.name}” holds ${cordLengthText(spoolMm, resolved.units)}. A lift cord is never joined: take a longer spool.`,
      cite: cite("common-practice", "a lift cord runs in one piece"),
    },
  ];
}

import type { Finding } from "../../figures/index.ts";
import { EYE_OPENING } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { fineText } from "../../units/index.ts";
import type { LiftShade } from "../lift-input.ts";
import { shortSpool } from "../short-spool.ts";
import type { FoundSeat } from "./find-seat.ts";
import type { LockRig } from "./lock-rig.ts";
import { BUNDLE_FILL, type RigLayout } from "./rig-threading.ts";

/** What to note when threading: a rig that failed its check, shared slots, crowded eyes, short spools. */
export function judgeRig(
  shade: LiftShade,
  layout: RigLayout,
  seat: FoundSeat,
  lift: LockRig,
  faults: string[],
): Finding[] {
  return [
    ...(faults.length === 0 ? [] : [failedCheck(shade, faults)]),
    ...sharedSlot(shade, lift),
    ...crowdedEye(shade, layout, seat),
    ...shortSpool(shade, lift),
  ];
}

function base(shade: LiftShade) {
  return { stage: "rig", shadeId: shade.shadeId, remedies: [] } as const;
}

function failedCheck(shade: LiftShade, faults: string[]): Finding {
  return {
    ...base(shade),
    remedies: [],
    id: "rig.check-failed",
    severity: "stop",
    text: `The drawn rig does not pass its own check: ${faults.slice(0, 3).join("; ")}. Do not thread it so.`,
    cite: cite("geometry", "crossings counted on the drawn paths"),
  };
}

/** Cords of both ends meet in one slot where the slots do not suffice to keep them apart. */
function sharedSlot(shade: LiftShade, lift: LockRig): Finding[] {
  const both = lift.slots.find(({ cords }) => {
    const ends = new Set(
      cords.map((number) => lift.cords.find((cord) => cord.number === number)?.entersFrom),
    );
    return ends.size > 1;
  });
  if (both === undefined) return [];
  return [
    {
      ...base(shade),
      remedies: [],
      id: "rig.shared-slot",
      severity: "note",
      text: `The slots do not suffice to keep the cords of both ends apart: slot ${both.number} takes cords ${both.cords.join(" and ")} from both. Thread them so that neither winds around the other.`,
      cite: cite("our-choice", "cords of one end keep to slots of their own where that is possible"),
    },
  ];
}

function crowdedEye(shade: LiftShade, layout: RigLayout, seat: FoundSeat): Finding[] {
  const inner = layout.eyesMm.length - seat.gap.outer;
  const most = Math.max(inner, seat.gap.outer);
  const bundleMm = shade.cord.diameterMm * Math.sqrt(most / BUNDLE_FILL.value);
  const openingMm = EYE_OPENING.value * shade.eye.outsideDiameterMm;
  if (bundleMm <= openingMm) return [];
  return [
    {
      ...base(shade),
      remedies: [],
      id: "rig.crowded-eye",
      severity: "fix",
      path: `${shade.path}/shade/making/lift/eye`,
      text: `${most} cords of ${fineText(shade.cord.diameterMm)} run through the last eye before the lock: a bundle of about ${fineText(bundleMm)} in an opening of about ${fineText(openingMm)}. Take a larger eye, or a pulley for each cord there.`,
      cite: BUNDLE_FILL.cite,
    },
  ];
}

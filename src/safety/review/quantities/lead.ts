import { SAME_LENGTH_MM } from "../../../units/index.ts";
import type { CordGeometry } from "../cord-geometry.ts";
import type { CheckedAgainst, LeansOn, NamedCord } from "./quantity.ts";

/** The lead of a motor, or of its charger: it is held by clips, and a cord like any other where it hangs free. */
export const LEAD: NamedCord = { text: "the motor’s lead between two clips", cords: "lead" };
export const LEAD_LOW: NamedCord = { text: "the lowest point of the motor’s lead", cords: "lead" };
export const LEAD_LOOP: NamedCord = { text: "the loop of the motor’s lead, drawn together", cords: "lead" };

export function hasLead({ kind }: CordGeometry): boolean {
  return kind === "motor";
}

/** A stretch of lead between two clips; drawn together it makes a loop of twice its length at the most. */
export function leadMm({ leadLooseMm = 0 }: CordGeometry): number {
  return leadLooseMm;
}

/** The same where it hangs as low as is asked; 0 where nobody said how low it hangs. */
export function leadBelowMm(geometry: CordGeometry, { belowFloorMm }: CheckedAgainst): number {
  if (belowFloorMm === undefined) return leadMm(geometry);
  const { leadLowMm } = geometry;
  return leadLowMm === undefined || leadLowMm > belowFloorMm + SAME_LENGTH_MM ? 0 : leadMm(geometry);
}

/** Clips count for nothing until they are pulled at, nor does a lead that nobody followed. */
export function leansOnClips(geometry: CordGeometry): LeansOn | undefined {
  if (!hasLead(geometry)) return undefined;
  return {
    why:
      geometry.leadLooseMm === undefined
        ? "The motor’s lead is a cord too, and how far it hangs free was not said."
        : "The motor’s lead is held by its clips alone. That they hold it under a pull shows on the wall.",
    test: "motor-lead",
  };
}

/** The same where heights count: of a lead that hangs free nobody may have said how high. */
export function leansOnClipsBelow(
  geometry: CordGeometry,
  { belowFloorMm }: CheckedAgainst,
): LeansOn | undefined {
  const { leadLooseMm, leadLowMm } = geometry;
  if (leadLooseMm !== undefined && leadLooseMm > 0 && hasLead(geometry)) {
    if (leadLowMm === undefined)
      return { why: "How high the motor’s lead hangs was not said.", test: "motor-lead" };
    if (belowFloorMm !== undefined && leadLowMm > belowFloorMm + SAME_LENGTH_MM) return undefined;
  }
  return leansOnClips(geometry);
}

/** What leans on both asks for both tests. */
export function leansOnBoth(one: LeansOn | undefined, other: LeansOn | undefined): LeansOn | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return { why: `${one.why} ${other.why}`, test: one.test, alsoTests: [other.test] };
}

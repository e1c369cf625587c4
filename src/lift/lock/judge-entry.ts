import type { Finding, Remedy } from "../../figures/index.ts";
import { partChoice } from "../../job/index.ts";
import type { CordEntry } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { fineText, trimmed } from "../../units/index.ts";
import type { LockInput } from "../lift-input.ts";
import { levelOverRollerMm, levelThroughEyeMm } from "./cord-entry.ts";
import { misfits } from "./lock-fit.ts";

/** Steeper than this a cord no longer comes in level. */
export const LEVEL_ENTRY = sourced(10, "deg", cite("our-choice", "about one in six"));
const MOST_OF_A_KIND = 2;

/** Does the cord come into the lock level, or does it climb or descend from the last eye? */
export function judgeEntry(input: LockInput, entry: CordEntry): Finding[] {
  const { shade, liftParts } = input;
  const { lock } = liftParts;
  const { climbDeg, mouthLevelMm, eyeLevelMm, lockLevelMm } = entry;
  const half = shade.cord.diameterMm / 2;
  const below = mouthLevelMm + half > lock.housingHeightMm;
  const above = mouthLevelMm - half < 0;
  if (!below && !above && Math.abs(climbDeg) <= LEVEL_ENTRY.value) return [];
  const way = climbDeg > 0 ? "climbs" : "descends";
  const rubs = below
    ? ` It meets the housing ${fineText(mouthLevelMm)} below the board, where the housing is only ${fineText(lock.housingHeightMm)} high: it rubs on its lower edge and frays.`
    : above
      ? " It would have to pass through the board."
      : " It drags over the edge of the housing, and the lock may not let go.";
  return [
    {
      stage: "rig",
      shadeId: shade.shadeId,
      id: "rig.entry-not-level",
      severity: below || above ? "fix" : "note",
      path: `${shade.path}/shade/making/lift/eye`,
      text: `From the last eye the cord ${way} at ${trimmed(Math.abs(climbDeg), 0)}° to “${lock.name}”: in the eye it lies ${fineText(eyeLevelMm)} below the board, over the roller ${fineText(lockLevelMm)}.${rubs} Take an eye and a lock that hold it at one height.`,
      cite: cite("lock-instructions", "cords enter the lock level, through the last eye"),
      figures: ["rig.entry-climb", "rig.eye-level", "rig.lock-level"],
      remedies: [...otherEyes(input, entry), ...otherLocks(input, entry)],
    },
  ];
}

/** Those that hold the cord nearer to the height of the roller. */
function otherEyes({ shade }: LockInput, { eyeLevelMm, lockLevelMm }: CordEntry): Remedy[] {
  const off = (mm: number) => Math.abs(levelThroughEyeMm(mm, shade.cord.diameterMm) - lockLevelMm);
  return shade.parts.eyes
    .filter(({ outsideDiameterMm }) => off(outsideDiameterMm) < Math.abs(eyeLevelMm - lockLevelMm))
    .sort((a, b) => off(a.outsideDiameterMm) - off(b.outsideDiameterMm))
    .slice(0, MOST_OF_A_KIND)
    .map(partChoice(shade, "lift", "eye"));
}

function otherLocks({ shade, grid, liftParts }: LockInput, { eyeLevelMm, lockLevelMm }: CordEntry): Remedy[] {
  const { cord, locks } = shade;
  return locks
    .filter(({ id }) => id !== liftParts.lock.id)
    .filter(
      (lock) =>
        Math.abs(levelOverRollerMm(lock, cord.diameterMm) - eyeLevelMm) < Math.abs(lockLevelMm - eyeLevelMm),
    )
    .filter((lock) => misfits(lock, cord, grid.columns.length).every(({ severity }) => severity !== "stop"))
    .slice(0, MOST_OF_A_KIND)
    .map(partChoice(shade, "lift", "lock"));
}

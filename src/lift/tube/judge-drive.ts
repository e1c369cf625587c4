import type { Finding, Remedy } from "../../figures/index.ts";
import { type Drive, type DriveKind, type ResolvedShade, settingPatch } from "../../job/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { massText, torqueText } from "../../units/index.ts";
import { lighterBars } from "../judge-pull.ts";
import type { TubeInput, TubeKind } from "./tube-input.ts";
import { DRIVE_OF } from "./tube-input.ts";

const DRIVE_WORDS: Record<DriveKind, string> = {
  spring: "a spring",
  wand: "a wand",
  loop: "a loop",
  motor: "a motor",
};
const KIND_OF: Record<DriveKind, TubeKind> = {
  spring: "spring",
  wand: "tube-wand",
  loop: "tube-loop",
  motor: "motor",
};
const MOST_REMEDIES = 2;

/** Does the drive take this shade, and what is not known of it? */
export function judgeDrive(input: TubeInput, lift: TubeLift): Finding[] {
  return [
    ...otherKind(input),
    ...weight(input),
    ...rating(input, lift),
    ...(input.liftParts.drive.demo === true ? [demoDrive(input)] : []),
  ];
}

function base(resolved: ResolvedShade, severity: Finding["severity"], id: string, from: Cite) {
  return {
    stage: "lift",
    shadeId: resolved.shadeId,
    path: `${resolved.path}/shade/making/lift/drive`,
    id,
    severity: severity,
    cite: from,
  } as const;
}

function otherKind({ resolved, liftParts }: TubeInput): Finding[] {
  const { asked, drive } = liftParts;
  if (asked === undefined) return [];
  const remedies: Remedy[] = [
    {
      label: `Let ${DRIVE_WORDS[asked.kind]} raise it`,
      patch: settingPatch(resolved, "lift", "kind", KIND_OF[asked.kind]),
    },
    { label: `Use “${drive.name}”`, patch: settingPatch(resolved, "lift", "drive", drive.id) },
  ];
  return [
    {
      ...base(resolved, "fix", "lift.drive-of-other-kind", cite("geometry", "what turns the tube")),
      text: `“${asked.name}” is ${DRIVE_WORDS[asked.kind]}, and this lift asks for ${DRIVE_WORDS[DRIVE_OF[liftParts.kind]]}. “${drive.name}” is planned in its place.`,
      remedies,
    },
  ];
}

const limitCite = cite("maker", "heaviest and lightest shade of the drive");

function weight(input: TubeInput): Finding[] {
  const { resolved, liftParts, mass } = input;
  const { drive } = liftParts;
  const text = (kg: number) => massText(kg, resolved.units);
  if (drive.massMaxKg === undefined) {
    return [
      {
        ...base(resolved, "unproven", "lift.drive-limit-unknown", limitCite),
        text: `How heavy a shade “${drive.name}” takes is not stated. This one severity ${text(mass.totalKg)}: ask the maker of the drive, and enter the limit.`,
        remedies: [],
      },
    ];
  }
  if (mass.totalKg > drive.massMaxKg) {
    return [
      {
        ...base(resolved, "stop", "lift.drive-overloaded", limitCite),
        text: `“${drive.name}” takes at most ${text(drive.massMaxKg)}; this shade weighs ${text(mass.totalKg)}. It would slip, or wear out and let the shade fall.`,
        remedies: [...otherDrives(input), ...lighterBars(resolved)],
      },
    ];
  }
  if (liftParts.kind === "spring" && drive.massMinKg !== undefined && mass.totalKg < drive.massMinKg) {
    return [
      {
        ...base(resolved, "fix", "lift.spring-too-strong", limitCite),
        text: `“${drive.name}” is made for ${text(drive.massMinKg)} and more; this shade weighs ${text(mass.totalKg)}. The spring would pull it up by itself. Take a lighter spring or a heavier bar.`,
        remedies: otherDrives(input),
      },
    ];
  }
  return [];
}

function otherDrives({ resolved, liftParts, mass }: TubeInput): Remedy[] {
  const takes = ({ kind, massMaxKg, massMinKg }: Drive) =>
    kind === liftParts.drive.kind &&
    massMaxKg !== undefined &&
    massMaxKg >= mass.totalKg &&
    (kind !== "spring" || (massMinKg ?? 0) <= mass.totalKg);
  return resolved.drives
    .filter((other) => other.id !== liftParts.drive.id && takes(other))
    .slice(0, MOST_REMEDIES)
    .map((other) => ({
      label: `Use “${other.name}”`,
      patch: settingPatch(resolved, "lift", "drive", other.id),
    }));
}

/** A motor's torque, where its maker states one. */
function rating({ resolved, liftParts }: TubeInput, lift: TubeLift): Finding[] {
  const { drive } = liftParts;
  const neededNm = Math.max(lift.torqueLoweredNm, lift.torqueRaisedNm);
  if (liftParts.kind !== "motor" || drive.torqueNm === undefined || neededNm <= drive.torqueNm) return [];
  return [
    {
      ...base(resolved, "stop", "lift.motor-torque", cite("maker", "rated torque")),
      text: `Raising it takes ${torqueText(neededNm, resolved.units)} on the tube; “${drive.name}” is rated for ${torqueText(drive.torqueNm, resolved.units)}.`,
      figures: ["lift.torque-raised", "lift.torque-lowered"],
      remedies: resolved.drives
        .filter((other) => other.kind === "motor" && (other.torqueNm ?? 0) >= neededNm)
        .slice(0, MOST_REMEDIES)
        .map((other) => ({
          label: `Use “${other.name}”`,
          patch: settingPatch(resolved, "lift", "drive", other.id),
        })),
    },
  ];
}

function demoDrive({ resolved, liftParts }: TubeInput): Finding {
  return {
    ...base(resolved, "note", "lift.demo-drive", cite("demo")),
    text: `The sizes and limits of “${liftParts.drive.name}” are invented for demonstration. Enter the drive in your hand before the board is drilled: its length decides where it sits, its height the headrail allowance.`,
    remedies: [],
  };
}

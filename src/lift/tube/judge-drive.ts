import type { Finding, Remedy } from "../../figures/index.ts";
import { type Drive, type DriveKind, LIFT_TRAITS, partChoice, settingPatch } from "../../job/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { massText, massTextsApart, torqueText } from "../../units/index.ts";
import { lighterBars } from "../judge-pull.ts";
import type { LiftShade, TubeInput } from "../lift-input.ts";
import { DRIVE_OF, LIFT_OF_DRIVE } from "./tube-lift-parts.ts";

const DRIVE_WORDS: Record<DriveKind, string> = {
  spring: "a spring",
  wand: "a wand",
  loop: "a loop",
  motor: "a motor",
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

function base(shade: LiftShade, severity: Finding["severity"], id: string, from: Cite) {
  return {
    stage: "lift",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/lift/drive`,
    id,
    severity: severity,
    cite: from,
  } as const;
}

function otherKind({ shade, liftParts }: TubeInput): Finding[] {
  const { asked, drive } = liftParts;
  if (asked === undefined) return [];
  const remedies: Remedy[] = [
    {
      label: `Let ${DRIVE_WORDS[asked.kind]} raise it`,
      patch: settingPatch(shade, "lift", "kind", LIFT_OF_DRIVE[asked.kind]),
    },
    partChoice(shade, "lift", "drive")(drive),
  ];
  return [
    {
      ...base(shade, "fix", "lift.drive-of-other-kind", cite("geometry", "what turns the tube")),
      text: `“${asked.name}” is ${DRIVE_WORDS[asked.kind]}, and this lift asks for ${DRIVE_WORDS[DRIVE_OF[liftParts.kind]]}. “${drive.name}” is planned in its place.`,
      remedies,
    },
  ];
}

const limitCite = cite("maker", "heaviest and lightest shade of the drive");

function weight(input: TubeInput): Finding[] {
  const { shade, liftParts, mass } = input;
  const { drive } = liftParts;
  const text = (kg: number) => massText(kg, shade.units);
  if (drive.massMaxKg === undefined) {
    return [
      {
        ...base(shade, "unproven", "lift.drive-limit-unknown", limitCite),
        text: `How heavy a shade “${drive.name}” takes is not stated. This one weighs ${text(mass.totalKg)}: ask the maker of the drive, and enter the limit.`,
        remedies: [],
      },
    ];
  }
  if (mass.totalKg > drive.massMaxKg) {
    const [limitText, weightText] = massTextsApart(drive.massMaxKg, mass.totalKg, shade.units, "most");
    return [
      {
        ...base(shade, "stop", "lift.drive-overloaded", limitCite),
        text: `“${drive.name}” takes at most ${limitText}; this shade weighs ${weightText}. It would slip, or wear out and let the shade fall.`,
        remedies: [...otherDrives(input), ...lighterBars(shade)],
      },
    ];
  }
  if (
    LIFT_TRAITS[liftParts.kind].poweredBy === "spring" &&
    drive.massMinKg !== undefined &&
    mass.totalKg < drive.massMinKg
  ) {
    const [limitText, weightText] = massTextsApart(drive.massMinKg, mass.totalKg, shade.units, "least");
    return [
      {
        ...base(shade, "fix", "lift.spring-too-strong", limitCite),
        text: `“${drive.name}” is made for ${limitText} and more; this shade weighs ${weightText}. The spring would pull it up by itself. Take a lighter spring or a heavier bar.`,
        remedies: otherDrives(input),
      },
    ];
  }
  return [];
}

function otherDrives({ shade, liftParts, mass }: TubeInput): Remedy[] {
  const takes = ({ kind, massMaxKg, massMinKg }: Drive) =>
    kind === liftParts.drive.kind &&
    massMaxKg !== undefined &&
    massMaxKg >= mass.totalKg &&
    (LIFT_TRAITS[liftParts.kind].poweredBy !== "spring" || (massMinKg ?? 0) <= mass.totalKg);
  return shade.drives
    .filter((other) => other.id !== liftParts.drive.id && takes(other))
    .slice(0, MOST_REMEDIES)
    .map(partChoice(shade, "lift", "drive"));
}

/** A motor's torque, where its maker states one. */
function rating({ shade, liftParts }: TubeInput, lift: TubeLift): Finding[] {
  const { drive } = liftParts;
  const neededNm = Math.max(lift.torqueLoweredNm, lift.torqueRaisedNm);
  if (lift.poweredBy !== "motor" || drive.torqueNm === undefined || neededNm <= drive.torqueNm) return [];
  return [
    {
      ...base(shade, "stop", "lift.motor-torque", cite("maker", "rated torque")),
      text: `Raising it takes ${torqueText(neededNm, shade.units)} on the tube; “${drive.name}” is rated for ${torqueText(drive.torqueNm, shade.units)}.`,
      figures: ["lift.torque-raised", "lift.torque-lowered"],
      remedies: shade.drives
        .filter((other) => other.kind === drive.kind && (other.torqueNm ?? 0) >= neededNm)
        .slice(0, MOST_REMEDIES)
        .map(partChoice(shade, "lift", "drive")),
    },
  ];
}

function demoDrive({ shade, liftParts }: TubeInput): Finding {
  return {
    ...base(shade, "note", "lift.demo-drive", cite("demo")),
    text: `The sizes and limits of “${liftParts.drive.name}” are invented for demonstration. Enter the drive in your hand before the board is drilled: its length decides where it sits, its height the headrail allowance.`,
    remedies: [],
  };
}

import type { Drive, DriveKind, Tube } from "../../job/index.ts";
import { woundRadiusMm } from "../../mechanics/index.ts";
import { fineText, forceText, MM_PER_M, massText, torqueText, trimmed } from "../../units/index.ts";
import { cordLoads } from "../cord-loads.ts";
import { hasRoom } from "../gaps.ts";
import { KNOT, STRENGTH_FACTOR } from "../judge-strength.ts";
import { WAND_RADIUS, WHEEL } from "../tube/control.ts";
import { driveGaps } from "../tube/seat-drive.ts";
import { spoolOf } from "../tube/spool-size.ts";
import { DRIVE_EFFICIENCY } from "../tube/torque.ts";
import { PARTS_APART } from "../tube/tube-line.ts";
import { wrapsAbreast, wrapsLeftMm } from "../tube/winding.ts";
import { bareBoard } from "./bare-board.ts";
import { BestSets } from "./best-sets.ts";
import type { HardwareNeed, HardwareSearch, HardwareSet, PartShelf, Refusal } from "./need.ts";
import { PairMarks } from "./pairs.ts";
import { cordPrice } from "./prices.ts";
import { refusals } from "./search-locks.ts";

const KIND_OF = {
  spring: "spring",
  wand: "tube-wand",
  loop: "tube-loop",
  motor: "motor",
} as const satisfies Record<DriveKind, HardwareSet["kind"]>;

const bestOfKinds = (most: number): Record<DriveKind, BestSets> => ({
  spring: new BestSets(most),
  wand: new BestSets(most),
  loop: new BestSets(most),
  motor: new BestSets(most),
});

/** Torque on the tube at both ends of the travel, and the axis to the cord there, for one tube and one cord. */
interface Turning {
  loweredNm: number;
  raisedNm: number;
  loweredMm: number;
  raisedMm: number;
}

/** Every tube with every drive and every cord. */
export function searchTubes(need: HardwareNeed, shelf: PartShelf, most: number): HardwareSearch {
  const { tubes, cords, drives } = shelf;
  const columns = need.columnsMm.length;
  const loads = cordLoads(need.columnsMm, need.widthMm, need.heldRaisedN).designN;
  const turning = tubes.map((tube) => cords.map((cord) => turningOf(need, tube, cord.diameterMm)));
  const tubeCord = tubeAndCord(need, shelf, turning, Math.max(0, ...loads));
  const tubeDrive = tubeAndDrive(need, shelf);
  const cordMoney = cords.map((cord) => cordPrice(cord, columns, need));
  const tooHard = new Map<string, Overasked>();
  // A motor asks nothing of the hand and would crowd out all others: the best of each kind are kept.
  const best = bestOfKinds(most);
  let feasible = 0;
  tubes.forEach((tube, t) => {
    const tubeMoney = tubePrice(tube, need, columns);
    drives.forEach((drive, d) => {
      if (!tubeDrive.takes(t, d)) return;
      const money = tubeMoney + (drive.price ?? Number.POSITIVE_INFINITY);
      for (let c = 0; c < cords.length; c++) {
        if (!tubeCord.takes(t, c)) continue;
        const turn = turning[t]?.[c];
        if (turn === undefined) continue;
        const pullN = handPullN(drive, turn);
        const asked = drive.kind === "motor" ? Math.max(turn.loweredNm, turn.raisedNm) : pullN;
        if (!(asked <= mostOf(need, drive))) {
          note(tooHard, drive, asked);
          continue;
        }
        feasible++;
        if (!best[drive.kind].admits(pullN)) continue;
        const price = money + (cordMoney[c] ?? Number.POSITIVE_INFINITY);
        best[drive.kind].add({ pullN, price, pieces: 2 + 2 * columns, first: t, cord: c, third: d });
      }
    });
  });
  return {
    considered: tubes.length * drives.length * cords.length,
    feasible,
    sets: Object.values(best)
      .flatMap(({ sorted }) => sorted)
      .flatMap(({ first, cord, third, pullN, price, pieces }): HardwareSet[] => {
        const [tube, drive, line] = [tubes[first], drives[third], cords[cord]];
        if (tube === undefined || drive === undefined || line === undefined) return [];
        const money = Number.isFinite(price) ? { price } : {};
        return [{ kind: KIND_OF[drive.kind], tube, drive, cord: line, pullN, pieces, ...money }];
      }),
    refusals: [
      ...refusals(tubeDrive, tubes, drives, cords.length),
      ...refusals(tubeCord, tubes, cords, drives.length),
      ...[...tooHard.values()].map((one) => overasks(need, one)),
    ],
  };
}

function turningOf(need: HardwareNeed, tube: Tube, cordDiameterMm: number): Turning {
  const { coreMm, windMm } = spoolOf(tube);
  const sideBySide = windMm === undefined ? 1 : wrapsAbreast(windMm, cordDiameterMm);
  const winding = { coreRadiusMm: coreMm / 2, cordDiameterMm, sideBySide };
  const wrapsMm = wrapsLeftMm(coreMm, cordDiameterMm);
  const loweredMm = woundRadiusMm(winding, wrapsMm);
  const raisedMm = woundRadiusMm(winding, wrapsMm + need.travelMm);
  return {
    loweredNm: (need.heldLoweredN * loweredMm) / MM_PER_M,
    raisedNm: (need.heldRaisedN * raisedMm) / MM_PER_M,
    loweredMm,
    raisedMm,
  };
}

function handPullN(drive: Drive, { loweredNm, raisedNm, loweredMm }: Turning): number {
  const over = (handMm: number) =>
    (MM_PER_M * Math.max(loweredNm, raisedNm)) /
    ((drive.efficiency ?? DRIVE_EFFICIENCY.value) * drive.ratio * handMm);
  switch (drive.kind) {
    case "spring":
      return (MM_PER_M * Math.abs(raisedNm - loweredNm)) / loweredMm;
    case "wand":
      return over(drive.crankMm ?? WAND_RADIUS.value);
    case "loop":
      return over((drive.wheelMm ?? WHEEL.value) / 2);
    case "motor":
      return 0;
  }
}

/** What may be asked at most: of a motor its torque where that is known, else of the hand its pull. */
function mostOf({ handMostN }: HardwareNeed, { kind, torqueNm }: Drive): number {
  return kind === "motor" ? (torqueNm ?? Number.POSITIVE_INFINITY) : handMostN;
}

/** A drive too weak for some tubes and cords: the least that is asked of it there, and how many sets that refuses. */
interface Overasked {
  drive: Drive;
  least: number;
  sets: number;
}

function note(list: Map<string, Overasked>, drive: Drive, asked: number): void {
  const same = list.get(drive.id);
  if (same === undefined) list.set(drive.id, { drive, least: asked, sets: 1 });
  else {
    same.least = Math.min(same.least, asked);
    same.sets++;
  }
}

function overasks(need: HardwareNeed, { drive, least, sets }: Overasked): Refusal {
  const most = mostOf(need, drive);
  const partIds = [drive.id];
  if (drive.kind === "motor") {
    const text = `“${drive.name}” is rated for ${torqueText(most, need.units)}; the shade takes ${torqueText(least, need.units)} or more on the tubes at hand.`;
    return { id: "lift.motor-torque", partIds, text, sets };
  }
  const text = `With “${drive.name}” the hand would pull ${forceText(least, need.units)} or more; ${forceText(most, need.units)} is the most that is asked of one arm.`;
  return { id: "lift.hard-pull", partIds, text, sets };
}

function tubePrice(tube: Tube, { boardLengthMm }: HardwareNeed, spools: number): number {
  if (tube.price === undefined || tube.spoolPrice === undefined) return Number.POSITIVE_INFINITY;
  const lengths = tube.stockMm === undefined ? 1 : Math.ceil(boardLengthMm / tube.stockMm);
  return tube.price * lengths + tube.spoolPrice * spools;
}

function tubeAndCord(
  need: HardwareNeed,
  { tubes, cords }: PartShelf,
  turning: readonly (readonly Turning[])[],
  heaviestN: number,
): PairMarks {
  const marks = new PairMarks(tubes.length, cords.length);
  const text = (forceN: number) => forceText(forceN, need.units);
  tubes.forEach((tube, t) => {
    const { flangeMm } = spoolOf(tube);
    cords.forEach((cord, c) => {
      const { diameterMm, breakingN } = cord;
      const woundMm = 2 * (turning[t]?.[c]?.raisedMm ?? 0) + diameterMm;
      if (woundMm > flangeMm) {
        marks.refuse(
          t,
          c,
          "rig.spool-full",
          `Raised, “${cord.name}” stands ${fineText(woundMm)} across on a spool of “${tube.name}”, whose flanges are ${fineText(flangeMm)}.`,
        );
      }
      const carriesN = heaviestN / KNOT.value;
      if (breakingN !== undefined && breakingN < STRENGTH_FACTOR.value * carriesN) {
        marks.refuse(
          t,
          c,
          "lift.cord-too-weak",
          `“${cord.name}” breaks at ${text(breakingN)}, ${trimmed(breakingN / carriesN, 1)} times what its knot carries; ${STRENGTH_FACTOR.value} times is asked for.`,
        );
      }
    });
  });
  return marks;
}

function tubeAndDrive(need: HardwareNeed, { tubes, drives }: PartShelf): PairMarks {
  const marks = new PairMarks(tubes.length, drives.length);
  const text = (kg: number) => massText(kg, need.units);
  const board = bareBoard(need);
  tubes.forEach((tube, t) => {
    drives.forEach((drive, d) => {
      if (drive.massMaxKg !== undefined && need.massKg > drive.massMaxKg) {
        const words = `“${drive.name}” takes at most ${text(drive.massMaxKg)}; this shade weighs ${text(need.massKg)}.`;
        marks.refuse(t, d, "lift.drive-overloaded", words);
      }
      if (drive.kind === "spring" && drive.massMinKg !== undefined && need.massKg < drive.massMinKg) {
        const words = `“${drive.name}” is made for ${text(drive.massMinKg)} and more; this shade weighs ${text(need.massKg)}.`;
        marks.refuse(t, d, "lift.spring-too-strong", words);
      }
      const line = {
        ...board,
        eyeRadiusMm: spoolOf(tube).lengthMm / 2,
        straightRunMm: PARTS_APART.value,
        housingLengthMm: drive.lengthMm,
      };
      if (driveGaps(line, KIND_OF[drive.kind]).some(hasRoom)) return;
      const words = `“${drive.name}” finds no place beside the spools of “${tube.name}”.`;
      marks.refuse(t, d, "rig.no-drive-seat", words);
    });
  });
  return marks;
}

import { type Drive, LIFT_TRAITS, type LiftTraits, type Tube } from "../../job/index.ts";
import { woundRadiusMm } from "../../mechanics/index.ts";
import { fineText, forceText, MM_PER_M, massTextsApart, torqueText } from "../../units/index.ts";
import { cordLoads } from "../cord-loads.ts";
import { hasRoom } from "../gaps.ts";
import { KNOT, STRENGTH_FACTOR, timesText } from "../judge-strength.ts";
import { driveGaps } from "../tube/seat-drive.ts";
import { spoolOf } from "../tube/spool-size.ts";
import { DRIVE_OF, type TubeKind } from "../tube/tube-lift-parts.ts";
import { PARTS_APART } from "../tube/tube-line.ts";
import { wrapsAbreast, wrapsLeftMm } from "../tube/winding.ts";
import { bareBoard } from "./bare-board.ts";
import { BestSets } from "./best-sets.ts";
import type { HardwareNeed, HardwareSearch, HardwareSet, PartShelf, Refusal } from "./need.ts";
import { PairMarks } from "./pairs.ts";
import { cordPrice } from "./prices.ts";
import { refusals } from "./search-locks.ts";

/** Torque on the tube at both ends of the travel, and the axis to the cord there, for one tube and one cord. */
interface Turning {
  loweredNm: number;
  raisedNm: number;
  loweredMm: number;
  raisedMm: number;
}

/** A kind of lift as the search sees it. */
export interface SearchedKind {
  kind: TubeKind;
  /** About what the hand pulls, where that is greatest, N. */
  handPullN(drive: Drive, turning: Turning): number;
}

/** Every tube with every drive of one kind of lift and every cord. */
export function searchTubes(
  need: HardwareNeed,
  shelf: PartShelf,
  most: number,
  { kind, handPullN }: SearchedKind,
): HardwareSearch {
  const { tubes, cords } = shelf;
  const drives = shelf.drives.filter((drive) => drive.kind === DRIVE_OF[kind]);
  const { poweredBy } = LIFT_TRAITS[kind];
  const columns = need.columnsMm.length;
  const loads = cordLoads(need.columnsMm, need.widthMm, need.heldRaisedN).designN;
  const turning = tubes.map((tube) => cords.map((cord) => turningOf(need, tube, cord.diameterMm)));
  const tubeCord = tubeAndCord(need, shelf, turning, Math.max(0, ...loads));
  const tubeDrive = tubeAndDrive(need, tubes, drives, kind);
  const cordMoney = cords.map((cord) => cordPrice(cord, columns, need));
  const tooHard = new Map<string, Overasked>();
  const best = new BestSets(most);
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
        const asked = poweredBy === "motor" ? Math.max(turn.loweredNm, turn.raisedNm) : pullN;
        if (!(asked <= mostOf(need, drive, poweredBy))) {
          note(tooHard, drive, asked);
          continue;
        }
        feasible++;
        if (!best.admits(pullN)) continue;
        const price = money + (cordMoney[c] ?? Number.POSITIVE_INFINITY);
        best.add({ pullN, price, pieces: 2 + 2 * columns, first: t, cord: c, third: d });
      }
    });
  });
  return {
    considered: tubes.length * drives.length * cords.length,
    feasible,
    sets: best.sorted.flatMap(({ first, cord, third, pullN, price, pieces }): HardwareSet[] => {
      const [tube, drive, line] = [tubes[first], drives[third], cords[cord]];
      if (tube === undefined || drive === undefined || line === undefined) return [];
      const money = Number.isFinite(price) ? { price } : {};
      return [{ kind, tube, drive, cord: line, pullN, pieces, ...money }];
    }),
    refusals: [
      ...refusals(tubeDrive, tubes, drives, cords.length),
      ...refusals(tubeCord, tubes, cords, drives.length),
      ...[...tooHard.values()].map((one) => overasks(need, one, poweredBy)),
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

/** What may be asked at most: of a motor its torque where that is known, else of the hand its pull. */
function mostOf(
  { handMostN }: HardwareNeed,
  { torqueNm }: Drive,
  poweredBy: LiftTraits["poweredBy"],
): number {
  return poweredBy === "motor" ? (torqueNm ?? Number.POSITIVE_INFINITY) : handMostN;
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

function overasks(
  need: HardwareNeed,
  { drive, least, sets }: Overasked,
  poweredBy: LiftTraits["poweredBy"],
): Refusal {
  const most = mostOf(need, drive, poweredBy);
  const partIds = [drive.id];
  if (poweredBy === "motor") {
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
          `“${cord.name}” breaks at ${text(breakingN)}, ${timesText(breakingN / carriesN)} times what its knot carries; ${STRENGTH_FACTOR.value} times is asked for.`,
        );
      }
    });
  });
  return marks;
}

function tubeAndDrive(
  need: HardwareNeed,
  tubes: readonly Tube[],
  drives: readonly Drive[],
  kind: TubeKind,
): PairMarks {
  const balances = LIFT_TRAITS[kind].poweredBy === "spring";
  const marks = new PairMarks(tubes.length, drives.length);
  const board = bareBoard(need);
  tubes.forEach((tube, t) => {
    drives.forEach((drive, d) => {
      if (drive.massMaxKg !== undefined && need.massKg > drive.massMaxKg) {
        const [limit, weight] = massTextsApart(drive.massMaxKg, need.massKg, need.units, "most");
        const words = `“${drive.name}” takes at most ${limit}; this shade weighs ${weight}.`;
        marks.refuse(t, d, "lift.drive-overloaded", words);
      }
      if (balances && drive.massMinKg !== undefined && need.massKg < drive.massMinKg) {
        const [limit, weight] = massTextsApart(drive.massMinKg, need.massKg, need.units, "least");
        const words = `“${drive.name}” is made for ${limit} and more; this shade weighs ${weight}.`;
        marks.refuse(t, d, "lift.spring-too-strong", words);
      }
      const line = {
        ...board,
        eyeRadiusMm: spoolOf(tube).lengthMm / 2,
        straightRunMm: PARTS_APART.value,
        housingLengthMm: drive.lengthMm,
      };
      if (driveGaps(line, kind).some(hasRoom)) return;
      const words = `“${drive.name}” finds no place beside the spools of “${tube.name}”.`;
      marks.refuse(t, d, "rig.no-drive-seat", words);
    });
  });
  return marks;
}

import { frictionOf, type LiftKindOf, QUARTER_TURN_RAD } from "../../job/index.ts";
import { capstanRatio } from "../../mechanics/index.ts";
import { forceText, lengthText } from "../../units/index.ts";
import { cordLoads } from "../cord-loads.ts";
import { gapsToTry, hasRoom } from "../gaps.ts";
import { KNOT, STRENGTH_FACTOR, timesText } from "../judge-strength.ts";
import { misfits } from "../lock/lock-fit.ts";
import { ROLLER_EFFICIENCY } from "../lock/rig-threading.ts";
import { bareBoard } from "./bare-board.ts";
import { BestSets } from "./best-sets.ts";
import type { HardwareNeed, HardwareSearch, PartShelf, Refusal } from "./need.ts";
import { PairMarks } from "./pairs.ts";
import { cordPrice, packPrice } from "./prices.ts";

/** Every cord lock with every cord and every eye. Pairs are judged once; what is left are sums. */
export function searchLocks(
  need: HardwareNeed,
  shelf: PartShelf,
  most: number,
  kind: LiftKindOf<"lock">,
): HardwareSearch {
  const { locks, cords, eyes } = shelf;
  const columns = need.columnsMm.length;
  const loads = cordLoads(need.columnsMm, need.widthMm, need.heldRaisedN).designN;
  const totalN = loads.reduce((sum, load) => sum + load, 0);
  const heaviestN = Math.max(0, ...loads);

  const lockCord = lockAndCord(shelf, columns);
  const lockEye = lockAndEye(need, shelf);
  const eyeRatio = eyes.map(
    (eye) => capstanRatio(frictionOf(eye).value, QUARTER_TURN_RAD) / ROLLER_EFFICIENCY.value,
  );
  const cordEye = cordAndEye(need, shelf, eyeRatio, heaviestN, totalN);
  const cordMoney = cords.map((cord) => cordPrice(cord, columns, need));
  const eyeMoney = eyes.map((eye) => packPrice(eye, columns));

  const best = new BestSets(most);
  let feasible = 0;
  for (let l = 0; l < locks.length; l++) {
    const lockMoney = locks[l]?.price ?? Number.POSITIVE_INFINITY;
    for (let c = 0; c < cords.length; c++) {
      if (!lockCord.takes(l, c)) continue;
      const money = lockMoney + (cordMoney[c] ?? Number.POSITIVE_INFINITY);
      for (let e = 0; e < eyes.length; e++) {
        if (!lockEye.takes(l, e) || !cordEye.takes(c, e)) continue;
        feasible++;
        const pullN = totalN * (eyeRatio[e] ?? 1);
        if (!best.admits(pullN)) continue;
        const price = money + (eyeMoney[e] ?? Number.POSITIVE_INFINITY);
        best.add({ pullN, price, pieces: 1 + 2 * columns, first: l, cord: c, third: e });
      }
    }
  }
  return {
    considered: locks.length * cords.length * eyes.length,
    feasible,
    sets: best.sorted.flatMap(({ first, cord, third, pullN, price, pieces }) => {
      const [lock, eye, line] = [locks[first], eyes[third], cords[cord]];
      if (lock === undefined || eye === undefined || line === undefined) return [];
      const money = Number.isFinite(price) ? { price } : {};
      return [{ kind, lock, eye, cord: line, pullN, pieces, ...money }];
    }),
    refusals: [
      ...refusals(lockCord, locks, cords, eyes.length),
      ...refusals(lockEye, locks, eyes, cords.length),
      ...refusals(cordEye, cords, eyes, locks.length),
    ],
  };
}

function lockAndCord({ locks, cords }: PartShelf, columns: number): PairMarks {
  const marks = new PairMarks(locks.length, cords.length);
  locks.forEach((lock, l) => {
    cords.forEach((cord, c) => {
      for (const { id, severity, reason } of misfits(lock, cord, columns)) {
        if (severity === "stop") marks.refuse(l, c, id, `“${lock.name}” ${reason}.`);
      }
    });
  });
  return marks;
}

function lockAndEye(need: HardwareNeed, { locks, eyes }: PartShelf): PairMarks {
  const marks = new PairMarks(locks.length, eyes.length);
  const { units } = need;
  const board = bareBoard(need);
  locks.forEach((lock, l) => {
    eyes.forEach((eye, e) => {
      if (lock.housingWidthMm > need.boardDepthMm) {
        marks.refuse(
          l,
          e,
          "rig.deeper-than-board",
          `“${lock.name}” is ${lengthText(lock.housingWidthMm, units)} wide, and the board is ${lengthText(need.boardDepthMm, units)} deep.`,
        );
        return;
      }
      const line = {
        ...board,
        eyeRadiusMm: eye.outsideDiameterMm / 2,
        straightRunMm: need.straightRunMm,
        housingLengthMm: lock.housingLengthMm,
      };
      if (gapsToTry(line, "auto").some(hasRoom)) return;
      marks.refuse(
        l,
        e,
        "rig.no-seat",
        `“${lock.name}”, ${lengthText(lock.housingLengthMm, units)} long, finds no place on the board beside “${eye.name}” with ${lengthText(need.straightRunMm, units)} of straight run.`,
      );
    });
  });
  return marks;
}

/** Strength of the cord over this eye, and what the hand would pull. */
export function cordAndEye(
  need: HardwareNeed,
  { cords, eyes }: Pick<PartShelf, "cords" | "eyes">,
  eyeRatio: readonly number[],
  heaviestN: number,
  totalN: number,
): PairMarks {
  const marks = new PairMarks(cords.length, eyes.length);
  const text = (forceN: number) => forceText(forceN, need.units);
  cords.forEach((cord, c) => {
    eyes.forEach((eye, e) => {
      const ratio = eyeRatio[e] ?? 1;
      const runs = heaviestN * ratio;
      const carriesN = Math.max(runs, heaviestN / KNOT.value);
      if (cord.breakingN !== undefined && cord.breakingN < STRENGTH_FACTOR.value * carriesN) {
        marks.refuse(
          c,
          e,
          "lift.cord-too-weak",
          `“${cord.name}” breaks at ${text(cord.breakingN)}, ${timesText(cord.breakingN / carriesN)} times what it carries over “${eye.name}”; ${STRENGTH_FACTOR.value} times is asked for.`,
        );
      }
      if (totalN * ratio > need.handMostN) {
        marks.refuse(
          c,
          e,
          "lift.hard-pull",
          `Over “${eye.name}” the hand would pull ${text(totalN * ratio)}; ${text(need.handMostN)} is the most that is asked of one arm.`,
        );
      }
    });
  });
  return marks;
}

/** The marks of one pairing as sentences, those alike in words together. */
export function refusals(
  marks: PairMarks,
  rows: readonly { id: string }[],
  columns: readonly { id: string }[],
  others: number,
): Refusal[] {
  // Of a shelf without what they would be combined with they refuse no set.
  if (others === 0) return [];
  const byText = new Map<string, Refusal>();
  for (const { row, column, id, text } of marks.found) {
    const partIds = [rows[row]?.id, columns[column]?.id].filter((part) => part !== undefined);
    const same = byText.get(text);
    if (same === undefined) byText.set(text, { id, partIds, text, sets: others });
    else {
      same.sets += others;
      same.partIds = same.partIds.filter((part) => partIds.includes(part));
    }
  }
  return [...byText.values()];
}

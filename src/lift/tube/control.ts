import type { WorkingBook } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { planTubeCourse, type TubeCourseParts } from "../course/plan-course.ts";
import { controlDrop, endAboveFloor } from "./control-drop.ts";
import { handPull, type Torques } from "./torque.ts";
import type { TubeInput } from "./tube-input.ts";
import type { Wound } from "./winding.ts";

/** Where the maker of a drive gives none of these. */
export const WHEEL = sourced(30, "mm", cite("our-choice", "a small wheel; measure your own"));
export const WAND_RADIUS = sourced(
  8,
  "mm",
  cite("our-choice", "a plain wand of 16 mm, twisted between the fingers"),
);

/** A lift with a tube but for what the hand works. */
export type TubeWithoutControl = Omit<
  Extract<TubeLift, { kind: "motor" }>,
  "kind" | "pullN" | "power" | "raiseSeconds" | "course"
>;

/** What the hand works: hem, wand, loop or nothing. */
export function withControl(
  input: TubeInput,
  parts: TubeWithoutControl,
  { wound, turning }: { wound: Wound; turning: Torques },
  book: WorkingBook,
): TubeLift {
  const coursed = <L extends TubeCourseParts>(lift: L) => ({
    ...lift,
    course: planTubeCourse(input, lift, book),
  });
  switch (input.liftParts.kind) {
    case "spring":
      return coursed({ ...parts, kind: "spring" as const, ...springControl(input, turning, wound, book) });
    case "tube-wand":
      return coursed({ ...parts, kind: "tube-wand" as const, ...wandControl(input, turning, wound, book) });
    case "tube-loop":
      return coursed({ ...parts, kind: "tube-loop" as const, ...loopControl(input, turning, wound, book) });
    case "motor":
      return coursed({ ...parts, kind: "motor" as const, pullN: 0, ...motorControl(input, wound, book) });
  }
}

/**
 * A spring that pulls evenly is set half way between the two torques; friction holds what is left either way, and
 * a hand that moves the shade works against both.
 */
function springControl({ liftParts }: TubeInput, turning: Torques, wound: Wound, book: WorkingBook) {
  const given = {
    m: [turning.loweredNm, "Nm", "torque on the tube, lowered"],
    M: [turning.raisedNm, "Nm", "torque on the tube, raised"],
    r: [wound.loweredMm, "mm", "axis to the cord, lowered"],
  } as const;
  const from = cite("geometry", "an even spring set half way between the two torques");
  return {
    bandN: book.figure("lift.spring-band", {
      label: "Pull that friction must hold, each way",
      symbol: "b",
      unit: "N",
      formula: "1000·abs(M − m) / (2·r)",
      given,
      cite: from,
      compute: ({ m, M, r }) => (1000 * Math.abs(M - m)) / (2 * r),
    }),
    pullN: book.figure("lift.pull", {
      label: "Pull at the hem, at the worse end, with just enough friction to hold",
      symbol: "F",
      unit: "N",
      formula: "1000·abs(M − m) / r",
      given,
      cite: from,
      compute: ({ m, M, r }) => (1000 * Math.abs(M - m)) / r,
    }),
    ...(liftParts.drive.massMinKg === undefined ? {} : { massMinKg: liftParts.drive.massMinKg }),
  };
}

function wandControl(input: TubeInput, turning: Torques, wound: Wound, book: WorkingBook) {
  const { drive } = input.liftParts;
  const crankMm = drive.crankMm ?? WAND_RADIUS.value;
  const wandMm = controlDrop(
    input,
    input.resolved.making.lift.wandMm,
    { id: "rig.wand", label: "Wand below its drive", symbol: "p" },
    book,
  );
  const endMm = endAboveFloor(
    input,
    wandMm,
    { id: "rig.wand-end", label: "Wand’s end above the floor" },
    book,
  );
  return {
    wandMm,
    detachable: drive.detachable ?? false,
    crankMm,
    handTurns: handTurns(drive.ratio, wound, book),
    ...(endMm === undefined ? {} : { wandEndAboveFloorMm: endMm }),
    pullN: handPull(
      turning,
      {
        label: "Push at the crank, where it is greatest",
        radiusMm: crankMm,
        radiusLabel: drive.crankMm === undefined ? "radius of a plain wand" : "radius of the crank",
        ratio: drive.ratio,
        efficiency: drive.efficiency,
      },
      book,
    ),
  };
}

function handTurns(ratio: number, { turns }: Wound, book: WorkingBook): number {
  return book.figure("lift.hand-turns", {
    label: "Turns of the wand from lowered to raised",
    symbol: "n",
    unit: "count",
    formula: "N·i",
    given: {
      N: [turns, "count", "turns of the tube"],
      i: [ratio, "ratio", "turns of the wand for one of the tube"],
    },
    cite: cite("arithmetic"),
    compute: ({ N, i }) => N * i,
  });
}

function loopControl(input: TubeInput, turning: Torques, wound: Wound, book: WorkingBook) {
  const { resolved, liftParts } = input;
  const wheelMm = liftParts.drive.wheelMm ?? WHEEL.value;
  const loopDropMm = controlDrop(
    input,
    resolved.making.lift.loopDropMm,
    { id: "rig.loop", label: "Loop, from the drive down to its lowest point", symbol: "p" },
    book,
  );
  const endMm = endAboveFloor(
    input,
    loopDropMm,
    { id: "rig.loop-end", label: "Loop’s lowest point above the floor" },
    book,
  );
  return {
    wheelMm,
    loopDropMm,
    loopExitBelowTopMm: resolved.board.thicknessMm + liftParts.axisMm,
    loopPerimeterMm: loopPerimeter(loopDropMm, wheelMm, book),
    loopTravelMm: loopTravel(liftParts.drive.ratio, wheelMm, wound, book),
    ...(endMm === undefined ? {} : { loopEndAboveFloorMm: endMm }),
    pullN: handPull(
      turning,
      {
        label: "Pull on the loop, where it is greatest",
        radiusMm: wheelMm / 2,
        radiusLabel: "radius of the wheel",
        ratio: liftParts.drive.ratio,
        efficiency: liftParts.drive.efficiency,
      },
      book,
    ),
  };
}

function loopPerimeter(dropMm: number, wheelMm: number, book: WorkingBook): number {
  return book.figure("rig.loop-perimeter", {
    label: "Loop: length all round",
    symbol: "o",
    unit: "mm",
    formula: "2·p + (π − 1)·D",
    given: {
      p: [dropMm, "mm", "from the drive’s axis to the lowest point"],
      D: [wheelMm, "mm", "wheel of the drive, and the tensioner’s the same"],
    },
    cite: cite("geometry", "round two wheels alike"),
    note: "the tensioner’s own instructions say how a loop is joined",
    compute: ({ p, D }) => 2 * p + (Math.PI - 1) * D,
  });
}

function loopTravel(ratio: number, wheelMm: number, { turns }: Wound, book: WorkingBook): number {
  return book.figure("rig.loop-travel", {
    label: "Loop to pull from lowered to raised",
    symbol: "q",
    unit: "mm",
    formula: "N·i·π·D",
    given: {
      N: [turns, "count", "turns of the tube"],
      i: [ratio, "ratio", "turns of the wheel for one of the tube"],
      D: [wheelMm, "mm", "wheel of the drive"],
    },
    cite: cite("geometry"),
    compute: ({ N, i, D }) => N * i * Math.PI * D,
  });
}

/** Nothing is said of the time where the motor's speed is not known. */
function motorControl({ liftParts }: TubeInput, { turns }: Wound, book: WorkingBook) {
  const { power, turnsPerMin } = liftParts.drive;
  return {
    ...(power === undefined ? {} : { power }),
    ...(turnsPerMin === undefined
      ? {}
      : {
          raiseSeconds: book.figure("lift.raise-time", {
            label: "Time to raise it",
            symbol: "t",
            unit: "s",
            formula: "60·N / n",
            given: {
              N: [turns, "count", "turns of the tube"],
              n: [turnsPerMin, "count", "turns a minute, as the motor’s maker states"],
            },
            cite: cite("maker", "speed of the motor"),
            compute: ({ N, n }) => (60 * N) / n,
          }),
        }),
  };
}

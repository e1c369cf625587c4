import { type Figure, figureRule, type Worked } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { planTubeCourse, type TubeCourseParts } from "../course/plan-course.ts";
import { controlDrop, endAboveFloor, type Hanging } from "./control-drop.ts";
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

const EVEN_SPRING = {
  unit: "N",
  inputs: {
    m: ["Nm", "torque on the tube, lowered", "figure:lift.torque-lowered"],
    M: ["Nm", "torque on the tube, raised", "figure:lift.torque-raised"],
    r: ["mm", "axis to the cord, lowered", "figure:lift.wound-lowered"],
  },
  cite: cite("geometry", "an even spring set half way between the two torques"),
} as const;

const BAND = figureRule({
  ...EVEN_SPRING,
  id: "lift.spring-band",
  label: "Pull that friction must hold, each way",
  symbol: "b",
  formula: "1000·abs(M − m) / (2·r)",
  compute: ({ m, M, r }) => (1000 * Math.abs(M - m)) / (2 * r),
});

const HEM_PULL = figureRule({
  ...EVEN_SPRING,
  id: "lift.pull",
  label: "Pull at the hem, at the worse end, with just enough friction to hold",
  symbol: "F",
  formula: "1000·abs(M − m) / r",
  compute: ({ m, M, r }) => (1000 * Math.abs(M - m)) / r,
});

const HAND_TURNS = figureRule({
  id: "lift.hand-turns",
  label: "Turns of the wand from lowered to raised",
  symbol: "n",
  unit: "count",
  formula: "N·i",
  inputs: {
    N: ["count", "turns of the tube", "figure:lift.turns"],
    i: ["ratio", "turns of the wand for one of the tube", "lift/drive"],
  },
  cite: cite("arithmetic"),
  compute: ({ N, i }) => N * i,
});

const PERIMETER = figureRule({
  id: "rig.loop-perimeter",
  label: "Loop: length all round",
  symbol: "o",
  unit: "mm",
  formula: "2·p + (π − 1)·D",
  inputs: {
    p: ["mm", "from the drive’s axis to the lowest point", "lift/loopDropMm", "figure:rig.loop"],
    D: ["mm", "wheel of the drive, and the tensioner’s the same", "lift/drive"],
  },
  cite: cite("geometry", "round two wheels alike"),
  note: "the tensioner’s own instructions say how a loop is joined",
  compute: ({ p, D }) => 2 * p + (Math.PI - 1) * D,
});

const LOOP_TRAVEL = figureRule({
  id: "rig.loop-travel",
  label: "Loop to pull from lowered to raised",
  symbol: "q",
  unit: "mm",
  formula: "N·i·π·D",
  inputs: {
    N: ["count", "turns of the tube", "figure:lift.turns"],
    i: ["ratio", "turns of the wheel for one of the tube", "lift/drive"],
    D: ["mm", "wheel of the drive", "lift/drive"],
  },
  cite: cite("geometry"),
  compute: ({ N, i, D }) => N * i * Math.PI * D,
});

const RAISE_TIME = figureRule({
  id: "lift.raise-time",
  label: "Time to raise it",
  symbol: "t",
  unit: "s",
  formula: "60·N / n",
  inputs: {
    N: ["count", "turns of the tube", "figure:lift.turns"],
    n: ["count", "turns a minute, as the motor’s maker states", "lift/drive"],
  },
  cite: cite("maker", "speed of the motor"),
  compute: ({ N, n }) => (60 * N) / n,
});

const WAND: Hanging = {
  id: "rig.wand",
  drop: "Wand below its drive",
  end: "Wand’s end",
  setting: "lift/wandMm",
};

const LOOP: Hanging = {
  id: "rig.loop",
  drop: "Loop, from the drive down to its lowest point",
  end: "Loop’s lowest point",
  setting: "lift/loopDropMm",
};

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
): Worked<TubeLift> {
  const coursed = <L extends TubeCourseParts>(lift: L, figures: readonly Figure[]) => {
    const { values: course, workings } = planTubeCourse(input, lift);
    return { values: { ...lift, course }, workings: [...figures, ...workings] };
  };
  switch (input.liftParts.kind) {
    case "spring": {
      const { values, workings } = springControl(input, turning, wound);
      return coursed({ ...parts, kind: "spring" as const, ...values }, workings);
    }
    case "tube-wand": {
      const { values, workings } = wandControl(input, turning, wound);
      return coursed({ ...parts, kind: "tube-wand" as const, ...values }, workings);
    }
    case "tube-loop": {
      const { values, workings } = loopControl(input, turning, wound);
      return coursed({ ...parts, kind: "tube-loop" as const, ...values }, workings);
    }
    case "motor": {
      const { values, workings } = motorControl(input, wound);
      return coursed({ ...parts, kind: "motor" as const, pullN: 0, ...values }, workings);
    }
  }
}

/**
 * A spring that pulls evenly is set half way between the two torques; friction holds what is left either way, and
 * a hand that moves the shade works against both.
 */
function springControl({ liftParts: { drive } }: TubeInput, turning: Torques, wound: Wound) {
  const given = { m: turning.loweredNm, M: turning.raisedNm, r: wound.loweredMm };
  const band = BAND.figure(given);
  const pull = HEM_PULL.figure(given);
  const lightest = drive.massMinKg === undefined ? {} : { massMinKg: drive.massMinKg };
  return { values: { bandN: band.value, pullN: pull.value, ...lightest }, workings: [band, pull] };
}

function wandControl(input: TubeInput, turning: Torques, { turns }: Wound) {
  const { drive } = input.liftParts;
  const crankMm = drive.crankMm ?? WAND_RADIUS.value;
  const drop = controlDrop(input, input.shade.making.lift.wandMm, WAND);
  const end = endAboveFloor(input, drop.values, WAND);
  const handTurns = HAND_TURNS.figure({ N: turns, i: drive.ratio });
  const pull = handPull(turning, drive, {
    label: "Push at the crank, where it is greatest",
    radiusMm: crankMm,
    radiusLabel: drive.crankMm === undefined ? "radius of a plain wand" : "radius of the crank",
  });
  return {
    values: {
      wandMm: drop.values,
      detachable: drive.detachable ?? false,
      crankMm,
      handTurns: handTurns.value,
      ...(end === undefined ? {} : { wandEndAboveFloorMm: end.value }),
      pullN: pull.value,
    },
    workings: [...drop.workings, ...(end === undefined ? [] : [end]), handTurns, pull],
  };
}

function loopControl(input: TubeInput, turning: Torques, { turns }: Wound) {
  const { shade, liftParts } = input;
  const { drive } = liftParts;
  const wheelMm = drive.wheelMm ?? WHEEL.value;
  const drop = controlDrop(input, shade.making.lift.loopDropMm, LOOP);
  const end = endAboveFloor(input, drop.values, LOOP);
  const perimeter = PERIMETER.figure({ p: drop.values, D: wheelMm });
  const travel = LOOP_TRAVEL.figure({ N: turns, i: drive.ratio, D: wheelMm });
  const pull = handPull(turning, drive, {
    label: "Pull on the loop, where it is greatest",
    radiusMm: wheelMm / 2,
    radiusLabel: "radius of the wheel",
  });
  return {
    values: {
      wheelMm,
      loopDropMm: drop.values,
      loopExitBelowTopMm: shade.board.thicknessMm + liftParts.axisMm,
      loopPerimeterMm: perimeter.value,
      loopTravelMm: travel.value,
      ...(end === undefined ? {} : { loopEndAboveFloorMm: end.value }),
      pullN: pull.value,
    },
    workings: [...drop.workings, ...(end === undefined ? [] : [end]), perimeter, travel, pull],
  };
}

/** Nothing is said of the time where the motor's speed is not known. */
function motorControl({ liftParts: { drive } }: TubeInput, { turns }: Wound) {
  const { power, turnsPerMin } = drive;
  const time = turnsPerMin === undefined ? undefined : RAISE_TIME.figure({ N: turns, n: turnsPerMin });
  return {
    values: {
      ...(power === undefined ? {} : { power }),
      ...(time === undefined ? {} : { raiseSeconds: time.value }),
    },
    workings: time === undefined ? [] : [time],
  };
}

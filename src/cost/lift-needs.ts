import type { CleatLift, CordLockLift, Grid, TubeLift } from "../shade-plan/index.ts";
import { lengthText } from "../units/index.ts";
import type { CostShade, NeedsInput } from "./cost-input.ts";
import { countedNeed, lengths } from "./make-need.ts";
import type { Need } from "./need.ts";
import { clothStepMm, clothUnit } from "./sold.ts";

/** Screws of one bearing of a tube: most have two holes. */
const SCREWS_A_SUPPORT = 2;

/** What takes the cords up: eyes, lock and cleat, or tube, spools and drive with what the hand works. */
export function liftNeeds({ shade, lift }: NeedsInput): Need[] {
  return [...usualNeeds(shade, lift), ...releaseNeeds(shade, lift), ...railNeeds(shade, lift)];
}

/** One for each rear cord that is to come apart at its bottom ring. */
function releaseNeeds({ making }: CostShade, { cords }: NeedsInput["lift"]): Need[] {
  return making.lift.rearRelease === "breakaway"
    ? [countedNeed("rear-release", "hardware", "Part that comes apart, for a rear cord", cords.length)]
    : [];
}

function usualNeeds(shade: CostShade, lift: NeedsInput["lift"]): Need[] {
  switch (lift.takeUp) {
    case "lock":
      return lockNeeds(shade, lift);
    case "cleat":
      return cleatNeeds(shade, lift);
    case "tube":
      return tubeNeeds(shade, lift);
  }
}

/** A top that is let down has eyes and a lock of its own. */
function railNeeds({ eye, locks }: CostShade, { topRail }: NeedsInput["lift"]): Need[] {
  if (topRail === undefined) return [];
  const lock = locks.find(({ id }) => id === topRail.lockId);
  return [
    countedNeed("rail-eyes", "hardware", `${eye.name}, for the top rail`, topRail.cords.length, eye),
    countedNeed("rail-lock", "hardware", `${topRail.lockName}, for the top rail`, 1, lock),
    countedNeed("rail-cleat", "hardware", "Cleat with two screws, for the top rail", 1),
  ];
}

function lockNeeds(shade: CostShade, lift: CordLockLift): Need[] {
  const lock = shade.locks.find((one) => one.id === lift.lockId);
  const { eye } = shade;
  const needs: Need[] = [
    countedNeed(`eye-${eye.id}`, "hardware", eye.name, lift.eyes.length, eye),
    countedNeed(`lock-${lift.lockId}`, "hardware", lift.lockName, 1, lock),
    countedNeed("lock-screws", "hardware", "Small wood screw for the lock", lift.seat.screwsMm.length),
    countedNeed("cleat", "hardware", "Cleat with two screws", 1),
  ];
  if (lift.cords.length > 1) needs.push(countedNeed("connector", "hardware", "Cord connector", 1));
  return needs;
}

/** Eyes, one of them the last where it has a place of its own; two screws and a cleat that is long enough. */
function cleatNeeds({ eye, turnEye }: CostShade, lift: CleatLift): Need[] {
  const own = lift.turn.column === undefined;
  const alike = turnEye.id === eye.id;
  const columns = lift.eyes.length - (own || alike ? 0 : 1);
  const eyes = countedNeed(`eye-${eye.id}`, "hardware", eye.name, columns + (own && alike ? 1 : 0), eye);
  const last = countedNeed(`eye-${turnEye.id}`, "hardware", `${turnEye.name}, the last eye`, 1, turnEye);
  return [
    ...(columns > 0 ? [eyes] : []),
    ...(alike ? [] : [last]),
    countedNeed("cleat", "hardware", "Cleat with two screws", 1),
    ...(lift.cords.length > 1 ? [countedNeed("connector", "hardware", "Cord connector", 1)] : []),
  ];
}

function tubeNeeds(shade: CostShade, lift: TubeLift): Need[] {
  const { tube } = shade;
  const drive = shade.drives.find((one) => one.id === lift.drive.id);
  const screws = lift.drive.screwsMm.length + SCREWS_A_SUPPORT * lift.supports.length;
  return [
    lengths("tube", "hardware", tube, [lift.tube.lengthMm]),
    countedNeed(`spool-${tube.id}`, "hardware", `Spool for ${tube.name}`, lift.spools.length, {
      price: tube.spoolPrice,
      demo: tube.demo,
    }),
    countedNeed(`support-${tube.id}`, "hardware", `Support for ${tube.name}`, lift.supports.length),
    countedNeed(`drive-${lift.drive.id}`, "hardware", lift.drive.name, 1, drive),
    countedNeed("lift-screws", "hardware", "Small wood screw for drive and supports", screws),
    ...controlNeeds(shade, lift),
  ];
}

/** Lengths stand in the id too, so that unlike loops and wands stay apart on a shopping list. */
function controlNeeds({ units }: CostShade, lift: TubeLift): Need[] {
  switch (lift.kind) {
    case "spring":
      return [];
    case "tube-wand": {
      const label = () => `Wand for ${lift.drive.name}, ${lengthText(lift.wandMm, units)} long`;
      return [countedNeed(`wand-${lift.drive.id}-${Math.round(lift.wandMm)}`, "hardware", label, 1)];
    }
    case "tube-loop": {
      const label = () => `Loop for ${lift.drive.name}, ${lengthText(lift.loopPerimeterMm, units)} all round`;
      const id = `loop-${lift.drive.id}-${Math.round(lift.loopPerimeterMm)}`;
      return [
        countedNeed(id, "hardware", label, 1),
        countedNeed("loop-tensioner", "hardware", "Tensioner for the loop, with its screws", 1),
        ...(lift.breakaway
          ? [countedNeed("loop-breakaway", "hardware", "Connector that comes apart, for the loop", 1)]
          : []),
      ];
    }
    case "motor": {
      const what = lift.power === "mains" ? "Switch or remote control" : "Battery or power supply";
      const id = lift.power === "mains" ? "motor-switch" : "motor-power";
      return [countedNeed(id, "hardware", `${what} as the motor’s maker asks`, 1)];
    }
  }
}

/** Woven sleeve and what grips it at each ring; a sewn sleeve is cloth. */
export function rearCordNeeds({
  shade,
  grid,
  lift,
}: {
  shade: CostShade;
  grid: Grid;
  lift: NeedsInput["lift"];
}): Need[] {
  const { wovenSleeves } = lift;
  if (wovenSleeves === undefined) return [];
  const rings = grid.rows.length * grid.columns.length;
  return [
    {
      sort: "running",
      id: "woven-sleeve",
      group: "cord",
      label: "Woven sleeve for lift cord",
      stockId: "woven-sleeve",
      cutsMm: Array.from({ length: wovenSleeves.count }, () => wovenSleeves.cutMm),
      stepMm: clothStepMm(shade.units),
      unit: clothUnit(shade.units),
    },
    countedNeed("sleeve-grip", "hardware", "Grip that holds the sleeve in a ring", rings),
  ];
}

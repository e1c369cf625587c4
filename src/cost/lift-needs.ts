import type { CordLockLift, Grid, TubeLift } from "../shade-plan/index.ts";
import { lengthText } from "../units/index.ts";
import type { CostShade, NeedsInput } from "./cost-input.ts";
import { counted, lengths } from "./make-need.ts";
import type { Need } from "./need.ts";
import { clothStepMm, clothUnit } from "./sold.ts";

/** Screws of one bearing of a tube: most have two holes. */
const SCREWS_A_SUPPORT = 2;

/** What takes the cords up: eyes, lock and cleat, or tube, spools and drive with what the hand works. */
export function liftNeeds({ shade, lift }: NeedsInput): Need[] {
  const usual = lift.takeUp === "lock" ? lockNeeds(shade, lift) : tubeNeeds(shade, lift);
  return [...usual, ...railNeeds(shade, lift)];
}

/** A top that is let down has eyes and a lock of its own. */
function railNeeds({ eye, locks }: CostShade, { topRail }: NeedsInput["lift"]): Need[] {
  if (topRail === undefined) return [];
  const lock = locks.find(({ cordsMax }) => cordsMax >= topRail.cords.length);
  return [
    counted("rail-eyes", "hardware", `${eye.name}, for the top rail`, topRail.cords.length, eye),
    counted("rail-lock", "hardware", `${lock?.name ?? "Cord lock"}, for the top rail`, 1, lock),
    counted("rail-cleat", "hardware", "Cleat with two screws, for the top rail", 1),
  ];
}

function lockNeeds(shade: CostShade, lift: CordLockLift): Need[] {
  const lock = shade.locks.find((one) => one.id === lift.lockId);
  const { eye } = shade;
  const needs: Need[] = [
    counted(`eye-${eye.id}`, "hardware", eye.name, lift.eyes.length, eye),
    counted(`lock-${lift.lockId}`, "hardware", lift.lockName, 1, lock),
    counted("lock-screws", "hardware", "Small wood screw for the lock", lift.seat.screwsMm.length),
    counted("cleat", "hardware", "Cleat with two screws", 1),
  ];
  if (lift.cords.length > 1) needs.push(counted("connector", "hardware", "Cord connector", 1));
  return needs;
}

function tubeNeeds(shade: CostShade, lift: TubeLift): Need[] {
  const { tube } = shade;
  const drive = shade.drives.find((one) => one.id === lift.drive.id);
  const screws = lift.drive.screwsMm.length + SCREWS_A_SUPPORT * lift.supports.length;
  return [
    lengths("tube", "hardware", tube, [lift.tube.lengthMm]),
    counted(`spool-${tube.id}`, "hardware", `Spool for ${tube.name}`, lift.spools.length, {
      price: tube.spoolPrice,
      demo: tube.demo,
    }),
    counted(`support-${tube.id}`, "hardware", `Support for ${tube.name}`, lift.supports.length),
    counted(`drive-${lift.drive.id}`, "hardware", lift.drive.name, 1, drive),
    counted("lift-screws", "hardware", "Small wood screw for drive and supports", screws),
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
      return [counted(`wand-${lift.drive.id}-${Math.round(lift.wandMm)}`, "hardware", label, 1)];
    }
    case "tube-loop": {
      const label = () => `Loop for ${lift.drive.name}, ${lengthText(lift.loopPerimeterMm, units)} all round`;
      const id = `loop-${lift.drive.id}-${Math.round(lift.loopPerimeterMm)}`;
      return [
        counted(id, "hardware", label, 1),
        counted("loop-tensioner", "hardware", "Tensioner for the loop, with its screws", 1),
        ...(lift.breakaway
          ? [counted("loop-breakaway", "hardware", "Connector that comes apart, for the loop", 1)]
          : []),
      ];
    }
    case "motor": {
      const what = lift.power === "mains" ? "Switch or remote control" : "Battery or power supply";
      const id = lift.power === "mains" ? "motor-switch" : "motor-power";
      return [counted(id, "hardware", `${what} as the motor’s maker asks`, 1)];
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
    counted("sleeve-grip", "hardware", "Grip that holds the sleeve in a ring", rings),
  ];
}

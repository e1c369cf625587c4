import { ringCount } from "../shade-plan/index.ts";
import { fineText, lengthText, type UnitChoice } from "../units/index.ts";
import { slugOf } from "../words/index.ts";
import type { NeedsInput } from "./cost-input.ts";
import { onlyTaken } from "./existing-needs.ts";
import { haberdasheryNeeds } from "./haberdashery-needs.ts";
import { liftNeeds, rearCordNeeds } from "./lift-needs.ts";
import { countedNeed, lengths } from "./make-need.ts";
import type { Need } from "./need.ts";
import { clothStepMm, clothUnit, cordStepMm, cutUnit } from "./sold.ts";
import { SUNDRIES } from "./sundries.ts";

/** Cord, rings, what takes the cords up, bar, ribs, board and its fixings; of a shade that hangs already what is new. */
export function hardwareNeeds(input: NeedsInput): readonly Need[] {
  return onlyTaken(allHardware(input), input);
}

function allHardware(input: NeedsInput): Need[] {
  return [
    cordNeed(input),
    ringsNeed(input),
    ...rearCordNeeds(input),
    ...liftNeeds(input),
    ...barNeeds(input),
    ...boardNeeds(input),
    ...haberdasheryNeeds(input),
  ];
}

/** By the length where a price per metre is known, else by the spool, each cord in one piece. */
function cordNeed({ shade, lift }: NeedsInput): Need {
  const { cord, units } = shade;
  const common = {
    id: `cord-${cord.id}`,
    group: "cord",
    label: cord.name,
    demo: cord.demo,
    stockId: cord.id,
    cutsMm: [...lift.cords, ...(lift.topRail?.cords ?? [])].map((run) => run.cutMm),
  } as const;
  if (cord.pricePerM === undefined && cord.spoolMm !== undefined) {
    const noun = "spool";
    return { ...common, sort: "lengths", price: cord.price, stockMm: cord.spoolMm, kerfMm: 0, noun };
  }
  return {
    ...common,
    sort: "running",
    price: cord.pricePerM,
    stepMm: cordStepMm(units),
    unit: cutUnit(units),
  };
}

function ringsNeed({ shade, grid, form }: NeedsInput): Need {
  const { ring } = shade;
  return countedNeed(`ring-${ring.id}`, "hardware", ring.name, ringCount(grid, form), ring);
}

function barNeeds({ shade, cloth, board }: NeedsInput): Need[] {
  const needs: Need[] = [];
  if (board.barLengthMm !== undefined) needs.push(lengths("bar", "hardware", shade.bar, [board.barLengthMm]));
  const ribMm = cloth.ribLengthMm;
  if (ribMm !== undefined && cloth.ribLines.length > 0) {
    needs.push(
      lengths(
        "rib",
        "hardware",
        shade.rib,
        cloth.ribLines.map(() => ribMm),
      ),
    );
  }
  return needs;
}

function boardNeeds({ shade, board }: NeedsInput): Need[] {
  const { units } = shade;
  const needs: Need[] = [lengths("board", "board", shade.board, [board.cutMm])];
  if (board.fixing === "brackets") {
    const label = () => `Bracket for a board ${lengthText(board.depthMm, units)} deep`;
    needs.push(countedNeed(`brackets-${Math.round(board.depthMm)}`, "board", label, board.brackets.length));
  }
  const { count, lengthMm, into } = board.screws;
  const screw = () => `Screw, ${screwLengthText(lengthMm, units)}, into ${into}`;
  needs.push(countedNeed(`screws-${slugOf(`${Math.round(lengthMm)}-${into}`)}`, "board", screw, count));
  return needs.concat(attachmentNeeds(shade.making.board.attachment, board.lengthMm, units));
}

function screwLengthText(lengthMm: number, units: UnitChoice): string {
  return units.system === "imperial" ? lengthText(lengthMm, units) : fineText(lengthMm);
}

/** The cover is stapled in either case; hook-and-loop takes the place of the shade's row of staples. */
function attachmentNeeds(attachment: "staple" | "hook-and-loop", boardMm: number, units: UnitChoice): Need[] {
  const { stapleSpacingMm, stapleRows, staplesPerBox } = SUNDRIES;
  const perRow = Math.ceil(boardMm / stapleSpacingMm.value) + 1;
  const rows = attachment === "staple" ? stapleRows.value : stapleRows.value - 1;
  const needs: Need[] = [
    countedNeed("staples", "sundries", "Staples", perRow * rows, {
      packOf: staplesPerBox.value,
      packNoun: "box",
    }),
  ];
  if (attachment === "hook-and-loop") {
    needs.push({
      sort: "running",
      id: "hook-and-loop",
      group: "sundries",
      label: "Hook-and-loop tape, both halves",
      stockId: "hook-and-loop",
      cutsMm: [boardMm],
      stepMm: clothStepMm(units),
      unit: clothUnit(units),
    });
  }
  return needs;
}

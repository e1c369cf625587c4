import type { Bar, Board } from "../job/index.ts";
import { fineText, lengthText, type UnitChoice } from "../units/index.ts";
import type { CostInput } from "./cost-input.ts";
import type { CountedNeed, LengthsNeed, Need } from "./need.ts";
import { clothStepMm, clothUnit, cordStepMm, cordUnit } from "./sold.ts";
import { SUNDRIES } from "./sundries.ts";

/** Cord, rings, eyes, lock, bar, ribs, board and its fixings. */
export function hardwareNeeds(input: CostInput): Need[] {
  const { brief, lift } = input;
  const needs: Need[] = [cordNeed(input), ringsNeed(input)];
  const { eye } = brief;
  needs.push(
    counted(`eye-${eye.id}`, "hardware", eye.name, lift.eyes.length, {
      ...eye,
      packOf: eye.packOf,
    }),
  );
  needs.push(...lockNeeds(input), ...barNeeds(input), ...boardNeeds(input));
  return needs;
}

interface Sold {
  price?: number;
  packOf?: number;
  packNoun?: string;
  demo?: boolean;
}

function counted(
  id: string,
  group: CountedNeed["group"],
  label: string,
  pieces: number,
  { price, packOf, packNoun = "pack", demo }: Sold = {},
): CountedNeed {
  return {
    sort: "counted",
    id,
    group,
    label,
    pieces,
    packOf: packOf ?? 1,
    ...(packOf === undefined ? {} : { packNoun }),
    price,
    demo,
  };
}

function lengths(
  kind: string,
  group: LengthsNeed["group"],
  part: Bar | Board,
  cutsMm: number[],
): LengthsNeed {
  return {
    sort: "lengths",
    id: `${kind}-${part.id}`,
    group,
    label: part.name,
    price: part.price,
    demo: part.demo,
    stockId: part.id,
    cutsMm,
    stockMm: part.stockMm,
    kerfMm: SUNDRIES.sawKerfMm.value,
    noun: "length",
  };
}

/** By the length where a price per metre is known, else by the spool, each cord in one piece. */
function cordNeed({ brief, lift }: CostInput): Need {
  const { cord, units } = brief;
  const common = {
    id: `cord-${cord.id}`,
    group: "cord",
    label: cord.name,
    demo: cord.demo,
    stockId: cord.id,
    cutsMm: lift.cords.map((run) => run.cutMm),
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
    unit: cordUnit(units),
  };
}

function ringsNeed({ brief, grid }: CostInput): Need {
  const { ring } = brief;
  return counted(`ring-${ring.id}`, "hardware", ring.name, grid.rows.length * grid.columns.length, ring);
}

function lockNeeds({ brief, lift }: CostInput): Need[] {
  const lock = brief.locks.find((one) => one.id === lift.lockId);
  const needs: Need[] = [
    counted(`lock-${lift.lockId}`, "hardware", lift.lockName, 1, lock),
    counted("lock-screws", "hardware", "Small wood screw for the lock", lift.seat.screwsMm.length),
    counted("cleat", "hardware", "Cleat with two screws", 1),
  ];
  if (lift.cords.length > 1) needs.push(counted("connector", "hardware", "Cord connector", 1));
  return needs;
}

function barNeeds({ brief, cloth, board }: CostInput): Need[] {
  const needs: Need[] = [];
  if (board.barLengthMm !== undefined) needs.push(lengths("bar", "hardware", brief.bar, [board.barLengthMm]));
  const ribMm = cloth.ribLengthMm;
  if (ribMm !== undefined && cloth.ribLines.length > 0) {
    needs.push(
      lengths(
        "rib",
        "hardware",
        brief.rib,
        cloth.ribLines.map(() => ribMm),
      ),
    );
  }
  return needs;
}

function boardNeeds({ brief, board }: CostInput): Need[] {
  const { units } = brief;
  const needs: Need[] = [lengths("board", "board", brief.board, [board.lengthMm])];
  if (board.fixing === "brackets") {
    const label = `Bracket for a board ${lengthText(board.depthMm, units)} deep`;
    needs.push(counted(`brackets-${Math.round(board.depthMm)}`, "board", label, board.brackets.length));
  }
  const { count, lengthMm, into } = board.screws;
  const screw = `Screw, ${screwLengthText(lengthMm, units)}, into ${into}`;
  needs.push(counted(`screws-${slug(`${Math.round(lengthMm)}-${into}`)}`, "board", screw, count));
  return needs.concat(attachmentNeeds(brief.making.board.attachment, board.lengthMm, units));
}

function screwLengthText(lengthMm: number, units: UnitChoice): string {
  return units.system === "imperial" ? lengthText(lengthMm, units) : fineText(lengthMm);
}

function slug(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
}

/** The cover is stapled in either case; hook-and-loop takes the place of the shade's row of staples. */
function attachmentNeeds(attachment: "staple" | "hook-and-loop", boardMm: number, units: UnitChoice): Need[] {
  const { stapleSpacingMm, stapleRows, staplesPerBox } = SUNDRIES;
  const perRow = Math.ceil(boardMm / stapleSpacingMm.value) + 1;
  const rows = attachment === "staple" ? stapleRows.value : stapleRows.value - 1;
  const needs: Need[] = [
    counted("staples", "sundries", "Staples", perRow * rows, {
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

import * as z from "zod";
import { allowanceMm, cordMm, count, id, lengthMm, sizeMm, spacingMm } from "./primitives.ts";

/**
 * How shades are made: every field has a default with its source (`defaults.ts`).
 * A job holds only what the maker chose; `workshop` sets habits for all shades, a shade overrides them.
 */

export const FOLD_RULES = ["half-fold", "no-headrail", "even-fold"] as const;

const mount = z
  .strictObject({
    insideWidthOffMm: allowanceMm.meta({
      description: "Inside mount: taken off the narrowest width, both sides together, mm",
    }),
    insideLengthOffMm: allowanceMm.meta({
      description: "Inside mount: taken off the shortest height, at the sill, mm",
    }),
    overlapSideMm: allowanceMm.meta({ description: "Outside mount: beyond the opening at each side, mm" }),
    overlapAboveMm: allowanceMm.meta({ description: "Outside mount: above the opening, mm" }),
    overlapBelowMm: allowanceMm.meta({ description: "Outside mount: below the opening, mm" }),
    floorClearanceMm: allowanceMm.meta({ description: "Least gap between hem and floor, mm" }),
    boardShorterMm: allowanceMm.meta({
      description: "Board shorter than the finished width, both ends together, mm",
    }),
    handClearanceMm: allowanceMm.meta({ description: "Gap kept to handles and other obstructions, mm" }),
  })
  .partial();

const fold = z
  .strictObject({
    rule: z.enum(FOLD_RULES).meta({ description: "Published rule that places the rows" }),
    gradeStepMm: lengthMm.meta({
      description: "Graduated: each spacing smaller than the one below by this, mm; 0 is even",
    }),
    headrailMm: lengthMm.meta({
      description: "Headrail allowance: flat cloth kept above the gathered stack, mm",
    }),
    skirtMm: lengthMm.meta({ description: "Hem band that shows below the raised stack, mm" }),
    largestSpacingMm: spacingMm.meta({ description: "Largest spacing of ring rows, mm" }),
    smallestSpacingMm: spacingMm.meta({ description: "Smallest spacing of ring rows, mm" }),
    rows: count.min(1).max(200).meta({ description: "Fixed number of ring rows" }),
    spacingMm: spacingMm.meta({ description: "Fixed spacing of ring rows, mm" }),
    stackMm: sizeMm.meta({ description: "Highest allowed raised stack, mm" }),
    hemBarMm: lengthMm.meta({ description: "Even-fold rule: height of the hem bar section, mm" }),
    ringStackMm: lengthMm.meta({ description: "Even-fold rule: height that the gathered rings take, mm" }),
  })
  .partial();

const columns = z
  .strictObject({
    largestSpacingMm: spacingMm.meta({ description: "Largest spacing of ring columns, mm" }),
    edgeInsetMm: sizeMm.meta({ description: "Edge column in from the finished edge, mm" }),
    count: count.min(2).max(60).meta({ description: "Fixed number of ring columns" }),
  })
  .partial();

const hems = z
  .strictObject({
    sideTurnMm: lengthMm.meta({ description: "Width of one turn of the side hem, mm" }),
    sideTurns: z.literal([1, 2]).meta({ description: "Turns of the side hem: 1 single, 2 double" }),
    bottomTurnMm: lengthMm.meta({ description: "Depth of one turn of the bottom hem, mm" }),
    bottomTurns: z.literal([1, 2]).meta({ description: "Turns of the bottom hem" }),
    boardAllowanceMm: lengthMm.meta({ description: "Cloth beyond the top line, for the board, mm" }),
    seamMm: lengthMm.meta({ description: "Seam allowance on each piece at a join, mm" }),
  })
  .partial();

const lining = z
  .strictObject({
    widthOverFinishedMm: lengthMm.meta({
      description: "Lining cut wider than the finished width, both sides together, mm",
    }),
    lengthOverFinishedMm: lengthMm.meta({
      description: "Lining cut longer than the finished length, before pockets, mm",
    }),
  })
  .partial();

const ribs = z
  .strictObject({
    kind: z
      .enum(["none", "lining-pocket", "through-pocket", "strip-pocket"])
      .meta({ description: "Ribs and what their pockets are made of" }),
    pocketMm: lengthMm.meta({ description: "Depth of a rib pocket, mm" }),
    rib: id,
    shorterMm: lengthMm.meta({ description: "Rib shorter than the finished width, mm" }),
  })
  .partial();

export const HALF_DROP_RULES = ["whole-repeat-per-order", "half-repeat-if-needed"] as const;
export type HalfDropRule = (typeof HALF_DROP_RULES)[number];
const pattern = z
  .strictObject({
    halfDropRule: z.enum(HALF_DROP_RULES).meta({ description: "How much more a half drop asks for" }),
    placementRepeat: z.boolean().meta({ description: "Buy one repeat more to place the motif" }),
  })
  .partial();

export const SEATS = ["auto", "between", "outside"] as const;
export const CONTROL_SIDES = ["left", "right"] as const;
/** How a shade is raised: cords over a lock, or cords on spools that a spring, a wand, a loop or a motor turns. */
export const LIFT_KINDS = ["cord-lock", "spring", "tube-wand", "tube-loop", "motor"] as const;
export type LiftKind = (typeof LIFT_KINDS)[number];
/** How the cords run up the back: bare through rings, in a woven sleeve that the rings grip, or in a sewn sleeve. */
export const REAR_GUIDES = ["open", "ring-locked", "enclosed"] as const;
/** How the lift cords run up the back: through open rings, in a woven sleeve that every ring grips, or in a sewn sleeve. */
export type RearGuide = (typeof REAR_GUIDES)[number];
const lift = z
  .strictObject({
    kind: z.enum(LIFT_KINDS).meta({ description: "How the shade is raised" }),
    rearCords: z.enum(REAR_GUIDES).meta({
      description:
        "Cords up the back: open through rings; ring-locked, in a woven sleeve that every ring grips; enclosed, in a sleeve sewn along each column",
    }),
    controlSide: z
      .enum(CONTROL_SIDES)
      .meta({ description: "Side on which the shade is worked, seen from the room" }),
    lock: id,
    cord: id,
    eye: id,
    ring: id,
    seat: z
      .enum(SEATS)
      .meta({ description: "Lock between the last two eyes, outside the last, or wherever it pulls least" }),
    seatMm: lengthMm.meta({
      description: "Lock's centre fixed at this distance from the left finished edge, mm",
    }),
    straightRunMm: lengthMm.meta({
      description: "Least straight run of cord between an eye and the lock, mm",
    }),
    tailMm: cordMm.meta({ description: "Cord below the lock with the shade lowered, mm" }),
    knotsMm: cordMm.meta({ description: "Cord for knots and threading, each, mm" }),
    cleatAboveFloorMm: lengthMm.meta({ description: "Height of the cleat above the floor, mm" }),
    tube: id.meta({ description: "Lift tube with its spools, by id" }),
    drive: id.meta({ description: "Spring, wand, loop or motor that turns the tube, by id" }),
    loopDropMm: cordMm.meta({ description: "Loop: from the drive down to its tensioner, mm" }),
    wandMm: cordMm.meta({ description: "Wand: its length below the drive, mm" }),
  })
  .partial();

export const ATTACHMENTS = ["staple", "hook-and-loop"] as const;
export const SUBSTRATES = ["timber", "masonry", "hollow-wall", "unknown"] as const;
const board = z
  .strictObject({
    section: id,
    bar: id,
    barShorterMm: lengthMm.meta({ description: "Weight bar shorter than the finished width, mm" }),
    attachment: z.enum(ATTACHMENTS),
    substrate: z.enum(SUBSTRATES).meta({ description: "What the brackets are screwed to" }),
    bracketEndMm: lengthMm.meta({ description: "First bracket at most this far from the board's end, mm" }),
    bracketSpacingMm: spacingMm.meta({ description: "Largest distance between brackets, mm" }),
  })
  .partial();

export const makingSchema = z
  .strictObject({ mount, fold, columns, hems, lining, ribs, pattern, lift, board })
  .partial()
  .meta({ description: "How shades are made; only what the maker chose" });

export type Making = z.output<typeof makingSchema>;

import { type LiftKind, type Making, type MakingGroup, makingSchema, WOOD_NAMES } from "../../job/index.ts";
import { choice, count, type FieldSpec, fine, length, number, part, size } from "../inputs/spec.ts";
import { PLEAT_FIELDS, POUF_FIELDS, RELAX_FIELDS } from "./drape-fields.ts";
import { HOBBLE_FIELDS, TUCK_FIELDS } from "./fold-style-fields.ts";
import { GATHER_FIELDS } from "./gather-fields.ts";
import { withLimits } from "./limits.ts";

type Groups = { [G in keyof Making]-?: NonNullable<Making[G]> };
type Table = { [G in MakingGroup]: { [K in keyof Groups[G]]-?: FieldSpec } };

const INNER = { "finished-size": "cut to the finished size", "as-lining": "cut like the lining" };
const RAILROAD = { auto: "where it saves a join", never: "never", always: "always" };
const TURNS = { "1": "single", "2": "double" };

/**
 * Every making setting in the maker's words. The type asks for each setting of the schema,
 * so that a new one cannot be left out of the planner.
 */
const WORDS = {
  mount: {
    insideWidthOffMm: length("Taken off the width", "inside mount, both sides together"),
    insideLengthOffMm: length("Taken off the length", "inside mount, at the sill"),
    overlapSideMm: length("Overlap at each side", "outside mount"),
    overlapAboveMm: length("Overlap above", "outside mount"),
    overlapBelowMm: length("Overlap below", "outside mount"),
    floorClearanceMm: length("Least gap above the floor"),
    boardShorterMm: length("Board shorter than the shade", "both ends together"),
    neighbourGapMm: length("Gap to a neighbour", "shade or wall beside it"),
    foldRoomMm: length("Folds stand out", "before the board, where two shades meet in a corner"),
    handClearanceMm: length("Gap kept to handles"),
  },
  fold: {
    rule: choice("Rule for the rows", {
      "half-fold": "Half folds, odd in number",
      "no-headrail": "Half section at the hem, nothing kept at the head",
      "even-fold": "Even folds from a stack height",
    }),
    rows: { ...count("Rows of rings", 1, 500), hint: "fixed number" },
    spacingMm: size("Rows apart", "fixed spacing"),
    largestSpacingMm: size("Rows at most apart"),
    smallestSpacingMm: size("Rows at least apart"),
    topDropMm: length("Top comes down by", "on a rail of its own; 0 hangs from the board"),
    cascadeMm: length("Each fold shows below the next", "cascade, raised; 0 for level folds"),
    gradeStepMm: length("Each fold smaller by", "going up; 0 for even folds"),
    headrailMm: length("Headrail allowance", "flat cloth above the gathered stack"),
    skirtMm: length("Skirt", "hem band that shows below the raised stack"),
    stackMm: size("Stack at most", "raised height"),
    hemBarMm: length("Hem bar section", "even-fold rule"),
    ringStackMm: length("Gathered rings", "height they take; even-fold rule"),
  },
  columns: {
    count: count("Columns of rings", 2, 500, "fixed number"),
    largestSpacingMm: size("Columns at most apart"),
    edgeInsetMm: size("Edge columns in from the edge"),
  },
  hems: {
    sideTurnMm: length("Side hem, one turn"),
    sideTurns: { ...choice("Side hem turned", TURNS), numeric: true },
    bottomTurnMm: length("Bottom hem, one turn"),
    bottomTurns: { ...choice("Bottom hem turned", TURNS), numeric: true },
    boardAllowanceMm: length("Cloth for the board", "beyond the top line"),
    seamMm: length("Seam allowance", "on each piece at a join"),
    makeUp: choice("Put together", {
      "turned-hems": "hems turned over the lining",
      "bagged-out": "bagged out, sewn round and turned",
    }),
    corner: choice("Bottom corners", { square: "square", mitred: "mitred" }),
    joins: choice("Joins of widths", {
      auto: "under columns where no more cloth is needed",
      "equal-parts": "equal parts at the sides",
      "under-columns": "under columns or pleats",
    }),
  },
  lining: {
    widthOverFinishedMm: length("Lining wider than the shade", "both sides together"),
    lengthOverFinishedMm: length("Lining longer than the shade", "before pockets"),
    squaringMm: length("Lining longer to square it up"),
    interliningCut: choice("Interlining", INNER),
    blackoutCut: choice("Blackout", INNER),
    innerNarrowerMm: length("Interlining and blackout narrower", "where cut to the finished size"),
    innerLongerMm: length("Interlining and blackout longer", "where cut to the finished size"),
    railroad: choice("Lining and layers sideways on the bolt", RAILROAD),
    bonded: {
      kind: "flag" as const,
      label: "Layers bonded",
      yes: "glued or fused all over",
      no: "loose on one another",
    },
    bondedBendingMm: fine("Bonded layers: bending length", 3, 200, "of a strip of all layers"),
  },
  ribs: {
    kind: choice("Ribs", {
      none: "none",
      "lining-pocket": "in pockets of the lining",
      "through-pocket": "in pockets through all layers",
      "face-pocket": "in pockets of the face",
      "strip-pocket": "in strips sewn on",
      bare: "sewn on without pockets",
    }),
    face: choice("Ribs lie at the", { back: "back", front: "front" }),
    at: choice("A rib at", { rows: "every row of rings", "half-folds": "every half fold" }),
    rib: part("Rib", "ribs"),
    pocketMm: length("Depth of a pocket"),
    shorterMm: length("Rib shorter than the shade"),
  },
  hobble: HOBBLE_FIELDS,
  tuck: TUCK_FIELDS,
  gather: GATHER_FIELDS,
  relax: RELAX_FIELDS,
  pleat: PLEAT_FIELDS,
  pouf: POUF_FIELDS,
  pattern: {
    halfDropRule: choice("Half drop asks for", {
      "whole-repeat-per-order": "one whole repeat more for the order",
      "half-repeat-if-needed": "half a repeat more, where needed",
    }),
    placementRepeat: {
      kind: "flag",
      label: "One repeat more to place the motif",
      yes: "bought",
      no: "not bought",
    },
    place: choice("Motif along the length", {
      hem: "stands on the hem",
      centre: "centred",
      top: "begins at the top line",
      free: "begins as fixed",
    }),
    offsetMm: length("Repeat begins", "below the top line, where fixed"),
    across: choice("Motif across", {
      "centre-motif": "a motif in the middle",
      "between-motifs": "the gap in the middle",
      offset: "begins as fixed",
    }),
    acrossMm: length("Repeat begins across", "from the left edge, where fixed"),
    railroad: choice("Face sideways on the bolt", RAILROAD),
    pile: choice("Pile strokes", { down: "down", up: "up" }, "of velvet and the like"),
  },
  banding: {
    where: choice("Banding", {
      none: "none",
      sides: "along the sides",
      bottom: "along the bottom",
      "sides-and-bottom": "sides and bottom",
      "all-round": "all round",
    }),
    widthMm: size("Banding shows"),
    insetMm: length("Banding in from the edge", "0 turns it round the edge"),
    turnMm: length("Banding turned under"),
    corners: choice("Corners of the banding", { mitred: "mitred", butted: "butted" }),
    bottomBandMm: length("Bottom band", "joined to the lower edge; 0 is none"),
  },
  lift: {
    kind: choice("Raised by", {
      "cord-lock": "cords over a cord lock",
      cleat: "cords to a cleat, without a lock",
      spring: "a spring, by hand at the hem",
      "tube-wand": "a lift tube and a wand",
      "tube-loop": "a lift tube and a loop on a tensioner",
      motor: "a lift tube and a motor",
    } satisfies Record<LiftKind, string>),
    rearCords: choice("Cords up the back", {
      open: "bare, through the rings",
      "ring-locked": "in a woven sleeve that the rings grip",
      enclosed: "in a sleeve sewn along each column",
    }),
    rearRelease: choice("Rear cords let go", {
      none: "never",
      breakaway: "by a part at each bottom ring that comes apart",
    }),
    controlSide: choice("Control side", { left: "left", right: "right" }, "seen from the room"),
    lock: part("Cord lock", "locks"),
    cord: part("Cord", "cords"),
    eye: part("Screw eye", "eyes"),
    turnEye: part("Last eye or pulley", "eyes"),
    ring: part("Ring", "rings"),
    seat: choice("Lock sits", {
      auto: "as near to the edge as it can be",
      between: "between the last two eyes",
      outside: "outside the last eye",
    }),
    seatMm: length("Lock’s centre fixed at", "from the left finished edge, seen from the room"),
    straightRunMm: length("Straight run before the lock", "at least"),
    tailMm: length("Cord below lock or last eye", "shade lowered"),
    knotsMm: length("For knots and threading", "each cord"),
    cleatAboveFloorMm: length("Cleat above the floor"),
    tube: part("Lift tube", "tubes"),
    drive: part("Drive of the tube", "drives"),
    loopDropMm: length("Loop, drive to tensioner"),
    loopJoint: choice("Loop joined", {
      closed: "for good",
      breakaway: "by a connector that comes apart under a pull",
    }),
    wandMm: length("Wand below its drive"),
    leadLooseMm: length("Motor’s lead hangs free", "longest stretch between two clips, its charger’s too"),
    leadLowMm: length("Motor’s lead, lowest point", "of that stretch, above the floor"),
  },
  board: {
    section: part("Board", "boards"),
    bar: part("Weight bar", "bars"),
    barShorterMm: length("Bar shorter than the shade"),
    attachment: choice("Shade held to the board by", {
      staple: "staples",
      "hook-and-loop": "hook-and-loop tape",
    }),
    substrate: choice("Screwed into", {
      unknown: "not known yet",
      timber: "timber",
      masonry: "masonry",
      "hollow-wall": "a hollow wall",
    }),
    wood: choice("Wood of the board", WOOD_NAMES),
    wallWood: choice("Wood behind the wall", WOOD_NAMES, "where it is screwed into timber"),
    screwGauge: choice("Wall screws", { "6": "No. 6", "8": "No. 8", "10": "No. 10", "12": "No. 12" }),
    bracketLegMm: size("Bracket’s leg down the wall"),
    fixingRatedN: number("One plug or anchor holds", 1, 100_000, "N", "as its maker states"),
    bracketEndMm: length("First bracket from the end", "at most"),
    bracketSpacingMm: size("Brackets apart", "at most"),
    coverFrom: choice("Board covered with", { lining: "lining", face: "face cloth" }),
    returns: choice(
      "Ends of the board",
      {
        none: "left open",
        pieces: "covered by pieces of their own",
        wrapped: "covered by the face wrapped round",
      },
      "outside mount",
    ),
    returnDropMm: length("Returns hang down"),
    dustStripMm: length("Dust strip", "depth; 0 is none"),
  },
} satisfies Table;

/** Every making setting with its words and its limits. */
export const MAKING_FIELDS = Object.fromEntries(
  Object.entries(makingSchema.shape).map(([group, fields]) => [
    group,
    withLimits(fields.unwrap(), WORDS[group as MakingGroup]),
  ]),
) as typeof WORDS;

export const MAKING_GROUP_NAMES: Record<MakingGroup, string> = {
  mount: "Deductions and overlaps",
  fold: "Rows and folds",
  columns: "Columns",
  hems: "Hems and allowances",
  lining: "Lining",
  ribs: "Ribs",
  hobble: "Soft folds",
  tuck: "Tucks",
  gather: "Gathers and scallops",
  relax: "Dip of the lower edge",
  pleat: "Pleats",
  pouf: "Pouf that stays",
  pattern: "Pattern",
  banding: "Banding",
  lift: "Lift",
  board: "Board and bar",
};

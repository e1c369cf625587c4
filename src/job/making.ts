import * as z from "zod";
import { SCREW_SHANK_MM, WOOD_SPECIES } from "../mechanics/index.ts";
import {
  allowanceMm,
  bendingMm,
  cordMm,
  countSchema,
  id,
  lengthMm,
  share,
  sizeMm,
  spacingMm,
} from "./primitives.ts";

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
    neighbourGapMm: allowanceMm.meta({ description: "Gap kept to a shade or wall beside it, mm" }),
    foldRoomMm: allowanceMm.meta({
      description: "How far folds stand out before the board, for corners with another shade, mm",
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
    topDropMm: lengthMm.meta({
      description: "Top that can be let down: how far, mm; 0 hangs from the board",
    }),
    cascadeMm: lengthMm.meta({
      description: "Cascade: raised, each fold shows this much below the one in front of it, mm; 0 is level",
    }),
    skirtMm: lengthMm.meta({ description: "Hem band that shows below the raised stack, mm" }),
    largestSpacingMm: spacingMm.meta({ description: "Largest spacing of ring rows, mm" }),
    smallestSpacingMm: spacingMm.meta({ description: "Smallest spacing of ring rows, mm" }),
    rows: countSchema.min(1).max(200).meta({ description: "Fixed number of ring rows" }),
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
    count: countSchema.min(2).max(60).meta({ description: "Fixed number of ring columns" }),
  })
  .partial();

/** How the layers are put together: hems turned over the lining, or sewn right sides together and turned out. */
export const MAKE_UPS = ["turned-hems", "bagged-out"] as const;
export const HEM_CORNERS = ["square", "mitred"] as const;
export const JOIN_POSITIONS = ["auto", "equal-parts", "under-columns"] as const;
const hems = z
  .strictObject({
    sideTurnMm: lengthMm.meta({ description: "Width of one turn of the side hem, mm" }),
    sideTurns: z.literal([1, 2]).meta({ description: "Turns of the side hem: 1 single, 2 double" }),
    bottomTurnMm: lengthMm.meta({ description: "Depth of one turn of the bottom hem, mm" }),
    bottomTurns: z.literal([1, 2]).meta({ description: "Turns of the bottom hem" }),
    boardAllowanceMm: lengthMm.meta({ description: "Cloth beyond the top line, for the board, mm" }),
    seamMm: lengthMm.meta({ description: "Seam allowance on each piece at a join, mm" }),
    makeUp: z.enum(MAKE_UPS).meta({
      description:
        "turned-hems: hems fold over the lining; bagged-out: sewn right sides together and turned out",
    }),
    corner: z.enum(HEM_CORNERS).meta({ description: "Corners where side hem and bottom hem meet" }),
    joins: z.enum(JOIN_POSITIONS).meta({
      description:
        "Joins of widths: equal-parts beside a full width, under-columns at rings or pleats, auto: there where it takes no more cloth",
    }),
  })
  .partial();

export const RAILROADS = ["auto", "never", "always"] as const;
export type Railroad = (typeof RAILROADS)[number];
export const INNER_CUTS = ["finished-size", "as-lining"] as const;
const railroad = z.enum(RAILROADS);
const lining = z
  .strictObject({
    widthOverFinishedMm: lengthMm.meta({
      description: "Lining cut wider than the finished width, both sides together, mm",
    }),
    lengthOverFinishedMm: lengthMm.meta({
      description: "Lining cut longer than the finished length, before pockets, mm",
    }),
    squaringMm: lengthMm.meta({ description: "Lining cut longer still, to square it up by, mm" }),
    interliningCut: z.enum(INNER_CUTS).meta({
      description: "Interlining: finished-size, out of the hems; as-lining, sewn in with the edges",
    }),
    blackoutCut: z.enum(INNER_CUTS).meta({
      description: "Blackout: finished-size, out of the hems; as-lining, sewn in with the edges",
    }),
    innerNarrowerMm: lengthMm.meta({
      description: "Interlining and blackout cut to size: narrower than the finished width, mm",
    }),
    innerLongerMm: lengthMm.meta({
      description: "Interlining and blackout cut to size: longer than the finished length, mm",
    }),
    railroad: railroad.meta({
      description:
        "Layers behind the face turned sideways on the bolt: auto where that saves a join and no cloth is lost",
    }),
    bonded: z.boolean().meta({
      description: "Layers glued or fused to one another all over, so that they bend as one",
    }),
    bondedBendingMm: bendingMm.meta({
      description: "Bonded: bending length of a strip of all layers together, mm, as measured",
    }),
  })
  .partial();

/** What holds a rib: a pocket folded in a layer or in all of them, a strip sewn on, or nothing but stitches. */
export const RIB_KINDS = [
  "none",
  "lining-pocket",
  "through-pocket",
  "face-pocket",
  "strip-pocket",
  "bare",
] as const;
export type RibKind = (typeof RIB_KINDS)[number];
export const RIB_FACES = ["back", "front"] as const;
/** At the rows of rings alone, or also midway between them, where the folds break at the front. */
export const RIB_POSITIONS = ["rows", "half-folds"] as const;
const ribs = z
  .strictObject({
    kind: z.enum(RIB_KINDS).meta({ description: "Ribs and what their pockets are made of" }),
    face: z.enum(RIB_FACES).meta({ description: "Side of the shade on which the ribs lie" }),
    at: z.enum(RIB_POSITIONS).meta({
      description: "rows: a rib at every row of rings; half-folds: another midway between two rows",
    }),
    pocketMm: lengthMm.meta({ description: "Depth of a rib pocket, mm" }),
    rib: id,
    shorterMm: lengthMm.meta({ description: "Rib shorter than the finished width, mm" }),
  })
  .partial();

/**
 * How a hobbled shade spaces cloth and tape: by tape and fullness, or by a published rule that can be read in two
 * ways: n folds with a tape mark for each (`folds-of-six`), or twice as many of half the size (`folds-of-three`).
 */
export const HOBBLE_RULES = ["tape", "folds-of-six", "folds-of-three"] as const;
export type HobbleRule = (typeof HOBBLE_RULES)[number];
const hobble = z
  .strictObject({
    rule: z.enum(HOBBLE_RULES).meta({
      description:
        "tape: by tape spacing and fullness; folds-of-six: tape L/n and cloth 2L/n; folds-of-three: cloth L/n and tape L/2n",
    }),
    tapeMm: spacingMm.meta({ description: "Tape between two marks at most, mm" }),
    fullness: z.number().min(1).max(3).meta({ description: "Cloth over tape: 1.5 to 2 is usual" }),
    clothMm: spacingMm.meta({ description: "Fixed cloth between two marks, mm; it decides the fullness" }),
    match: z
      .boolean()
      .meta({ description: "Cloth between marks chosen so that the pattern comes back on the folds" }),
    repeats: countSchema
      .min(1)
      .max(12)
      .meta({ description: "Pattern: so many repeats fill the folds after which it comes back" }),
    folds: countSchema
      .min(1)
      .max(12)
      .meta({ description: "Pattern: it comes back on every so-manieth fold" }),
  })
  .partial();

const tuck = z
  .strictObject({
    spacingMm: spacingMm.meta({ description: "Tucks about this far apart, mm" }),
    depthMm: lengthMm.meta({ description: "Depth of a tuck from its fold to its stitching, mm" }),
    face: z.enum(RIB_FACES).meta({ description: "Side of the shade on which the tucks stand" }),
  })
  .partial();

/** What keeps the lower edge of a gathered shade down: a covered rod, a bag of shot at each column, or nothing. */
export const HEM_WEIGHTS = ["rod", "shot-bags", "none"] as const;
export type HemWeight = (typeof HEM_WEIGHTS)[number];
/** Finished edges that a frill goes round. */
export const FRILL_EDGES = ["hem", "sides", "sides-and-hem"] as const;
export type FrillEdges = (typeof FRILL_EDGES)[number];
/** Times as much cloth as shade. */
const fullness = z.number().min(1).max(5);
const gather = z
  .strictObject({
    lengthFullness: fullness.meta({
      description: "Austrian: cloth along the length, times the finished length",
    }),
    widthFullness: fullness.meta({
      description: "Gathered balloon and festoon: cloth across, times the finished width",
    }),
    scallopExtraMm: lengthMm.meta({
      description: "Austrian: cloth across each scallop beyond its width between two tapes, mm",
    }),
    sagMm: lengthMm.meta({
      description:
        "Austrian: how far a scallop hangs below its corners, mm; the cloth across follows from it",
    }),
    hemExtraMm: lengthMm.meta({
      description:
        "Gathered balloon and festoon: cloth beyond the finished length that stays drawn up at the hem, mm",
    }),
    hemRowMm: lengthMm.meta({
      description: "Gathered balloon and festoon: lowest ring above the lower edge, mm",
    }),
    drawInMm: lengthMm.meta({
      description: "Cloth beyond the finished width for the sides that draw in, both sides together, mm",
    }),
    weight: z.enum(HEM_WEIGHTS).meta({ description: "What keeps the lower edge down and the columns apart" }),
    frillMm: lengthMm.meta({ description: "Frill: its depth, mm; 0 is none" }),
    frillEdges: z.enum(FRILL_EDGES).meta({ description: "Edges that the frill goes round" }),
    frillDouble: z.boolean().meta({
      description: "Frill folded lengthwise, two thicknesses, instead of hemmed along both edges",
    }),
    frillFullness: fullness.meta({ description: "Frill: cloth, times the edge that it is sewn to" }),
  })
  .partial();

/** How the lower edge of a relaxed shade is cut, and how its panel grows wider towards it. */
export const LOWER_EDGES = ["curved", "straight"] as const;
export const WIDENINGS = ["tapered", "even"] as const;
export const RELAXED_WEIGHTS = ["none", "at-columns", "bar"] as const;
const relax = z
  .strictObject({
    dipMm: lengthMm.meta({
      description: "How far the middle of the lower edge hangs below its ends, mm; the width follows from it",
    }),
    extraWidthMm: lengthMm.meta({
      description: "Panel wider at the hem than between its columns, mm; the dip follows from it",
    }),
    lowerEdge: z.enum(LOWER_EDGES).meta({
      description:
        "curved: cut to the dip, which shows at every height; straight: hangs level until it is raised",
    }),
    widening: z.enum(WIDENINGS).meta({
      description:
        "tapered: the sides slant out towards the hem; even: as wide all the way, eased in at the board",
    }),
    weight: z.enum(RELAXED_WEIGHTS).meta({
      description: "In the hem: nothing, short weights at the columns, or a bar, which lets nothing dip",
    }),
  })
  .partial();

export const PLEAT_KINDS = ["inverted", "box"] as const;
/** A published rule, two ways: the pleat is sewn shut nearly to the hem, or caught at the top and pressed below. */
export const PLEATS_HELD = ["sewn", "pressed"] as const;
export const PLEAT_CUTS = ["in-one", "inserts"] as const;
export const EDGE_PLEATS = ["half", "none"] as const;
export const PLEAT_BARS = ["none", "between"] as const;
const pleat = z
  .strictObject({
    foldedMm: lengthMm.meta({ description: "Cloth folded away in one pleat, mm" }),
    kind: z.enum(PLEAT_KINDS).meta({
      description: "inverted: its edges meet at the front; box: they meet at the back",
    }),
    held: z.enum(PLEATS_HELD).meta({
      description: "sewn: shut from the top to near the hem; pressed: sewn at the top alone and opens below",
    }),
    sewnAtTopMm: lengthMm.meta({
      description: "Pressed pleats are sewn so far down; stitches of sewn ones begin there, mm",
    }),
    openAtHemMm: lengthMm.meta({ description: "Sewn pleats stay open above the hem, mm" }),
    insetMm: lengthMm.meta({ description: "Tailed: pleat in from each edge, mm" }),
    insetShare: share.meta({ description: "Tailed: pleat in from each edge, share of the width" }),
    cut: z.enum(PLEAT_CUTS).meta({
      description:
        "in-one: pleats folded in one panel; inserts: centre, sides and pleats cut apart and joined",
    }),
    poufMm: spacingMm.meta({ description: "Pleated balloon: poufs at most this wide, mm" }),
    edges: z.enum(EDGE_PLEATS).meta({ description: "Pleated balloon: half a pleat at each edge, or none" }),
    firstRingMm: lengthMm.meta({ description: "First ring above the lower edge, mm" }),
    bar: z.enum(PLEAT_BARS).meta({ description: "Weight bar in the hem: none, or between the pleats alone" }),
    centreLine: z.boolean().meta({ description: "Tailed: a lift line in the middle as well" }),
  })
  .partial();

const pouf = z
  .strictObject({
    marks: countSchema.max(6).meta({
      description:
        "Marks that lie on each other at the lowest ring, so that a pouf stays: 2 or 3; under 2 none",
    }),
    clothMm: lengthMm.meta({ description: "Cloth that stays up in that pouf, mm" }),
  })
  .partial();

export const HALF_DROP_RULES = ["whole-repeat-per-order", "half-repeat-if-needed"] as const;
export type HalfDropRule = (typeof HALF_DROP_RULES)[number];
/** Where a repeat begins on the shade: standing on the hem, centred on the length, from the top line, or as fixed. */
export const MOTIF_ANCHORS = ["hem", "centre", "top", "free"] as const;
export const MOTIF_ACROSS = ["centre-motif", "between-motifs", "offset"] as const;
export type MotifAcross = (typeof MOTIF_ACROSS)[number];
export const PILES = ["down", "up"] as const;
const pattern = z
  .strictObject({
    halfDropRule: z.enum(HALF_DROP_RULES).meta({ description: "How much more a half drop asks for" }),
    placementRepeat: z.boolean().meta({ description: "Buy one repeat more to place the motif" }),
    place: z.enum(MOTIF_ANCHORS).meta({
      description:
        "Motif along the length: whole repeats stand on the hem, are centred, begin at the top line, or as fixed",
    }),
    offsetMm: lengthMm.meta({
      description: "Placed freely: from the top line down to where a repeat begins, mm",
    }),
    across: z.enum(MOTIF_ACROSS).meta({
      description: "Motif across: its middle or the gap between two at the shade's middle, or as fixed",
    }),
    acrossMm: lengthMm.meta({
      description: "Fixed across: from the left finished edge to where a repeat begins, mm",
    }),
    railroad: railroad.meta({
      description: "Face turned sideways on the bolt: auto where that saves a join and no cloth is lost",
    }),
    pile: z.enum(PILES).meta({ description: "Way in which a pile strokes smooth on the hanging shade" }),
  })
  .partial();

export const SEATS = ["auto", "between", "outside"] as const;
export const CONTROL_SIDES = ["left", "right"] as const;
/**
 * How a shade is raised: cords over a lock, cords over the last eye and wound on a cleat, or cords on spools that a
 * spring, a wand, a loop or a motor turns.
 */
export const LIFT_KINDS = ["cord-lock", "cleat", "spring", "tube-wand", "tube-loop", "motor"] as const;
export type LiftKind = (typeof LIFT_KINDS)[number];
/** How the cords run up the back: bare through rings, in a woven sleeve that the rings grip, or in a sewn sleeve. */
export const REAR_GUIDES = ["open", "ring-locked", "enclosed"] as const;
/** How the lift cords run up the back: through open rings, in a woven sleeve that every ring grips, or in a sewn sleeve. */
export type RearGuide = (typeof REAR_GUIDES)[number];
/** What lets a rear cord go at its bottom ring when a child hangs in it: nothing, or a part that comes apart. */
export const REAR_RELEASES = ["none", "breakaway"] as const;
export const LOOP_JOINTS = ["closed", "breakaway"] as const;
const lift = z
  .strictObject({
    kind: z.enum(LIFT_KINDS).meta({ description: "How the shade is raised" }),
    rearCords: z.enum(REAR_GUIDES).meta({
      description:
        "Cords up the back: open through rings; ring-locked, in a woven sleeve that every ring grips; enclosed, in a sleeve sewn along each column",
    }),
    rearRelease: z.enum(REAR_RELEASES).meta({
      description: "At the bottom ring of every rear cord: nothing, or a part that comes apart under a load",
    }),
    controlSide: z
      .enum(CONTROL_SIDES)
      .meta({ description: "Side on which the shade is worked, seen from the room" }),
    lock: id,
    cord: id,
    eye: id,
    turnEye: id.meta({
      description: "Without a lock: eye or pulley over which all cords turn down to the cleat, by id",
    }),
    ring: id,
    seat: z.enum(SEATS).meta({
      description:
        "Lock between the last two eyes, outside the last, or auto: as near to the edge as it clears them",
    }),
    seatMm: lengthMm.meta({
      description: "Lock's centre fixed at this distance from the left finished edge, mm",
    }),
    straightRunMm: lengthMm.meta({
      description: "Least straight run of cord between an eye and the lock, mm",
    }),
    tailMm: cordMm.meta({
      description: "Cord below the lock, or below the last eye, with the shade lowered, mm",
    }),
    knotsMm: cordMm.meta({ description: "Cord for knots and threading, each, mm" }),
    cleatAboveFloorMm: lengthMm.meta({ description: "Height of the cleat above the floor, mm" }),
    tube: id.meta({ description: "Lift tube with its spools, by id" }),
    drive: id.meta({ description: "Spring, wand, loop or motor that turns the tube, by id" }),
    loopDropMm: cordMm.meta({ description: "Loop: from the drive down to its tensioner, mm" }),
    loopJoint: z.enum(LOOP_JOINTS).meta({
      description:
        "Loop joined for good, or by a connector that comes apart under a pull, besides its tensioner",
    }),
    wandMm: cordMm.meta({ description: "Wand: its length below the drive, mm" }),
    leadLooseMm: lengthMm.meta({
      description:
        "Motor: longest stretch of its lead, or of its charger’s, that hangs free between two clips, mm",
    }),
    leadLowMm: lengthMm.meta({ description: "Motor: lowest point of that stretch above the floor, mm" }),
  })
  .partial();

/** Woods of which the figures are known, weak ones among them: one of those is taken where nothing is said. */
export const WOODS = Object.keys(WOOD_SPECIES) as [
  keyof typeof WOOD_SPECIES,
  ...(keyof typeof WOOD_SPECIES)[],
];
export const WOOD_NAMES = Object.fromEntries(
  Object.entries(WOOD_SPECIES).map(([wood, { name: words }]) => [wood, words]),
) as Record<keyof typeof WOOD_SPECIES, string>;
export const SCREW_GAUGES = Object.keys(SCREW_SHANK_MM) as [
  keyof typeof SCREW_SHANK_MM,
  ...(keyof typeof SCREW_SHANK_MM)[],
];

export const ATTACHMENTS = ["staple", "hook-and-loop"] as const;
export const SUBSTRATES = ["timber", "masonry", "hollow-wall", "unknown"] as const;
export const BANDINGS = ["none", "sides", "bottom", "sides-and-bottom", "all-round"] as const;
export const BAND_CORNERS = ["mitred", "butted"] as const;
const banding = z
  .strictObject({
    where: z.enum(BANDINGS).meta({ description: "Contrast banding sewn on the face" }),
    widthMm: sizeMm.meta({ description: "Width of the banding that shows, mm" }),
    insetMm: lengthMm.meta({
      description: "Banding in from the finished edge, mm; 0 turns it round the edge",
    }),
    turnMm: lengthMm.meta({ description: "Turned under along an edge of the banding, mm" }),
    corners: z.enum(BAND_CORNERS).meta({ description: "Corners of the banding" }),
    bottomBandMm: lengthMm.meta({
      description:
        "Band of another cloth joined to the lower edge of the face: depth that shows, mm; 0 is none",
    }),
  })
  .partial();

export const COVER_FROM = ["lining", "face"] as const;
export const RETURNS = ["none", "pieces", "wrapped"] as const;
const board = z
  .strictObject({
    section: id,
    bar: id,
    barShorterMm: lengthMm.meta({ description: "Weight bar shorter than the finished width, mm" }),
    attachment: z.enum(ATTACHMENTS),
    substrate: z.enum(SUBSTRATES).meta({ description: "What the brackets are screwed to" }),
    wood: z.enum(WOODS).meta({ description: "Wood of the board" }),
    wallWood: z.enum(WOODS).meta({ description: "Wood that the screws go into, where they go into wood" }),
    screwGauge: z.enum(SCREW_GAUGES).meta({ description: "Gauge of the wall screws" }),
    bracketLegMm: sizeMm.meta({ description: "Leg of a bracket down the wall, mm" }),
    fixingRatedN: z
      .number()
      .min(1)
      .max(100_000)
      .meta({ description: "Load that the maker of plug or anchor allows on one, N" }),
    bracketEndMm: lengthMm.meta({ description: "First bracket at most this far from the board's end, mm" }),
    bracketSpacingMm: spacingMm.meta({ description: "Largest distance between brackets, mm" }),
    coverFrom: z.enum(COVER_FROM).meta({ description: "Cloth that the board is covered with" }),
    returns: z.enum(RETURNS).meta({
      description:
        "Outside mount, the board's ends: open, covered by pieces of their own, or by the face wrapped round them",
    }),
    returnDropMm: lengthMm.meta({ description: "Pieces over the board's ends: how far they hang down, mm" }),
    dustStripMm: lengthMm.meta({
      description: "Strip that closes the gap between board and wall at the top: its depth, mm; 0 is none",
    }),
  })
  .partial();

export const makingSchema = z
  .strictObject({
    mount,
    fold,
    columns,
    hems,
    lining,
    ribs,
    hobble,
    tuck,
    gather,
    relax,
    pleat,
    pouf,
    pattern,
    banding,
    lift,
    board,
  })
  .partial()
  .meta({ description: "How shades are made; only what the maker chose" });

export type Making = z.output<typeof makingSchema>;

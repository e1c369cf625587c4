import { cite, type Sourced, sourced } from "../sources/index.ts";
import { inches } from "../units/index.ts";
import type { Making } from "./making.ts";
import type { Bar } from "./parts.ts";

/** Worked out from the shade itself by the stage that needs it; `why` says how. */
export interface WorkedOut {
  workedOut: true;
  why: string;
}

function workedOut(why: string): WorkedOut {
  return { workedOut: true, why };
}

type Groups = { [G in keyof Making]-?: NonNullable<Making[G]> };
type DefaultsTable = {
  [G in keyof Groups]: {
    [K in keyof Groups[G]]-?: Sourced<NonNullable<Groups[G][K]>> | WorkedOut;
  };
};

const guides = cite("measuring-guides");
const mm = (value: number, from: Parameters<typeof sourced>[2]) => sourced(value, "mm", from);

/** What a shade gets where the maker said nothing: each value with its unit and its source. */
export const DEFAULTS = {
  mount: {
    insideWidthOffMm: mm(inches(0.5), cite("measuring-guides", "published 6 to 20 mm in all; 1/2 in taken")),
    insideLengthOffMm: mm(inches(0.25), cite("our-choice", "clears the sill")),
    overlapSideMm: mm(inches(2), guides),
    overlapAboveMm: mm(inches(4), cite("measuring-guides", "10 to 15 cm")),
    overlapBelowMm: mm(inches(2), cite("measuring-guides", "5 cm below the sill")),
    floorClearanceMm: mm(inches(0.5), cite("from-memory")),
    boardShorterMm: mm(inches(0.25), cite("us-sewing-handbook", "board = finished width − 1/4 in")),
    neighbourGapMm: mm(inches(0.5), cite("our-choice", "a finger’s breadth")),
    foldRoomMm: mm(50, cite("our-choice", "gathered folds of a lined shade")),
    handClearanceMm: mm(inches(0.5), cite("our-choice")),
  },
  fold: {
    rule: sourced("half-fold", "", cite("pocket-spacing")),
    gradeStepMm: mm(0, cite("our-choice", "even folds")),
    headrailMm: workedOut("the largest of 65 mm, board and lift + 25 mm and rib face + 35 mm"),
    topDropMm: mm(0, cite("our-choice", "hangs from the board")),
    cascadeMm: mm(0, cite("our-choice", "folds hang level")),
    skirtMm: mm(0, cite("our-choice", "no band")),
    largestSpacingMm: mm(inches(8), cite("old-inner-cord-clauses", "4.4: rings at most 8 in apart")),
    smallestSpacingMm: mm(75, cite("our-choice", "below this the stack only grows thicker")),
    rows: workedOut("the fewest rows that keep to the largest spacing"),
    spacingMm: workedOut("an odd number of half folds fills the length"),
    stackMm: workedOut("no limit"),
    hemBarMm: mm(30, cite("even-fold-slides")),
    ringStackMm: mm(30, cite("even-fold-slides")),
  },
  columns: {
    largestSpacingMm: mm(inches(10), cite("ring-spacing-faq", "10 in rule")),
    edgeInsetMm: mm(inches(2), cite("old-inner-cord-clauses", "4.4: side cords at least 2 in from the edge")),
    count: workedOut("the fewest columns that keep to the largest spacing"),
  },
  hems: {
    sideTurnMm: mm(inches(1.5), cite("roman-shades-2018", "1.5 in double, +6 in in all")),
    sideTurns: sourced(2, "", cite("roman-shades-2018")),
    bottomTurnMm: mm(inches(1.5), cite("hem-guides", "3 in, as 1.5 in doubled")),
    bottomTurns: sourced(2, "", cite("hem-guides")),
    boardAllowanceMm: workedOut(
      "board depth + 1 in where it is stapled (common practice), 1.5 in where it is hook-and-loop",
    ),
    seamMm: mm(inches(0.5), cite("austrian-2008", "+1 in for each join")),
    makeUp: sourced("turned-hems", "", cite("hem-guides")),
    corner: sourced("square", "", cite("our-choice", "the ends of the bottom hem stay open for the bar")),
    joins: sourced("auto", "", cite("us-sewing-handbook", "full width centred, equal parts at each side")),
  },
  lining: {
    widthOverFinishedMm: workedOut(
      "nothing where hems turn over the lining (common practice: edge to edge); two seams where it is bagged out",
    ),
    lengthOverFinishedMm: workedOut("as long as the face"),
    squaringMm: mm(0, cite("our-choice", "a tutorial cuts 6 cm spare to square up")),
    interliningCut: sourced("finished-size", "", cite("from-memory", "interlining out of the hems")),
    blackoutCut: sourced("finished-size", "", cite("from-memory", "blackout out of the hems")),
    innerNarrowerMm: mm(0, cite("our-choice", "the finished width")),
    innerLongerMm: mm(0, cite("our-choice", "the finished length")),
    railroad: sourced("auto", "", cite("our-choice", "no join where none is needed")),
    bonded: sourced(false, "", cite("our-choice", "layers lie loose on one another")),
    bondedBendingMm: workedOut("at least that of loose layers, whose stiffnesses add"),
  },
  ribs: {
    kind: sourced("none", "", cite("our-choice")),
    face: sourced("back", "", cite("pocket-spacing")),
    at: sourced("rows", "", cite("pocket-spacing", "a rod at every row of rings")),
    pocketMm: mm(10, cite("pocket-spacing", "2 cm of lining for a 4 mm rod")),
    rib: sourced("rib-rod-4", "", cite("demo")),
    shorterMm: mm(inches(1), cite("graduated-folds", "battens about 1 in under the width")),
  },
  hobble: {
    rule: sourced("tape", "", cite("hobbled-workroom", "by tape and fullness")),
    tapeMm: mm(inches(6), cite("hobbled-workroom", "6 in of tape")),
    fullness: sourced(1.75, "ratio", cite("hobbled-workroom", "up to 10.5 in of cloth on 6 in of tape")),
    clothMm: workedOut("tape × fullness"),
    match: sourced(true, "", cite("our-choice", "where the face has a repeat")),
    repeats: workedOut("the fewest repeats on the fewest folds with a fullness of 1.5 to 2"),
    folds: workedOut("the fewest repeats on the fewest folds with a fullness of 1.5 to 2"),
  },
  tuck: {
    spacingMm: mm(inches(3), cite("singer-sewing", "L − 3 in divided by 3 in")),
    depthMm: mm(inches(0.25), cite("singer-sewing", "1/4 in deep")),
    face: sourced("front", "", cite("our-choice", "a tuck is there to be seen")),
  },
  gather: {
    lengthFullness: workedOut("3 for a sheer face under 100 g/m², 2 for any other"),
    widthFullness: sourced(2, "ratio", cite("austrian-uk")),
    scallopExtraMm: mm(inches(3), cite("austrian-2008", "3 to 4 in for each scallop")),
    sagMm: workedOut("hangs by the catenary of the cloth across a scallop"),
    hemExtraMm: mm(0, cite("our-choice", "nothing drawn up while the shade is down")),
    hemRowMm: mm(inches(1), cite("our-choice", "on the hem, clear of its edge")),
    drawInMm: mm(0, cite("our-choice", "none")),
    weight: sourced("rod", "", cite("austrian-2008", "a covered rod")),
    frillMm: mm(0, cite("our-choice", "none")),
    frillEdges: sourced("hem", "", cite("our-choice", "along the lower edge")),
    frillDouble: sourced(false, "", cite("our-choice", "one thickness, hemmed")),
    frillFullness: sourced(
      2,
      "ratio",
      cite("austrian-blinds", "72 in of frill is two widths of 36 in cloth"),
    ),
  },
  relax: {
    dipMm: workedOut("a ninth of the width between the columns, or what the extra width holds"),
    extraWidthMm: workedOut("the catenary of the dip"),
    lowerEdge: sourced("curved", "", cite("our-choice", "so that the dip shows with the shade down")),
    widening: sourced("tapered", "", cite("mock-roman", "cut wider at the bottom")),
    weight: sourced("at-columns", "", cite("our-choice", "short weights keep the corners down")),
  },
  pleat: {
    foldedMm: mm(inches(12), cite("inset-pleats", "12 in (30 cm) for each pleat")),
    kind: sourced("inverted", "", cite("inset-pleats")),
    held: sourced("sewn", "", cite("inset-pleats", "sewn to 2 in above the bottom")),
    sewnAtTopMm: mm(inches(4), cite("inset-pleats", "from 4 in below the top")),
    openAtHemMm: mm(inches(2), cite("inset-pleats", "to 2 in above the bottom")),
    insetMm: workedOut("a share of the width"),
    insetShare: sourced(0.23, "ratio", cite("inset-pleats", "35 cm of 150 cm")),
    cut: sourced("in-one", "", cite("inset-pleats")),
    poufMm: mm(inches(12), cite("from-memory", "poufs 9 to 14 in wide")),
    edges: sourced("half", "", cite("from-memory", "half a pleat at each side")),
    firstRingMm: mm(inches(2), cite("inset-pleats", "first loop 2 in up")),
    bar: sourced("between", "", cite("from-memory", "a lath in the hem of the centre alone")),
    centreLine: sourced(false, "", cite("our-choice", "the centre hangs free")),
  },
  pouf: {
    marks: sourced(3, "", cite("from-memory", "two or three rings tied together")),
    clothMm: mm(inches(12), cite("from-memory", "10 to 15 in more length")),
  },
  pattern: {
    halfDropRule: sourced("whole-repeat-per-order", "", cite("half-drop-tutorial")),
    placementRepeat: sourced(false, "", cite("our-choice")),
    place: sourced(
      "hem",
      "",
      cite("curtain-encyclopaedia", "pp. 116–119: a full motif at the hem (curtains)"),
    ),
    offsetMm: mm(0, cite("our-choice", "a repeat begins at the top line")),
    across: workedOut(
      "a motif in the middle (“kicked up a notch”), or the gap between two where that takes less cloth",
    ),
    acrossMm: mm(0, cite("our-choice", "a repeat begins at the left edge")),
    railroad: sourced("auto", "", cite("our-choice", "no join where none is needed")),
    pile: sourced("down", "", cite("from-memory", "pile down sheds dust, pile up looks deeper")),
  },
  banding: {
    where: sourced("none", "", cite("our-choice")),
    widthMm: mm(inches(2), cite("our-choice")),
    insetMm: mm(0, cite("our-choice", "round the edge")),
    turnMm: mm(inches(0.5), cite("common-practice", "1/2 in turned under")),
    corners: sourced("mitred", "", cite("our-choice")),
    bottomBandMm: mm(0, cite("our-choice", "none")),
  },
  lift: {
    kind: workedOut("follows the place, the purpose and about what the shade will weigh"),
    rearCords: workedOut("follows the place and the purpose of the shade"),
    rearRelease: sourced("none", "", cite("our-choice", "no part is assumed")),
    controlSide: sourced("right", "", cite("our-choice")),
    lock: workedOut("the first lock that takes the cords"),
    cord: sourced("cord-1-4", "", cite("lock-instructions", "1.4 mm is the usual size")),
    eye: sourced("eye-12", "", cite("demo")),
    turnEye: workedOut("an eye like the others"),
    ring: sourced("ring-12", "", cite("demo")),
    seat: sourced("auto", "", cite("our-choice")),
    seatMm: workedOut("the middle of the best feasible interval"),
    straightRunMm: mm(12, cite("our-choice", "so that a cord enters the housing straight")),
    tailMm: workedOut(
      "over a lock half the finished length (recalled from memory: a tail ends half to two thirds down); without one to the cleat and once round it",
    ),
    knotsMm: mm(inches(6), cite("our-choice", "ring knot, connector and threading")),
    cleatAboveFloorMm: mm(
      1600,
      cite("from-memory", "the higher of the two published heights; the safety review reads the place's own"),
    ),
    tube: sourced("tube-12", "", cite("demo")),
    drive: workedOut("the first of the lift’s kind that takes the weight and finds a place"),
    loopDropMm: workedOut("half the finished length, or less, so that it ends 1.6 m (63 in) above the floor"),
    loopJoint: sourced("closed", "", cite("our-choice", "no connector is assumed")),
    wandMm: workedOut("half the finished length, or less, so that it ends 1.6 m (63 in) above the floor"),
    leadLooseMm: workedOut("not known until it is measured on the wall"),
    leadLowMm: workedOut("not known until it is measured on the wall"),
  },
  board: {
    section: sourced("board-1x2", "", cite("austrian-2008", "1 × 2")),
    bar: sourced("bar-steel-19x3", "", cite("from-memory", "flat metal bar 3/4 to 1 in × 1/8 in")),
    barShorterMm: mm(inches(0.5), cite("from-memory", "W − 1/2 in")),
    attachment: sourced("staple", "", cite("common-practice")),
    substrate: sourced("unknown", "", cite("our-choice", "nothing is assumed")),
    wood: sourced("eastern-white-pine", "", cite("our-choice", "the weakest of the woods listed")),
    wallWood: sourced("engelmann-spruce", "", cite("our-choice", "the weakest of the woods listed")),
    screwGauge: sourced("8", "", cite("from-memory", "No. 8 wood screws")),
    bracketLegMm: mm(50, cite("our-choice", "a small bracket; measure your own")),
    fixingRatedN: workedOut("nothing: only the maker of plug or anchor can say"),
    bracketEndMm: mm(inches(4), cite("from-memory", "within 4 in of the ends")),
    bracketSpacingMm: mm(inches(24), cite("from-memory", "at most 24 to 30 in apart")),
    coverFrom: sourced("lining", "", cite("from-memory", "board covered with lining")),
    returns: sourced("none", "", cite("our-choice")),
    returnDropMm: workedOut("the flat cloth above the raised stack, which never folds"),
    dustStripMm: mm(0, cite("our-choice", "none; 1 to 2 in of lining are usual, from memory")),
  },
} satisfies DefaultsTable;

export type MakingGroup = keyof typeof DEFAULTS;

export function isWorkedOut(entry: Sourced<unknown> | WorkedOut): entry is WorkedOut {
  return "workedOut" in entry;
}

/** Density of a bar or rib by its material, where it was not weighed. */
export const BAR_DENSITY = {
  steel: sourced(7850, "kg/m3", cite("steel-density")),
  aluminium: sourced(2700, "kg/m3", cite("aluminium-density")),
  wood: sourced(
    450,
    "kg/m3",
    cite("wood-handbook", "ch. 5, table 5-3a: common softwoods 350 to 510 at 12 % moisture"),
  ),
  plastic: sourced(1900, "kg/m3", cite("from-memory", "glass-fibre rod")),
} as const satisfies Record<Bar["material"], Sourced>;

/** Modulus of elasticity of a bar or rib by its material. */
export const BAR_STIFFNESS = {
  steel: sourced(210_000, "N/mm2", cite("steel-stiffness")),
  aluminium: sourced(70_000, "N/mm2", cite("aluminium-stiffness")),
  wood: sourced(8900, "N/mm2", cite("wood-handbook", "ch. 5, table 5-3a: ponderosa pine, 12 % moisture")),
  plastic: sourced(35_000, "N/mm2", cite("from-memory", "glass-fibre rod, 30 to 45 GPa")),
} as const satisfies Record<Bar["material"], Sourced>;

/** Section of a bar or rib, mm²: round where it is a rod. */
export function barSectionMm2(bar: Bar): number {
  return bar.round === true ? (Math.PI * bar.widthMm ** 2) / 4 : bar.widthMm * bar.thicknessMm;
}

/** Mass of a bar or rib on each m of its length, g: as it was weighed, else by its section. */
export function barMassGPerM(bar: Bar): number {
  return bar.massGPerM ?? (barSectionMm2(bar) * BAR_DENSITY[bar.material].value) / 1000;
}

/** Labour rates and times that stand in until the maker sets his or her own. */
export const DEFAULT_RATES = {
  currency: sourced("USD", "", cite("our-choice")),
  labourPerHour: sourced(35, "money", cite("demo")),
  measureMin: sourced(10, "min", cite("curtain-encyclopaedia", "p. 108: about 10 minutes a window")),
  cutMinPerWidth: sourced(15, "min", cite("demo")),
  sewMinPerM: sourced(8, "min", cite("demo")),
  ringMin: sourced(1.5, "min", cite("demo")),
  rigMinPerCord: sourced(6, "min", cite("demo")),
  boardMin: sourced(25, "min", cite("demo")),
  hangMin: sourced(30, "min", cite("demo")),
  wasteShare: sourced(0, "ratio", cite("our-choice", "what is computed is bought")),
  taxShare: sourced(0, "ratio", cite("our-choice")),
} satisfies {
  [K in Exclude<keyof import("./job.ts").Rates, "prices">]-?: Sourced<
    NonNullable<import("./job.ts").Rates[K]>
  >;
};

/** What stands on a quote until the maker says otherwise. */
export const DEFAULT_OFFER = {
  markUpShare: sourced(0, "ratio", cite("our-choice", "nothing is put on that nobody asked for")),
  depositShare: sourced(0, "ratio", cite("our-choice")),
  validDays: sourced(30, "count", cite("our-choice")),
  payDays: sourced(14, "count", cite("our-choice")),
} as const;

/** How cloth and lengths are cut until the maker says otherwise. */
export const DEFAULT_CUTTING = {
  way: sourced("straight", "", cite("common-practice", "along a straight edge")),
  stages: sourced(3, "count", cite("our-choice", "across the bolt, along the piece, across again")),
  spread: sourced("single", "", cite("our-choice", "each length is seen while it is cut")),
  hand: sourced("right", "", cite("our-choice")),
  toleranceMm: mm(1.5, cite("our-choice", "a hem takes it up; a match of the pattern still looks right")),
  gapMm: mm(0, cite("our-choice", "scissors take no cloth")),
  keepClothWidthMm: mm(300, cite("our-choice", "wide enough for a board cover or a band")),
  keepClothLengthMm: mm(500, cite("our-choice")),
  keepLengthMm: mm(400, cite("our-choice")),
  sawKerfMm: mm(3, cite("common-practice", "a hand or circular saw")),
  seed: sourced(1, "", cite("our-choice")),
} satisfies {
  [K in Exclude<keyof import("./cutting.ts").Cutting, "tableMm">]-?: Sourced<
    NonNullable<import("./cutting.ts").Cutting[K]>
  >;
};

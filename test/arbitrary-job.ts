import fc from "fast-check";
import {
  BAND_CORNERS,
  BANDINGS,
  CATALOGUE,
  CLOTH_KINDS,
  COVER_FROM,
  CUT_WAYS,
  DIRECTIONS,
  DRIVE_KINDS,
  EDGE_PLEATS,
  FOOTHOLD_KINDS,
  FRILL_EDGES,
  HEADS,
  HEM_CORNERS,
  HEM_WEIGHTS,
  HOBBLE_RULES,
  INNER_CUTS,
  JOIN_POSITIONS,
  type Job,
  type JobInput,
  jobSchema,
  LIFT_KINDS,
  LOOP_JOINTS,
  LOWER_EDGES,
  MAKE_UPS,
  MOTIF_ACROSS,
  MOTIF_ANCHORS,
  PILES,
  PLACES,
  PLEAT_BARS,
  PLEAT_CUTS,
  PLEAT_KINDS,
  PLEATS_HELD,
  POWERS,
  PURPOSES,
  RAILROADS,
  REAR_GUIDES,
  REAR_RELEASES,
  RELAXED_WEIGHTS,
  RETURNS,
  RIB_FACES,
  RIB_KINDS,
  RIB_POSITIONS,
  SCREW_GAUGES,
  STYLES,
  TUBE_METALS,
  WIDENINGS,
  WOODS,
} from "../src/job/index.ts";
import { RULERS } from "../src/units/index.ts";
import { anyInLine } from "./arbitrary-room.ts";

type WindowInput = JobInput["rooms"][number]["windows"][number];
type MakingInput = NonNullable<NonNullable<WindowInput["shade"]>["making"]>;

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Sizes at the ends of what a job may hold and everything between. */
const span = fc.oneof(mm(50, 12_000), mm(300, 2500), fc.constantFrom(50, 51, 12_000, 914.4, 1524));
const length = fc.oneof(mm(0, 20_000), mm(0, 200), fc.constantFrom(0, 20_000));
const allowance = fc.oneof(mm(0, 3000), mm(0, 200), fc.constantFrom(0, 3000));
const part = fc.oneof(mm(0.1, 500), mm(5, 60));
const spacing = fc.oneof(mm(20, 20_000), mm(40, 400), fc.constantFrom(20, 20_000));
const size = fc.oneof(mm(0.01, 20_000), mm(1, 400));

function some<T extends object>(record: { [K in keyof T]-?: fc.Arbitrary<NonNullable<T[K]>> }) {
  return fc.record(record as { [K in keyof T]: fc.Arbitrary<T[K]> }, { requiredKeys: [] });
}

type Group<G extends keyof MakingInput> = NonNullable<MakingInput[G]>;

/** Every setting, set or left out, anywhere in its range: most such shades are impossible. */
export const anyMaking: fc.Arbitrary<MakingInput> = some<MakingInput>({
  mount: some<Group<"mount">>({
    insideWidthOffMm: allowance,
    insideLengthOffMm: allowance,
    overlapSideMm: allowance,
    overlapAboveMm: allowance,
    overlapBelowMm: allowance,
    floorClearanceMm: allowance,
    boardShorterMm: allowance,
    neighbourGapMm: allowance,
    foldRoomMm: allowance,
    handClearanceMm: allowance,
  }),
  fold: some<Group<"fold">>({
    rule: fc.constantFrom("half-fold", "no-headrail", "even-fold"),
    gradeStepMm: length,
    headrailMm: length,
    skirtMm: length,
    topDropMm: length,
    cascadeMm: length,
    largestSpacingMm: spacing,
    smallestSpacingMm: spacing,
    rows: fc.oneof(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 200 })),
    spacingMm: spacing,
    stackMm: size,
    hemBarMm: length,
    ringStackMm: length,
  }),
  columns: some<Group<"columns">>({
    largestSpacingMm: spacing,
    edgeInsetMm: size,
    count: fc.oneof(fc.integer({ min: 2, max: 15 }), fc.integer({ min: 2, max: 60 })),
  }),
  hems: some<Group<"hems">>({
    sideTurnMm: length,
    sideTurns: fc.constantFrom(1, 2),
    bottomTurnMm: length,
    bottomTurns: fc.constantFrom(1, 2),
    boardAllowanceMm: length,
    seamMm: length,
    makeUp: fc.constantFrom(...MAKE_UPS),
    corner: fc.constantFrom(...HEM_CORNERS),
    joins: fc.constantFrom(...JOIN_POSITIONS),
  }),
  lining: some<Group<"lining">>({
    widthOverFinishedMm: length,
    lengthOverFinishedMm: length,
    squaringMm: length,
    interliningCut: fc.constantFrom(...INNER_CUTS),
    blackoutCut: fc.constantFrom(...INNER_CUTS),
    innerNarrowerMm: length,
    innerLongerMm: length,
    railroad: fc.constantFrom(...RAILROADS),
    bonded: fc.boolean(),
    bondedBendingMm: mm(3, 200),
  }),
  ribs: some<Group<"ribs">>({
    kind: fc.constantFrom(...RIB_KINDS),
    face: fc.constantFrom(...RIB_FACES),
    at: fc.constantFrom(...RIB_POSITIONS),
    pocketMm: length,
    rib: fc.constantFrom("rib-rod-4", "rib-dowel-8", "no-such-rib"),
    shorterMm: length,
  }),
  hobble: some<Group<"hobble">>({
    rule: fc.constantFrom(...HOBBLE_RULES),
    tapeMm: spacing,
    fullness: mm(1, 3),
    clothMm: spacing,
    match: fc.boolean(),
    repeats: fc.integer({ min: 1, max: 12 }),
    folds: fc.integer({ min: 1, max: 12 }),
  }),
  tuck: some<Group<"tuck">>({
    spacingMm: spacing,
    depthMm: length,
    face: fc.constantFrom(...RIB_FACES),
  }),
  relax: some<Group<"relax">>({
    dipMm: length,
    extraWidthMm: length,
    lowerEdge: fc.constantFrom(...LOWER_EDGES),
    widening: fc.constantFrom(...WIDENINGS),
    weight: fc.constantFrom(...RELAXED_WEIGHTS),
  }),
  pleat: some<Group<"pleat">>({
    foldedMm: length,
    kind: fc.constantFrom(...PLEAT_KINDS),
    held: fc.constantFrom(...PLEATS_HELD),
    sewnAtTopMm: length,
    openAtHemMm: length,
    insetMm: length,
    insetShare: fc.oneof(mm(0, 0.5), fc.constantFrom(0, 0.5)),
    cut: fc.constantFrom(...PLEAT_CUTS),
    poufMm: spacing,
    edges: fc.constantFrom(...EDGE_PLEATS),
    firstRingMm: length,
    bar: fc.constantFrom(...PLEAT_BARS),
    centreLine: fc.boolean(),
  }),
  pouf: some<Group<"pouf">>({ marks: fc.integer({ min: 0, max: 6 }), clothMm: length }),
  gather: some<Group<"gather">>({
    lengthFullness: mm(1, 5),
    widthFullness: mm(1, 5),
    scallopExtraMm: length,
    sagMm: length,
    hemExtraMm: length,
    hemRowMm: length,
    drawInMm: length,
    weight: fc.constantFrom(...HEM_WEIGHTS),
    frillMm: length,
    frillEdges: fc.constantFrom(...FRILL_EDGES),
    frillDouble: fc.boolean(),
    frillFullness: mm(1, 5),
  }),
  pattern: some<Group<"pattern">>({
    halfDropRule: fc.constantFrom("whole-repeat-per-order", "half-repeat-if-needed"),
    placementRepeat: fc.boolean(),
    place: fc.constantFrom(...MOTIF_ANCHORS),
    offsetMm: length,
    across: fc.constantFrom(...MOTIF_ACROSS),
    acrossMm: length,
    railroad: fc.constantFrom(...RAILROADS),
    pile: fc.constantFrom(...PILES),
  }),
  banding: some<Group<"banding">>({
    where: fc.constantFrom(...BANDINGS),
    widthMm: size,
    insetMm: length,
    turnMm: length,
    corners: fc.constantFrom(...BAND_CORNERS),
    bottomBandMm: length,
  }),
  lift: some<Group<"lift">>({
    kind: fc.constantFrom(...LIFT_KINDS),
    rearCords: fc.constantFrom(...REAR_GUIDES),
    controlSide: fc.constantFrom("left", "right"),
    lock: fc.constantFrom(
      "lock-4-slot",
      "lock-3-slot",
      "lock-6-slot",
      "lock-5-slot",
      "no-such-lock",
      "odd-lock",
    ),
    cord: fc.constantFrom("cord-1-4", "cord-0-9", "cord-1-8", "no-such-cord", "odd-cord"),
    eye: fc.constantFrom("eye-12", "pulley-16", "odd-eye", "no-such-eye"),
    turnEye: fc.constantFrom("eye-12", "pulley-16", "odd-eye", "no-such-eye"),
    ring: fc.constantFrom("ring-12", "no-such-ring"),
    seat: fc.constantFrom("auto", "between", "outside"),
    seatMm: length,
    straightRunMm: length,
    tailMm: length,
    knotsMm: length,
    cleatAboveFloorMm: length,
    tube: fc.constantFrom("tube-12", "tube-25", "odd-tube", "no-such-tube"),
    drive: fc.constantFrom(...CATALOGUE.drives.map(({ id }) => id), "odd-drive", "no-such-drive"),
    loopDropMm: length,
    loopJoint: fc.constantFrom(...LOOP_JOINTS),
    wandMm: length,
    rearRelease: fc.constantFrom(...REAR_RELEASES),
    leadLooseMm: length,
    leadLowMm: length,
  }),
  board: some<Group<"board">>({
    section: fc.constantFrom("board-1x2", "board-1x3", "board-1x4", "no-such-board"),
    bar: fc.constantFrom("bar-steel-19x3", "bar-aluminium-19x3", "bar-wood-25x3", "no-such-bar"),
    barShorterMm: length,
    attachment: fc.constantFrom("staple", "hook-and-loop"),
    substrate: fc.constantFrom("timber", "masonry", "hollow-wall", "unknown"),
    wood: fc.constantFrom(...WOODS),
    wallWood: fc.constantFrom(...WOODS),
    screwGauge: fc.constantFrom(...SCREW_GAUGES),
    bracketLegMm: size,
    fixingRatedN: mm(1, 100_000),
    bracketEndMm: length,
    bracketSpacingMm: spacing,
    coverFrom: fc.constantFrom(...COVER_FROM),
    returns: fc.constantFrom(...RETURNS),
    returnDropMm: length,
    dustStripMm: length,
  }),
});

const layer = fc.constantFrom(undefined, null, "cloth-a", "cloth-b", "no-such-cloth");

const anyBeside = fc.record({
  angleDeg: mm(60, 300),
  wallMm: fc.oneof(length, mm(0, 300)),
  shade: fc.boolean(),
});

const anyWindow = (index: number): fc.Arbitrary<WindowInput> =>
  fc.record({
    id: fc.constant(`window-${index}`),
    name: fc.string({ minLength: 1, maxLength: 20, unit: fc.constantFrom(..."abcÄ<>&\"'/ ") }),
    opening: fc.record({
      widthsMm: fc.array(span, { minLength: 1, maxLength: 3 }),
      heightsMm: fc.array(span, { minLength: 1, maxLength: 3 }),
      diagonalsMm: fc.option(fc.tuple(span, span), { nil: undefined }),
      recessDepthMm: fc.option(length, { nil: undefined }),
      sillAboveFloorMm: fc.option(length, { nil: undefined }),
      footholds: fc.option(
        fc.array(fc.record({ kind: fc.constantFrom(...FOOTHOLD_KINDS), heightMm: length }), { maxLength: 3 }),
        { nil: undefined },
      ),
      left: fc.option(anyBeside, { nil: undefined }),
      right: fc.option(anyBeside, { nil: undefined }),
      head: fc.option(
        fc.record({
          kind: fc.constantFrom(...HEADS),
          fallMm: fc.oneof(length, mm(1, 400)),
          high: fc.constantFrom("left" as const, "right" as const),
        }),
        { nil: undefined },
      ),
      obstructions: fc.option(
        fc.array(
          fc.record({
            kind: fc.constantFrom("handle", "crank", "sill", "tiles", "other"),
            projectionMm: length,
          }),
          { maxLength: 2 },
        ),
        { nil: undefined },
      ),
    }),
    shade: fc.record({
      style: fc.option(fc.constantFrom(...STYLES), { nil: undefined }),
      mount: fc.constantFrom("inside", "outside", "to-size"),
      face: fc.constantFrom(undefined, "cloth-a", "cloth-b", "no-such-cloth"),
      lining: layer,
      interlining: layer,
      blackout: layer,
      banding: layer,
      bottomBand: layer,
      making: fc.option(anyMaking, { nil: undefined }),
    }),
  });

const anyCloth = (id: string) =>
  fc.record({
    id: fc.constant(id),
    name: fc.constant(`Cloth ${id}`),
    usableWidthMm: fc.oneof(mm(100, 10_000), mm(900, 3300)),
    massGsm: mm(1, 3000),
    thicknessMm: fc.option(mm(0.01, 50), { nil: undefined }),
    kind: fc.constantFrom(undefined, ...CLOTH_KINDS),
    bendingLengthMm: fc.option(fc.oneof(mm(3, 200), mm(15, 40)), { nil: undefined }),
    shrinkLength: fc.option(mm(0, 0.5), { nil: undefined }),
    shrinkWidth: fc.option(mm(0, 0.5), { nil: undefined }),
    bowShare: fc.option(mm(0, 0.5), { nil: undefined }),
    skewShare: fc.option(mm(0, 0.5), { nil: undefined }),
    direction: fc.constantFrom(undefined, ...DIRECTIONS),
    nap: fc.constantFrom(undefined, true, false),
    pricePerM: fc.option(mm(0, 1e7), { nil: undefined }),
    soldByMm: fc.option(size, { nil: undefined }),
    repeat: fc.option(
      fc.record({
        verticalMm: fc.oneof(size, mm(20, 900)),
        horizontalMm: fc.option(fc.oneof(size, mm(20, 1500)), { nil: undefined }),
        startXMm: fc.option(length, { nil: undefined }),
        match: fc.constantFrom("straight" as const, "half-drop" as const),
      }),
      { nil: undefined },
    ),
  });

const anyCutting = fc.record(
  {
    way: fc.constantFrom(...CUT_WAYS),
    stages: fc.integer({ min: 2, max: 6 }),
    tableMm: fc.oneof(size, mm(1500, 6000)),
    gapMm: mm(0, 100),
    keepClothWidthMm: size,
    keepClothLengthMm: size,
    keepLengthMm: size,
    sawKerfMm: mm(0, 20),
    seed: fc.integer({ min: 0, max: 2 ** 31 - 1 }),
  },
  { requiredKeys: [] },
);

const anyFlaw = fc.record(
  { fromMm: mm(0, 5000), lengthMm: mm(0.01, 800), xMm: mm(0, 2000), widthMm: mm(0.01, 2000) },
  { requiredKeys: ["fromMm", "lengthMm"] },
);

/** A bolt or remnant of one of the cloths, and a length of some part. */
const anyStock = fc.record({
  cloth: fc.array(
    fc.record(
      {
        cloth: fc.constantFrom("cloth-a", "cloth-b"),
        widthMm: fc.oneof(size, mm(300, 1500)),
        lengthMm: mm(1, 8000),
        lot: fc.constantFrom("1", "2"),
        pricePerM: mm(0, 100),
        flaws: fc.array(anyFlaw, { maxLength: 2 }),
        repeatStartMm: mm(0, 600),
      },
      { requiredKeys: ["cloth", "lengthMm"] },
    ),
    { maxLength: 2 },
  ),
  lengths: fc.array(
    fc.record({
      part: fc.constantFrom("board-1x2", "bar-steel-19x3", "odd-cord", "odd-tube"),
      lengthMm: mm(1, 9000),
    }),
    { maxLength: 2 },
  ),
});

/** Any job that the schema accepts, sensible or not, with one to three windows. */
export const anyJob: fc.Arbitrary<Job> = fc
  .record({
    ruler: fc.constantFrom(...RULERS),
    place: fc.constantFrom(undefined, ...PLACES),
    purpose: fc.constantFrom(undefined, ...PURPOSES),
    workshop: fc.option(anyMaking, { nil: undefined }),
    windows: fc.tuple(anyWindow(1), fc.option(anyWindow(2)), fc.option(anyWindow(3))),
    inLine: fc.oneof({ weight: 2, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: anyInLine }),
    cloths: fc.tuple(anyCloth("cloth-a"), anyCloth("cloth-b")),
    lock: fc.record({
      id: fc.constant("odd-lock"),
      name: fc.constant("Odd lock"),
      housingLengthMm: fc.option(part, { nil: undefined, freq: 5 }),
      housingWidthMm: fc.option(part, { nil: undefined, freq: 5 }),
      housingHeightMm: fc.option(part, { nil: undefined, freq: 5 }),
      dividerWires: fc.option(fc.integer({ min: 0, max: 12 }), { nil: undefined, freq: 5 }),
      cordsMax: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined, freq: 5 }),
      cordNominalMm: fc.option(mm(0.3, 6), { nil: undefined }),
      endGapMm: fc.option(mm(0, 6), { nil: undefined }),
    }),
    cord: fc.record({
      id: fc.constant("odd-cord"),
      name: fc.constant("Odd cord"),
      diameterMm: fc.option(mm(0.3, 6), { nil: undefined, freq: 8 }),
      breakingN: fc.option(mm(1, 20_000), { nil: undefined }),
      stretchAt10N: fc.option(mm(0, 0.5), { nil: undefined }),
    }),
    eye: fc.record({
      id: fc.constant("odd-eye"),
      name: fc.constant("Odd eye"),
      outsideDiameterMm: part,
      friction: fc.option(mm(0, 1), { nil: undefined }),
      pulleyShare: fc.option(mm(0.5, 1), { nil: undefined }),
    }),
    tube: fc.record({
      id: fc.constant("odd-tube"),
      name: fc.constant("Odd tube"),
      diameterMm: part,
      wallMm: fc.option(mm(0.1, 50), { nil: undefined }),
      metal: fc.constantFrom(undefined, ...TUBE_METALS),
      massGPerM: fc.option(mm(1, 20_000), { nil: undefined }),
      stockMm: fc.option(size, { nil: undefined }),
      spoolCoreMm: fc.option(part, { nil: undefined }),
      spoolFlangeMm: fc.option(part, { nil: undefined }),
      spoolLengthMm: fc.option(part, { nil: undefined }),
      spoolWindMm: fc.option(part, { nil: undefined }),
    }),
    drive: fc.record({
      id: fc.constant("odd-drive"),
      name: fc.constant("Odd drive"),
      kind: fc.constantFrom(...DRIVE_KINDS),
      lengthMm: part,
      heightMm: part,
      depthMm: part,
      massMaxKg: fc.option(mm(0.1, 500), { nil: undefined }),
      massMinKg: fc.option(mm(0, 500), { nil: undefined }),
      ratio: fc.option(mm(0.1, 200), { nil: undefined }),
      wheelMm: fc.option(part, { nil: undefined }),
      crankMm: fc.option(part, { nil: undefined }),
      detachable: fc.option(fc.boolean(), { nil: undefined }),
      efficiency: fc.option(mm(0.05, 1), { nil: undefined }),
      torqueNm: fc.option(mm(0.01, 1000), { nil: undefined }),
      turnsPerMin: fc.option(mm(0.1, 1000), { nil: undefined }),
      power: fc.option(fc.constantFrom(...POWERS), { nil: undefined }),
    }),
    cutting: fc.option(anyCutting, { nil: undefined }),
    stock: anyStock,
  })
  .map(
    ({
      ruler,
      place,
      purpose,
      workshop,
      windows,
      inLine,
      cloths,
      lock,
      cord,
      eye,
      tube,
      drive,
      cutting,
      stock,
    }) =>
      jobSchema.parse({
        format: "shadewright-job",
        version: 1,
        id: "any-job",
        name: "Any job",
        place,
        purpose,
        units: { system: ruler === "1 mm" ? "metric" : "imperial", ruler },
        rooms: [{ id: "room-1", name: "Room", windows: windows.filter((window) => window !== null), inLine }],
        cloths,
        hardware: { locks: [lock], cords: [cord], eyes: [eye], tubes: [tube], drives: [drive] },
        workshop,
        cutting,
        stock: {
          cloth: stock.cloth.map((one, i) => ({ id: `piece-${i}`, ...one })),
          lengths: stock.lengths.map((one, i) => ({ id: `length-${i}`, ...one })),
        },
      }),
  );

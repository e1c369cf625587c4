import type { Plan, ShadePlan } from "../plan/index.ts";
import type { CordRun, Step } from "../shade/index.ts";
import { cite } from "../sources/index.ts";
import { inches, type UnitChoice } from "../units/index.ts";

/**
 * A plan written by hand for tests of this room: run X1 of the trade notes, 36 × 60 in outside,
 * seven rows from 3.8 in every 7.6 in, five columns from 2 in every 8 in, cords of 94.2 to 126.2 in.
 */
const IMPERIAL: UnitChoice = { system: "imperial", ruler: "1/8 in" };

const ROWS_IN = [3.8, 11.4, 19.0, 26.6, 34.2, 41.8, 49.4];
const COLUMNS_IN = [2, 10, 18, 26, 34];
const CORDS_IN = [126.2, 118.2, 110.2, 102.2, 94.2];

function cord(number: number): CordRun {
  const columnX = inches(COLUMNS_IN[number - 1] ?? 0);
  const lengthMm = inches(CORDS_IN[number - 1] ?? 0);
  return {
    number,
    columnX,
    entersFrom: number < 5 ? "left" : "right",
    slot: ((number - 1) % 3) + 1,
    placeInSlot: number < 4 ? 1 : 2,
    riseMm: inches(56.2),
    runMm: inches(34) - columnX,
    tailMm: inches(30),
    knotsMm: inches(6),
    lengthMm,
    cutMm: inches(Math.ceil((CORDS_IN[number - 1] ?? 0) * 8) / 8),
    path: [{ xMm: columnX, zMm: 20 }],
    eyes: [1, 2, 3, 4, 5].slice(number - 1),
    loadN: 2,
    pullN: 3,
  };
}

const step = (
  id: string,
  chapter: Step["chapter"],
  title: string,
  text: string,
  more: Partial<Step> = {},
): Step => ({
  id,
  chapter,
  title,
  text,
  ...more,
});

const STEPS: Step[] = [
  step(
    "measure-again",
    "measure",
    "Measure the opening again",
    "Use a steel tape. Write the three widths and the three heights down on the measure sheet.",
    { sheet: "front", check: "Widths and heights are those of the plan." },
  ),
  step("cut-square", "cut", "Square the end", "Pull a thread across the cloth and cut along it.", {
    sheet: "cutting",
  }),
  step("cut-face", "cut", "Cut the face", "Cut one piece 42 in wide and 66 1⁄2 in long.", {
    check: "Both diagonals of the piece are equal.",
    caution: "Check the size twice: it is cut once.",
  }),
  step("make-hems", "make", "Press the side hems", "Turn 1 1⁄2 in twice at each side and press.", {
    sheet: "back",
  }),
  step(
    "make-mark",
    "make",
    "Mark the rows",
    "From the hem up: 3 3⁄4, 11 3⁄8, 19, 26 5⁄8, 34 1⁄4, 41 3⁄4, 49 3⁄8 in.",
    { sheet: "marking" },
  ),
  step("board-drill", "board", "Drill for the eyes", "Drill five holes above the columns.", {
    sheet: "board",
    caution: "Wear eye protection.",
  }),
  step("string-cords", "string", "Thread the lock", "Thread the cords in the order of the list.", {
    sheet: "lock",
  }),
  step(
    "hang-board",
    "hang",
    "Fix the board",
    "Screw the brackets to the wall and the board to the brackets.",
    { sheet: "front" },
  ),
  step(
    "level-hem",
    "level",
    "Level the hem",
    "Measure from the board to the hem at both ends and in the middle.",
  ),
  step(
    "train-folds",
    "train",
    "Train the folds",
    "Raise the shade, dress each fold by hand and tie it. Leave it for some days.",
    { sheet: "side" },
  ),
];

export function handMadeShade(changes: Partial<ShadePlan> = {}): ShadePlan {
  return {
    shadeId: "shade-x1",
    windowName: "Landing window",
    roomId: "room-1",
    roomName: "Landing",
    style: "flat",
    mount: "outside",
    opening: {
      widthsMm: [inches(33), inches(33.125), inches(33)],
      heightsMm: [inches(54)],
      obstructions: [],
    },
    size: {
      finishedWidthMm: inches(36),
      finishedLengthMm: inches(60),
      boardLengthMm: inches(35.75),
      openingWidthMm: inches(33.125),
      openingHeightMm: inches(54),
      widthSpreadMm: inches(0.125),
      heightSpreadMm: 0,
      toMeasure: ["the height at left, centre and right", "both diagonals"],
    },
    grid: {
      rows: ROWS_IN.map((fromHem, i) => ({
        number: i + 1,
        fromHemMm: inches(fromHem),
        yMm: inches(60 - fromHem),
      })),
      columns: COLUMNS_IN.map((x, i) => ({ number: i + 1, xMm: inches(x) })),
      bottomSectionMm: inches(3.8),
      spacingsMm: Array.from({ length: 6 }, () => inches(7.6)),
      topSectionMm: inches(10.6),
      columnSpacingMm: inches(8),
      headrailMm: inches(3),
      skirtMm: 0,
      raisedHeightMm: inches(6.8),
      travelMm: inches(53.2),
      coveredWhenRaisedMm: inches(2),
    },
    cloth: {
      layers: [
        {
          layer: "face",
          clothId: "plain-cotton",
          clothName: "Plain cotton, 54 in",
          cutWidthMm: inches(42),
          cutLengthMm: inches(66.5),
          repeatLengthMm: inches(66.5),
          usableWidthMm: inches(54),
          widths: 1,
          panels: [
            {
              id: "face-1",
              label: "Face",
              widthMm: inches(42),
              lengthMm: inches(66.5),
              joinedXMm: 0,
              full: false,
            },
          ],
          lays: [{ panelId: "face-1", xMm: 0, yMm: 0, widthMm: inches(42), lengthMm: inches(66.5) }],
          lengthMm: inches(66.5),
          buyMm: inches(72),
          makeUp: [
            { label: "Finished size", widthMm: inches(36), lengthMm: inches(60) },
            { label: "Side hems", widthMm: inches(6), lengthMm: 0 },
            { label: "Bottom hem", widthMm: 0, lengthMm: inches(3) },
            { label: "Round the board", widthMm: 0, lengthMm: inches(3.5) },
          ],
        },
      ],
      ribLines: [],
    },
    mass: { parts: [], totalKg: 1.1, clothGsm: 350 },
    lift: {
      kind: "cord-lock",
      controlSide: "right",
      lockId: "lock-3",
      lockName: "Cord lock, 3 slots",
      cordId: "cord-14",
      cordName: "Braided cord",
      cordDiameterMm: 1.4,
      housingLengthMm: 40,
      housingWidthMm: 25,
      housingHeightMm: 20,
      slots: [1, 2, 3].map((number) => ({
        number,
        zMm: 8 + number * 6,
        usable: true,
        cords: [1, 2, 3, 4, 5].filter((one) => (one - 1) % 3 === number - 1),
      })),
      dividerWires: 2,
      seat: {
        xMm: inches(30),
        zMm: 20,
        feasibleMm: [[inches(27), inches(33)]],
        kind: "between",
        forced: false,
        facing: "right",
        screwsMm: [],
      },
      eyes: COLUMNS_IN.map((x) => ({ xMm: inches(x), zMm: 20 })),
      cords: [1, 2, 3, 4, 5].map(cord),
      threading: [5, 4, 3, 2, 1],
      cordTotalMm: inches(551),
      pullN: 20,
      heldN: 11,
      tailLoweredMm: inches(30),
      tailRaisedMm: inches(83.2),
    } as ShadePlan["lift"],
    board: {
      sectionId: "board-1x2",
      sectionName: "Pine, 1 × 2 nominal",
      lengthMm: inches(35.75),
      depthMm: 38,
      thicknessMm: 19,
      leftMm: inches(0.125),
      eyes: COLUMNS_IN.map((x) => ({ xMm: inches(x), zMm: 20 })),
      fixing: "brackets",
      brackets: [
        { number: 1, xMm: inches(4) },
        { number: 2, xMm: inches(32) },
      ],
      screws: { count: 4, lengthMm: inches(2), into: "a stud or header" },
      covering: { widthMm: 140, lengthMm: inches(38) },
      barLengthMm: inches(35.5),
      barName: "Steel flat, 25 × 3 mm",
      loadN: 60,
    } as ShadePlan["board"],
    steps: STEPS,
    cost: {
      currency: "USD",
      shopping: [
        {
          id: "cloth-face",
          group: "cloth",
          label: "Plain cotton, 54 in",
          needText: "1.85 yd",
          buyText: "2 yd",
          quantity: 2,
          unit: "yd",
          price: 12,
          cost: 24,
        },
      ],
      labour: [{ id: "sew", label: "Cut and sew", minutes: 300, cost: 150 }],
      materials: 24,
      labourCost: 150,
      tax: 0,
      total: 174,
      unpriced: ["Cord lock"],
    } as ShadePlan["cost"],
    cautions: [
      {
        id: "children-and-cords",
        title: "Cords and children",
        text: "Window cords strangle small children: quickly, silently, and with someone in the next room.",
        cite: cite("common-practice"),
      },
      {
        id: "defer",
        title: "What comes before this plan",
        text: "Local codes and the judgement of those licensed to do the work come before anything printed here.",
        cite: cite("common-practice"),
      },
    ],
    workings: [
      {
        id: "fold.half-fold",
        label: "Half fold",
        symbol: "f",
        formula: "(L − T) / N",
        inputs: [
          { symbol: "L", label: "finished length", value: inches(60), unit: "mm" },
          { symbol: "T", label: "headrail allowance", value: inches(3), unit: "mm" },
          { symbol: "N", label: "half folds", value: 15, unit: "count" },
        ],
        value: inches(3.8),
        unit: "mm",
        cite: cite("common-practice"),
      },
    ],
    findings: [
      {
        id: "lift.hanging-tail",
        weight: "fix",
        stage: "lift",
        shadeId: "shade-x1",
        text: "Raised, the tail hangs 83 1⁄4 in below the lock.",
        cite: cite("common-practice"),
        remedies: [],
      },
    ],
    ...changes,
  };
}

export function handMadePlan(shades: ShadePlan[] = [handMadeShade()], changes: Partial<Plan> = {}): Plan {
  return {
    format: "shadewright-plan",
    version: 1,
    jobId: "job-x1",
    jobName: "Ferry House",
    demo: true,
    units: IMPERIAL,
    shades,
    findings: [],
    workings: [],
    cost: shades[0]?.cost ?? handMadeShade().cost,
    ...changes,
  } as Plan;
}

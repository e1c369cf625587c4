import {
  CATALOGUE,
  type Catalogue,
  colourOf,
  type JobInput,
  LIFT_TRAITS,
  USUAL_KIND,
} from "../src/job/index.ts";
import type {
  BoardPlan,
  ClothPlan,
  CordLockLift,
  CordRun,
  Grid,
  Layer,
  LayerCut,
  Mass,
  Size,
} from "../src/shade-plan/index.ts";
import { flatForm } from "../src/styles/folding/flat-form.ts";
import { inches } from "../src/units/index.ts";
import { resolvedWith } from "./job-with.ts";

type WindowInput = Parameters<typeof resolvedWith>[0];

/**
 * A planned shade written down by hand, so that the last rooms can be tested without the first:
 * run X1 of the trade notes unless said otherwise (36 × 60 in, 7 rows of 7.6 in, 5 columns,
 * lock on the right, tail 30 in, knots 6 in).
 */
export interface HandShade {
  widthIn?: number;
  lengthIn?: number;
  layers?: { layer: Layer; cutWidthIn: number; cutLengthIn: number }[];
  window?: WindowInput;
  job?: Partial<JobInput>;
}

/** A shelf with no part on it. */
export const NO_PARTS = Object.fromEntries(
  Object.keys(CATALOGUE).map((kind) => [kind, []]),
) as unknown as Catalogue;

export const X1_CORDS_IN = [126.2, 118.2, 110.2, 102.2, 94.2];

export function handShade({ widthIn = 36, lengthIn = 60, layers, window, job }: HandShade = {}) {
  const resolved = resolvedWith(
    {
      opening: { widthsMm: [inches(widthIn)], heightsMm: [inches(lengthIn)], sillAboveFloorMm: inches(30) },
      ...window,
      shade: { mount: "to-size", ...window?.shade },
    },
    job,
  );
  const size: Size = {
    finishedWidthMm: inches(widthIn),
    finishedLengthMm: inches(lengthIn),
    boardLengthMm: inches(widthIn - 0.25),
    topAboveFloorMm: inches(30 + lengthIn),
    hemAboveFloorMm: inches(30),
    openingWidthMm: inches(widthIn),
    openingHeightMm: inches(lengthIn),
    widthSpreadMm: 0,
    heightSpreadMm: 0,
    toMeasure: [],
  };
  const grid = handGrid();
  return {
    resolved,
    size,
    grid,
    form: flatForm(resolved, size, grid),
    styleSteps: [],
    cloth: handCloth(
      layers ?? [
        { layer: "face", cutWidthIn: widthIn + 6, cutLengthIn: lengthIn + 6.5 },
        { layer: "lining", cutWidthIn: widthIn, cutLengthIn: lengthIn + 6.5 },
      ],
      resolved.cloths,
    ),
    mass: { parts: [], totalKg: 1.5, clothGsm: 370, onBoardKg: 0 } satisfies Mass,
    lift: handLift(),
    board: handBoard(size),
  };
}

function handGrid(): Grid {
  const rowsIn = [3.8, 11.4, 19.0, 26.6, 34.2, 41.8, 49.4];
  return {
    rows: rowsIn.map((fromHem, i) => ({
      number: i + 1,
      fromHemMm: inches(fromHem),
      yMm: inches(60 - fromHem),
    })),
    columns: [2, 10, 18, 26, 34].map((x, i) => ({ number: i + 1, xMm: inches(x) })),
    bottomSectionMm: inches(3.8),
    spacingsMm: Array.from({ length: 6 }, () => inches(7.6)),
    topSectionMm: inches(10.6),
    columnSpacingMm: inches(8),
    headrailMm: inches(3),
    skirtMm: 0,
    raisedHeightMm: inches(6.8),
    travelMm: inches(53.2),
    coveredWhenRaisedMm: inches(6.8),
  };
}

function handCloth(
  layers: NonNullable<HandShade["layers"]>,
  cloths: ReturnType<typeof resolvedWith>["cloths"],
): ClothPlan {
  return {
    layers: layers.map(({ layer, cutWidthIn, cutLengthIn }): LayerCut => {
      const cloth = cloths[layer] ?? cloths.face;
      const [widthMm, lengthMm] = [inches(cutWidthIn), inches(cutLengthIn)];
      const id = `${layer}-1`;
      return {
        layer,
        clothId: cloth.id,
        clothName: cloth.name,
        colour: colourOf(cloth, USUAL_KIND[layer]),
        cutWidthMm: widthMm,
        cutLengthMm: lengthMm,
        repeatLengthMm: lengthMm,
        usableWidthMm: cloth.usableWidthMm,
        widths: 1,
        panels: [{ id, label: layer, widthMm, lengthMm, joinedXMm: 0, full: false }],
        lays: [{ panelId: id, xMm: 0, yMm: 0, widthMm, lengthMm }],
        lengthMm,
        buyMm: lengthMm,
        makeUp: [],
        edges: { leftMm: 0, rightMm: 0, topMm: 0, bottomMm: 0 },
        turned: false,
        joinsAt: "none",
        seamsMm: [],
        startWasteMm: 0,
      };
    }),
    trims: [
      {
        id: "board-cover",
        label: "Board cover",
        clothId: (cloths.lining ?? cloths.face).id,
        clothName: (cloths.lining ?? cloths.face).name,
        count: 1,
        widthMm: inches(6),
        lengthMm: inches(38),
        grain: "free",
        why: "",
        hangs: false,
      },
    ],
    trimBolts: [],
    bands: [],
    corner: { kind: "square", outMm: inches(3), downMm: inches(3), lines: [] },
    ribLines: [],
  };
}

function handLift(): CordLockLift {
  const eyes = [2, 10, 18, 26, 34].map((x) => ({ xMm: inches(x), zMm: 19 }));
  const lockMm = inches(31);
  return {
    kind: "cord-lock",
    ...LIFT_TRAITS["cord-lock"],
    controlSide: "right",
    rearCords: "open",
    lockId: "lock-4-slot",
    lockName: "Four-slot lock",
    cordId: "cord-1-4",
    cordName: "Lift cord 1.4 mm",
    cordDiameterMm: 1.4,
    housingLengthMm: 30,
    housingWidthMm: 22,
    housingHeightMm: 24,
    eyeDiameterMm: 12,
    entry: {
      rollerMm: 9,
      rollerLengthMm: 18,
      axisMm: 12,
      eyeLevelMm: 8.9,
      mouthLevelMm: 7.4,
      lockLevelMm: 6.8,
      climbDeg: 3,
    },
    slots: [
      { number: 1, zMm: 10.75, usable: true, cords: [1, 2] },
      { number: 2, zMm: 16.25, usable: true, cords: [3, 4] },
      { number: 3, zMm: 21.75, usable: true, cords: [5] },
      { number: 4, zMm: 27.25, usable: true, cords: [] },
    ],
    dividerWires: 3,
    seat: {
      xMm: lockMm,
      zMm: 19,
      feasibleMm: [[inches(28), inches(32.5)]],
      kind: "between",
      forced: false,
      chosenFor: "maker",
      facing: "right",
      screwsMm: [
        { xMm: lockMm, zMm: 5 },
        { xMm: lockMm, zMm: 33 },
      ],
    },
    eyes,
    cords: X1_CORDS_IN.map((lengthIn, i): CordRun => {
      const eye = eyes[i] ?? { xMm: 0, zMm: 0 };
      return {
        number: i + 1,
        columnX: eye.xMm,
        entersFrom: i < 4 ? "left" : "right",
        slot: [1, 1, 2, 2, 3][i] ?? 1,
        placeInSlot: (i % 2) + 1,
        riseMm: inches(56.2),
        runMm: Math.abs(lockMm - eye.xMm),
        tailMm: inches(30),
        knotsMm: inches(6),
        lengthMm: inches(lengthIn),
        cutMm: inches(Math.ceil(lengthIn * 8) / 8),
        path: [eye, { xMm: lockMm, zMm: 19 }],
        eyes: [1, 2, 3, 4, 5].slice(i, 4),
        loadN: 2,
        pullN: 3,
      };
    }),
    threading: [1, 2, 3, 4, 5],
    cordTotalMm: inches(551.5),
    pullN: 15,
    heldN: 10,
    course: { heights: [], shares: [] },
    tailLoweredMm: inches(30),
    tailRaisedMm: inches(83.2),
    tailEndAboveFloorLoweredMm: inches(59),
    tailEndAboveFloorRaisedMm: inches(5.8),
  };
}

function handBoard(size: Size): BoardPlan {
  return {
    sectionId: "board-1x2",
    sectionName: "1 × 2 board (19 × 38 mm)",
    lengthMm: size.boardLengthMm,
    cutMm: size.boardLengthMm,
    depthMm: inches(1.5),
    thicknessMm: inches(0.75),
    leftMm: inches(0.125),
    eyes: [2, 10, 18, 26, 34].map((x) => ({ xMm: inches(x), zMm: 19 })),
    fixing: "brackets",
    brackets: [4, 18, 32].map((x, i) => ({ number: i + 1, xMm: inches(x) })),
    screws: { count: 3, lengthMm: inches(2), into: "timber" },
    barLengthMm: size.finishedWidthMm - inches(0.5),
    barName: "Flat steel bar 19 × 3 mm",
    loadN: 40,
    stackDepthMm: 30,
  };
}

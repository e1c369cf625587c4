import { type Figure, type Finding, figureRule, type Remedy } from "../figures/index.ts";
import {
  CHILD_PULL,
  type Existing,
  type ExistingTask,
  LIFT_TRAITS,
  type LiftKind,
  settingPatch,
} from "../job/index.ts";
import { type ExistingPlan, slantMm } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { forceText, lengthText, trimmed } from "../units/index.ts";
import { counted } from "../words/index.ts";
import type { ExistingInput } from "./existing-reads.ts";
import { addsRows, FEWEST_COLUMNS, measuredOf } from "./measured-rows.ts";

/** Edges of neighbouring folds that differ by more do not look even. */
const SEEN_UNEVEN = sourced(
  10,
  "mm",
  cite("our-choice", "3/8 in: what the eye sees of folds beside each other"),
);
/** Folds that grow or shrink by the same step from row to row were made so. */
const SAME_STEP_MM = 6;
const UNEVEN_BAYS = sourced(
  1.25,
  "ratio",
  cite("our-choice", "the widest bay a quarter wider than the narrowest"),
);
const CORD_LIFE = sourced(
  5,
  "count",
  cite("from-memory", "lift cord in the sun is changed after about five years"),
);
/** A ring’s share of a hard tug. */
const RING_TUG = sourced(3, "ratio", cite("our-choice", "three times what the ring carries, for a tug"));

const UNEVEN = figureRule({
  id: "existing.uneven-rows",
  label: "Edges of the folds out of line",
  symbol: "u",
  unit: "mm",
  formula: "(S − s) / 2",
  inputs: {
    S: ["mm", "largest spacing of rows", "shade/existing"],
    s: ["mm", "smallest spacing of rows", "shade/existing"],
  },
  cite: cite("geometry", "a fold hangs down by half of its spacing"),
  compute: ({ S, s }) => (S - s) / 2,
});

const SLANTING = figureRule({
  id: "existing.slanting-rows",
  label: "Folds out of level from edge to edge",
  symbol: "w",
  unit: "mm",
  formula: "(S − s) / 2",
  inputs: {
    S: ["mm", "two rows apart at the edge where that is more", "shade/existing"],
    s: ["mm", "the same rows apart at the other edge", "shade/existing"],
  },
  cite: cite("geometry", "a fold hangs down by half of its spacing"),
  compute: ({ S, s }) => (S - s) / 2,
});

const BAYS = figureRule({
  id: "existing.uneven-bays",
  label: "Widest bay between columns over the narrowest",
  symbol: "q",
  unit: "ratio",
  formula: "B / b",
  inputs: {
    B: ["mm", "widest bay", "shade/existing"],
    b: ["mm", "narrowest bay", "shade/existing"],
  },
  cite: cite("geometry"),
  compute: ({ B, b }) => B / b,
});

const RING_TEST = figureRule({
  id: "existing.ring-test",
  label: "Pull at which each ring is tried",
  symbol: "Q",
  unit: "N",
  formula: "max(P, k·T)",
  inputs: {
    P: ["N", "a child’s pull at the cord"],
    k: ["ratio", "for a tug"],
    T: ["N", "load of the heaviest cord", "figure:lift.held", "figure:shape.columns"],
  },
  cite: RING_TUG.cite,
  compute: ({ P, k, T }) => Math.max(P, k * T),
});

interface Judged {
  findings: Finding[];
  workings: Figure[];
}

/** What speaks against the measured rows and columns, the rings, the cords and the chosen lift. */
export function judgeExisting(input: ExistingInput, existing: Existing, plan: ExistingPlan): Judged {
  return together([
    outside(input, existing),
    oneSided(input, existing),
    crossingRows(input),
    unevenRows(input),
    slantingRows(input),
    wideRows(input, existing),
    highTopRow(input),
    unevenBays(input, existing),
    rings(input, existing),
    cords(input, existing, plan),
    wrongLift(input, existing),
  ]);
}

function together(all: Judged[]): Judged {
  return {
    findings: all.flatMap(({ findings }) => findings),
    workings: all.flatMap(({ workings }) => workings),
  };
}

const NOTHING: Judged = { findings: [], workings: [] };

function base({ shade }: ExistingInput, field: string) {
  return {
    stage: ["rowsFromHemMm", "rowsFromHemRightMm", "columnsFromLeftMm"].includes(field) ? "shape" : "rig",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/existing/${field}`,
  } as const;
}

/** One more thing to do. */
function doAlso({ shade }: ExistingInput, task: ExistingTask, label: string): Remedy {
  return { label, patch: [{ op: "add", path: `${shade.path}/shade/existing/tasks/-`, value: task }] };
}

function outside(input: ExistingInput, existing: Existing): Judged {
  const { outside: count, rows, columnsMm } = measuredOf(existing, input.size);
  const { size, shade } = input;
  if (count === 0 && (rows.length === 0 || columnsMm.length < FEWEST_COLUMNS)) return tooFew(input);
  if (count === 0) return NOTHING;
  const text = (mm: number) => lengthText(mm, shade.units);
  return {
    findings: [
      {
        ...base(input, "rowsFromHemMm"),
        id: "existing.outside",
        severity: "stop",
        text: `${counted(count, "measure")} of rows or columns ${count === 1 ? "lies" : "lie"} beyond the shade, which is ${text(size.finishedWidthMm)} wide and ${text(size.finishedLengthMm)} long, and ${count === 1 ? "is" : "are"} left out. Rows are measured up from the hem, columns from the left edge seen from the room: measure again.`,
        cite: cite("geometry"),
        remedies: [],
      },
    ],
    workings: [],
  };
}

function tooFew(input: ExistingInput): Judged {
  return {
    findings: [
      {
        ...base(input, "columnsFromLeftMm"),
        id: "existing.too-few",
        severity: "stop",
        text: "A shade hangs on two columns and a row of rings at least, and fewer were measured: it is planned as its style would have it. Measure it, and enter every row and column.",
        cite: cite("geometry"),
        remedies: [],
      },
    ],
    workings: [],
  };
}

function unevenRows(input: ExistingInput): Judged {
  const { grid, shade } = input;
  const { spacingsMm } = grid;
  if (spacingsMm.length < 2) return NOTHING;
  const uneven = UNEVEN.figure({ S: Math.max(...spacingsMm), s: Math.min(...spacingsMm) });
  if (uneven.value <= SEEN_UNEVEN.value || isGraded(spacingsMm)) return { findings: [], workings: [uneven] };
  const text = (mm: number) => lengthText(mm, shade.units);
  return {
    findings: [
      {
        ...base(input, "rowsFromHemMm"),
        id: "existing.uneven-rows",
        severity: "fix",
        text: `The rows are ${text(Math.min(...spacingsMm))} to ${text(Math.max(...spacingsMm))} apart: raised, the edges of the folds hang up to ${text(uneven.value)} out of line, and the wide ones fall over the narrow ones.`,
        cite: SEEN_UNEVEN.cite,
        figures: ["existing.uneven-rows"],
        remedies: [doAlso(input, "even-rows", "Sew the rings anew at even rows")],
      },
    ],
    workings: [uneven],
  };
}

/** Of some rows one edge alone was measured. */
function oneSided(input: ExistingInput, existing: Existing): Judged {
  const { oneSided: count } = measuredOf(existing, input.size);
  if (count === 0) return NOTHING;
  return {
    findings: [
      {
        ...base(input, "rowsFromHemRightMm"),
        id: "existing.one-sided",
        severity: "stop",
        text: `${counted(count, "row")} ${count === 1 ? "was" : "were"} measured at one edge alone, and ${count === 1 ? "is" : "are"} taken as level: measure every row at both.`,
        cite: cite("geometry"),
        remedies: [],
      },
    ],
    workings: [],
  };
}

/** Two neighbours apart at both edges seen from the room. */
function endSpacings({ grid }: ExistingInput): { leftMm: number; rightMm: number }[] {
  return grid.rows.slice(1).map((row, i) => {
    const below = grid.rows[i];
    const falls = ((row.ends?.fallMm ?? 0) - (below?.ends?.fallMm ?? 0)) / 2;
    const midMm = row.fromHemMm - (below?.fromHemMm ?? 0);
    return { leftMm: midMm + falls, rightMm: midMm - falls };
  });
}

/** A row that runs into the one above it holds no fold there. */
function crossingRows(input: ExistingInput): Judged {
  const crossing = endSpacings(input).findIndex(({ leftMm, rightMm }) => Math.min(leftMm, rightMm) <= 0);
  if (crossing < 0) return NOTHING;
  return {
    findings: [
      {
        ...base(input, "rowsFromHemRightMm"),
        id: "existing.rows-cross",
        severity: "stop",
        text: `Rows ${crossing + 1} and ${crossing + 2} cross from edge to edge: measure both again, up from the hem at each edge.`,
        cite: cite("geometry"),
        remedies: [doAlso(input, "even-rows", "Sew the rings anew at even rows")],
      },
    ],
    workings: [],
  };
}

/** Rows that slant: unlike each other the folds hang askew; all alike they hang along them. */
function slantingRows(input: ExistingInput): Judged {
  const { grid, shade } = input;
  if (grid.rows.every(({ ends }) => ends === undefined)) return NOTHING;
  const text = (mm: number) => lengthText(mm, shade.units);
  const apart = endSpacings(input).reduce(
    (worst, one) =>
      Math.abs(one.leftMm - one.rightMm) > Math.abs(worst.leftMm - worst.rightMm) ? one : worst,
    { leftMm: 0, rightMm: 0 },
  );
  const askew = SLANTING.figure({
    S: Math.max(apart.leftMm, apart.rightMm),
    s: Math.min(apart.leftMm, apart.rightMm),
  });
  if (askew.value > SEEN_UNEVEN.value) {
    return {
      findings: [
        {
          ...base(input, "rowsFromHemRightMm"),
          id: "existing.slanting-rows",
          severity: "fix",
          text: `Rows slant unlike each other: two of them are ${text(apart.leftMm)} apart at the left edge and ${text(apart.rightMm)} at the right. Raised, folds hang up to ${text(askew.value)} out of level.`,
          cite: SEEN_UNEVEN.cite,
          figures: ["existing.slanting-rows"],
          remedies: [doAlso(input, "even-rows", "Sew the rings anew at even rows")],
        },
      ],
      workings: [askew],
    };
  }
  const falls = grid.rows.map(({ ends }) => ends?.fallMm ?? 0);
  const fallMm = falls.reduce((most, mm) => (Math.abs(mm) > Math.abs(most) ? mm : most), 0);
  const hem = grid.hemFallMm === undefined ? "its hem" : "the low end of its hem";
  return {
    findings: [
      {
        ...base(input, "rowsFromHemRightMm"),
        id: "existing.rows-on-slope",
        severity: "note",
        text: `Its rows lie up to ${text(Math.abs(fallMm))} lower at the ${fallMm < 0 ? "left" : "right"} edge: folds hang along them and not along a level line, and the higher end is up first, when ${hem} hangs ${text(grid.raisedHeightMm)} below the top. Every cord is as long as its own column asks.`,
        cite: cite("geometry"),
        remedies: [],
      },
    ],
    workings: [askew],
  };
}

function isGraded(spacingsMm: readonly number[]): boolean {
  const steps = spacingsMm.slice(1).map((mm, i) => mm - (spacingsMm[i] ?? 0));
  const sameWay = steps.every((step) => step >= 0) || steps.every((step) => step <= 0);
  return sameWay && Math.max(...steps) - Math.min(...steps) <= SAME_STEP_MM;
}

function wideRows(input: ExistingInput, { tasks }: Existing): Judged {
  const { grid, shade } = input;
  const limit = shade.making.fold.largestSpacingMm;
  const ends = endSpacings(input).flatMap(({ leftMm, rightMm }) => [leftMm, rightMm]);
  const top = grid.rows.at(-1);
  const topMm = grid.topSectionMm - grid.headrailMm + (top === undefined ? 0 : slantMm(top));
  const widest = Math.max(0, ...ends, topMm);
  if (widest <= limit + 0.5) return NOTHING;
  const text = (mm: number) => lengthText(mm, shade.units);
  return {
    findings: [
      {
        ...base(input, "rowsFromHemMm"),
        id: "existing.rows-wide",
        severity: "fix",
        text: `Rows lie up to ${text(widest)} apart; ${text(limit)} at most is asked for. The wider the rows, the larger the loop of cord that can be drawn out behind the shade.`,
        cite: cite("inner-cord-hazard"),
        remedies: addsRows(tasks) ? [] : [doAlso(input, "add-rows", "Add rows of rings between them")],
      },
    ],
    workings: [],
  };
}

/** The cloth above the top row is all that stays flat: less than board and lift ask for, and the rings jam at the head. */
function highTopRow(input: ExistingInput): Judged {
  const { grid, headrailNeededMm, shade } = input;
  if (grid.topSectionMm >= headrailNeededMm - 0.5) return NOTHING;
  const text = (mm: number) => lengthText(mm, shade.units);
  return {
    findings: [
      {
        ...base(input, "rowsFromHemMm"),
        id: "existing.top-row-high",
        severity: "note",
        text: `The top row lies ${text(grid.topSectionMm)} below the top, where board and lift ask for ${text(headrailNeededMm)}: its rings meet what hangs under the board before the shade is all the way up. Stop there.`,
        cite: cite("headrail-allowance"),
        figures: ["shape.headrail-needed"],
        remedies: [],
      },
    ],
    workings: [],
  };
}

function unevenBays(input: ExistingInput, existing: Existing): Judged {
  const { grid, lift, shade } = input;
  const bays = grid.columns.slice(1).map(({ xMm }, i) => xMm - (grid.columns[i]?.xMm ?? 0));
  if (bays.length < 2) return NOTHING;
  const [widest, narrowest] = [Math.max(...bays), Math.min(...bays)];
  const ratio = BAYS.figure({ B: widest, b: narrowest });
  if (ratio.value <= UNEVEN_BAYS.value) return { findings: [], workings: [ratio] };
  const loads = lift.cords.map(({ loadN }) => loadN);
  const text = (mm: number) => lengthText(mm, shade.units);
  const force = (n: number) => forceText(n, shade.units);
  return {
    findings: [
      {
        ...base(input, "columnsFromLeftMm"),
        id: "existing.uneven-columns",
        severity: "note",
        text: `The columns are ${text(narrowest)} to ${text(widest)} apart, so that the cords carry from ${force(Math.min(...loads))} to ${force(Math.max(...loads))}: over the widest bay folds and hem sag most, and it looks crooked. A column more in its middle, with rings on every row and an eye above, sets it right.`,
        cite: UNEVEN_BAYS.cite,
        figures: ["existing.uneven-bays", "lift.heaviest-cord"],
        remedies: existing.tasks.includes("add-columns")
          ? []
          : [doAlso(input, "add-columns", "Add a column of rings there")],
      },
    ],
    workings: [ratio],
  };
}

/** Nobody knows how rings and their stitches have aged. */
function rings(input: ExistingInput, { ringsTried }: Existing): Judged {
  const { lift, shade, grid } = input;
  const heaviest = Math.max(0, ...lift.cords.map(({ loadN }) => loadN));
  const test = RING_TEST.figure({ P: CHILD_PULL.value, k: RING_TUG.value, T: heaviest });
  if (ringsTried === true) return { findings: [], workings: [test] };
  const count = grid.rows.length * grid.columns.length;
  return {
    findings: [
      {
        ...base(input, "ringsTried"),
        id: "existing.rings-untried",
        severity: "unproven",
        text: `How strong the ${counted(count, "ring")} and their stitches still are is not known. Hook a luggage scale into each and pull ${forceText(test.value, shade.units)} straight down: one that opens, cracks or tears out is changed before the shade hangs again.`,
        cite: RING_TUG.cite,
        figures: ["existing.ring-test"],
        remedies: [],
      },
    ],
    workings: [test],
  };
}

/** Cords that stay in. */
function cords(input: ExistingInput, { cordYears }: Existing, { takes }: ExistingPlan): Judged {
  if (takes.cords) return NOTHING;
  const { lift, shade } = input;
  const hardest = Math.max(0, ...lift.cords.map(({ pullN }) => pullN));
  const pull = `one of them sees up to ${forceText(hardest, shade.units)}`;
  const restring = doAlso(input, "restring", "Put new cords in as well");
  if (cordYears === undefined) {
    return {
      findings: [
        {
          ...base(input, "cordYears"),
          id: "existing.cord-age",
          severity: "unproven",
          text: `The cords stay in, and how old they are is not known; ${pull}. Draw every one through your fingers, above all where it turns over its eye when the shade is down or up: flat, fuzzy or stiff cord is changed.`,
          cite: CORD_LIFE.cite,
          figures: ["lift.pull"],
          remedies: [restring],
        },
      ],
      workings: [],
    };
  }
  if (cordYears <= CORD_LIFE.value) return NOTHING;
  return {
    findings: [
      {
        ...base(input, "cordYears"),
        id: "existing.cord-old",
        severity: "fix",
        text: `Cords ${trimmed(cordYears, 1)} years old are to stay in; about ${CORD_LIFE.value} years is what a lift cord in the sun is good for, and ${pull}.`,
        cite: CORD_LIFE.cite,
        figures: ["lift.pull"],
        remedies: [restring],
      },
    ],
    workings: [],
  };
}

/** The lift that was chosen is not the one that the work is about. */
function wrongLift(input: ExistingInput, { tasks }: Existing): Judged {
  const { lift, shade } = input;
  const use = (kind: LiftKind, label: string): Remedy => ({
    label,
    patch: settingPatch(shade, "lift", "kind", kind),
  });
  if (tasks.includes("go-cordless") && lift.cordsAtFront) {
    return {
      findings: [
        {
          ...base(input, "tasks"),
          id: "existing.still-corded",
          severity: "fix",
          text: "No cord is to hang at the front, and the lift that is chosen has one.",
          cite: cite("geometry"),
          remedies: [
            use("spring", "Raise it by a spring"),
            use("tube-wand", "Raise it by a tube and a wand"),
            use("motor", "Raise it by a tube and a motor"),
          ],
        },
      ],
      workings: [],
    };
  }
  const wantsLock = tasks.includes("fit-lock") || tasks.includes("replace-lock");
  if (!wantsLock || LIFT_TRAITS[lift.kind].takeUp === "lock") return NOTHING;
  return {
    findings: [
      {
        ...base(input, "tasks"),
        id: "existing.no-lock",
        severity: "fix",
        text: "A lock is to be fitted, and the lift that is chosen has none.",
        cite: cite("geometry"),
        remedies: [use("cord-lock", "Use a cord lock")],
      },
    ],
    workings: [],
  };
}

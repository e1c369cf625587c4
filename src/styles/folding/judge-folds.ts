import type { Finding, Remedy } from "../../figures/index.ts";
import { LONGEST_MM, settingPatch } from "../../job/index.ts";
import type { Grid, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import { atShade } from "../base/at-shade.ts";
import { headrailShort } from "../base/headrail-short.ts";
import type { ShadeWith } from "../base/style-shade.ts";
import { evenFoldCount } from "./even-folds.ts";
import { fewestRows, type Unmet } from "./folds.ts";
import { canCascade, type Rows } from "./rows.ts";

/** What the folds do not satisfy, each with what would. */
export function judgeFolds(shade: ShadeWith<"fold">, size: Size, laid: Rows, grid: Grid): Finding[] {
  const context: Context = { shade, size, laid, grid };
  const findings = laid.folds.unmet.map((what) => UNMET[what](context));
  if (!laid.folds.unmet.includes("length")) findings.push(...shortHeadrail(context));
  findings.push(...judgeSteps(context));
  const half = size.finishedLengthMm / 2;
  if (grid.raisedHeightMm > half && laid.folds.unmet.length === 0) findings.push(coversMuch(context));
  return findings;
}

interface Context {
  shade: ShadeWith<"fold">;
  size: Size;
  laid: Rows;
  grid: Grid;
}

function base({ shade }: Context, setting: string) {
  return atShade(shade, `making/fold/${setting}`);
}

/** Rows that would keep the limits, with the count no longer fixed. */
function freeRows({ shade, laid }: Context): number {
  const free = { ...laid.ask, rows: undefined, spacingMm: undefined };
  const { fold } = shade.making;
  return fold.rule === "even-fold"
    ? evenFoldCount({ ...free, hemBarMm: fold.hemBarMm, ringStackMm: fold.ringStackMm })
    : fewestRows(free);
}

function rowsRemedy(context: Context): Remedy[] {
  const rows = freeRows(context);
  if (rows === context.grid.rows.length) return [];
  return [{ label: `Use ${rows} rows`, patch: settingPatch(context.shade, "fold", "rows", rows) }];
}

const UNMET: Record<Unmet, (context: Context) => Finding> = {
  largest: (context) => {
    const { shade, laid, grid } = context;
    const widest = laid.folds.foldsMm[0] ?? 0;
    return {
      ...base(context, shade.making.fold.spacingMm === undefined ? "rows" : "spacingMm"),
      id: "shape.rows-too-few",
      severity: "fix",
      text: `${counted(grid.rows.length, "row")} stand ${lengthText(widest, shade.units)} apart, more than the largest spacing of ${lengthText(laid.ask.largestFoldMm, shade.units)}. The wider the rows, the larger the loop of cord that can be drawn out behind the shade; ${freeRows(context)} rows keep to it.`,
      cite: cite("inner-cord-hazard"),
      remedies:
        shade.making.fold.spacingMm === undefined
          ? rowsRemedy(context)
          : [
              {
                label: `Set the spacing to ${lengthText(laid.ask.largestFoldMm, shade.units)}`,
                patch: settingPatch(shade, "fold", "spacingMm", laid.ask.largestFoldMm),
              },
            ],
    };
  },
  smallest: (context) => ({
    ...base(context, "rows"),
    id: "shape.rows-too-many",
    severity: "fix",
    text: `The smallest fold would be ${lengthText(context.laid.folds.foldsMm.at(-1) ?? 0, context.shade.units)}, under the ${lengthText(context.laid.ask.smallestFoldMm, context.shade.units)} below which the stack only grows thicker.`,
    cite: cite("our-choice", "smallest useful spacing"),
    remedies:
      context.laid.ask.gradeStepMm > 0
        ? [
            {
              label: "Make the folds even",
              patch: settingPatch(
                context.shade,
                "fold",
                context.shade.making.fold.cascadeMm > 0 ? "cascadeMm" : "gradeStepMm",
                0,
              ),
            },
          ]
        : rowsRemedy(context),
  }),
  stack: (context) => {
    const { shade, grid, laid } = context;
    const limit = laid.ask.stackMm ?? 0;
    return {
      ...base(context, "stackMm"),
      id: "shape.stack-over-limit",
      severity: "fix",
      text: `Raised, the shade is ${lengthText(grid.raisedHeightMm, shade.units)} high, over the limit of ${lengthText(limit, shade.units)}. This is the nearest that ${counted(grid.rows.length, "row")} allow${grid.rows.length === 1 ? "s" : ""}: ${lengthText(grid.headrailMm, shade.units)} stay flat under the board and ${lengthText(grid.raisedHeightMm - grid.headrailMm, shade.units)} hang below.`,
      cite: cite("pocket-spacing"),
      figures: ["shape.raised-height"],
      remedies: [
        ...rowsRemedy(context),
        ...(grid.raisedHeightMm < LONGEST_MM
          ? [
              {
                label: `Allow a stack of ${lengthText(grid.raisedHeightMm, shade.units)}`,
                patch: settingPatch(shade, "fold", "stackMm", Math.ceil(grid.raisedHeightMm)),
              },
            ]
          : []),
      ],
    };
  },
  headrail: (context) => ({
    ...base(context, "spacingMm"),
    id: "shape.spacing-leaves-no-headrail",
    severity: "fix",
    text: `${context.grid.rows.length} rows at the fixed spacing do not leave the headrail allowance of ${lengthText(context.laid.ask.headrailMm, context.shade.units)}.`,
    cite: cite("headrail-allowance"),
    remedies: rowsRemedy(context),
  }),
  length: (context) => ({
    ...base(context, "headrailMm"),
    id: "shape.too-short",
    severity: "stop",
    text: `A shade ${lengthText(context.size.finishedLengthMm, context.shade.units)} long has no room for one fold below a headrail allowance of ${lengthText(context.laid.ask.headrailMm, context.shade.units)}${context.laid.ask.skirtMm > 0 ? ` and a skirt of ${lengthText(context.laid.ask.skirtMm, context.shade.units)}` : ""}.`,
    cite: cite("pocket-spacing"),
    remedies: [],
  }),
};

/** The rule without a headrail allowance has none to set: there the rule gives way. */
function shortHeadrail(context: Context): Finding[] {
  const { shade, laid } = context;
  const short = headrailShort(shade, laid.folds.headrailMm, laid.headrailNeededMm);
  if (shade.making.fold.rule !== "no-headrail") return short;
  return short.map((finding) => ({
    ...finding,
    ...base(context, "rule"),
    remedies: [
      {
        label: "Use the half-fold rule with a headrail allowance",
        patch: settingPatch(shade, "fold", "rule", "half-fold"),
      },
    ],
  }));
}

/** A cascade that the other settings of the folds leave no room for. */
function judgeSteps(context: Context): Finding[] {
  const { shade, laid } = context;
  const { fold } = shade.making;
  if (fold.cascadeMm === 0 || laid.folds.unmet.includes("length")) return [];
  const step = lengthText(fold.cascadeMm, shade.units);
  if (!canCascade(fold)) {
    const key = fold.rule === "even-fold" ? "rule" : "spacingMm";
    const what = key === "rule" ? "the even-fold rule makes" : "a fixed spacing makes";
    return [
      {
        ...base(context, "cascadeMm"),
        id: "shape.cascade-needs-free-folds",
        severity: "fix",
        text: `A cascade of ${step} needs folds that grow downwards, and ${what} them all the same. The folds hang level.`,
        cite: cite("cascade-folds"),
        remedies: [
          { label: "Hang the folds level", patch: settingPatch(shade, "fold", "cascadeMm", 0) },
          ...(key === "rule"
            ? [
                {
                  label: "Use the half-fold rule",
                  patch: settingPatch(shade, "fold", "rule", "half-fold"),
                },
              ]
            : []),
        ],
      },
    ];
  }
  const [lowest = 0, second] = laid.folds.foldsMm;
  const eased = second !== undefined && lowest - second < laid.ask.gradeStepMm - 1e-6;
  const both = fold.gradeStepMm > 0 && Math.abs(fold.gradeStepMm - 2 * fold.cascadeMm) > 1e-6;
  return [
    ...(eased ? [cascadeEased(context, (lowest - second) / 2)] : []),
    ...(both ? [cascadeAndGraded(context)] : []),
  ];
}

function cascadeEased(context: Context, stepMm: number): Finding {
  const { shade, laid } = context;
  const most = Math.floor(stepMm * 100) / 100;
  return {
    ...base(context, "cascadeMm"),
    id: "shape.cascade-too-steep",
    severity: "fix",
    text: `A cascade of ${lengthText(shade.making.fold.cascadeMm, shade.units)} over ${laid.folds.foldsMm.length} folds would leave the top fold no cloth; ${lengthText(stepMm, shade.units)} is laid.`,
    cite: cite("geometry", "folds that shrink by twice the step"),
    remedies: [{ label: "Hang the folds level", patch: settingPatch(shade, "fold", "cascadeMm", 0) }].concat(
      // With a free number of rows a smaller step brings more of them, and they the same trouble.
      most > 0 && shade.making.fold.rows !== undefined
        ? [
            {
              label: `Set the cascade to ${lengthText(most, shade.units)}`,
              patch: settingPatch(shade, "fold", "cascadeMm", most),
            },
          ]
        : [],
    ),
  };
}

function cascadeAndGraded(context: Context): Finding {
  const { shade } = context;
  const { cascadeMm, gradeStepMm } = shade.making.fold;
  return {
    ...base(context, "gradeStepMm"),
    id: "shape.cascade-and-graded",
    severity: "note",
    text: `Folds graded by ${lengthText(gradeStepMm, shade.units)} and a cascade of ${lengthText(cascadeMm, shade.units)} are both asked for. The cascade decides: its folds step by ${lengthText(2 * cascadeMm, shade.units)}.`,
    cite: cite("cascade-folds"),
    remedies: [
      { label: "Leave it to the cascade", patch: settingPatch(shade, "fold", "gradeStepMm", 0) },
      {
        label: "Grade the folds and let them hang as they come",
        patch: settingPatch(shade, "fold", "cascadeMm", 0),
      },
    ],
  };
}

function coversMuch(context: Context): Finding {
  return {
    ...base(context, "rows"),
    id: "shape.stack-covers-much",
    severity: "note",
    text: `Raised, the shade still hangs ${lengthText(context.grid.raisedHeightMm, context.shade.units)}, more than half its length.`,
    cite: cite("our-choice"),
    figures: ["shape.raised-height"],
    remedies: rowsRemedy(context),
  };
}

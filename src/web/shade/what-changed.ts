import { SEVERITY_WORDS } from "../../figures/index.ts";
import { STYLE_NAMES } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { clothLengthText, forceText, lengthText, type UnitChoice } from "../../units/index.ts";
import { counted, firstSentence } from "../../words/index.ts";

/** Figures told at once; more would be listened to by nobody. */
const MOST_TOLD = 4;

/** What an edit did to a shade, in few words to be said aloud: figures that are others now, findings come and gone. */
export function whatChanged(before: ShadePlan, after: ShadePlan, units: UnitChoice): string {
  const old = factsOf(before, units);
  const changed = [...factsOf(after, units)].filter(([name, text]) => old.get(name) !== text);
  const told = changed.slice(0, MOST_TOLD).map(([name, text]) => `${name} ${text}`);
  return [
    told.length > 0 ? `${told.join(", ")}.` : "",
    changed.length > MOST_TOLD ? `${counted(changed.length - MOST_TOLD, "more figure")} changed.` : "",
    ...findingsText(before, after),
  ]
    .filter(Boolean)
    .join(" ");
}

function factsOf(
  { size, grid, cloth, lift, board, style }: ShadePlan,
  units: UnitChoice,
): Map<string, string> {
  const [face] = cloth.layers;
  return new Map([
    ["Style", STYLE_NAMES[style]],
    ["Finished width", lengthText(size.finishedWidthMm, units)],
    ["finished length", lengthText(size.finishedLengthMm, units)],
    ["rows", String(grid.rows.length)],
    ["columns", String(grid.columns.length)],
    ["raised height", lengthText(grid.raisedHeightMm, units)],
    ...(face === undefined
      ? []
      : ([
          ["cut width", lengthText(face.cutWidthMm, units)],
          ["cut length", lengthText(face.cutLengthMm, units)],
          ["cloth to buy", clothLengthText(face.buyMm, units)],
        ] as const)),
    ["pull", forceText(lift.pullN, units)],
    ["board", lengthText(board.lengthMm, units)],
  ]);
}

function findingsText(before: ShadePlan, after: ShadePlan): string[] {
  const old = new Set(before.findings.map(({ id }) => id));
  const now = new Set(after.findings.map(({ id }) => id));
  const come = after.findings.filter(({ id }) => !old.has(id));
  const gone = [...old].filter((id) => !now.has(id)).length;
  const [first] = come;
  return [
    first === undefined ? "" : `${SEVERITY_WORDS[first.severity]}: ${firstSentence(first.text)}`,
    come.length > 1 ? `${counted(come.length - 1, "more finding")}.` : "",
    gone > 0 ? `${counted(gone, "finding")} gone.` : "",
  ];
}

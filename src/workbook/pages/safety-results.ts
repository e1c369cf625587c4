import { RULE_OUTCOME_NAMES, type RuleResult } from "../../shade-plan/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { drawOutcomeMark } from "../typeset/outcome-mark.ts";
import { MARK_WIDTH } from "../typeset/severity-mark.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { comesTo, ruleSourceText, worstText } from "./safety-words.ts";
import { capital, sentence } from "./sentence.ts";

/** What every rule came to, the heaviest first; those that do not apply stand apart, with why. */
export function resultTables(context: ShadeContext): void {
  const { results } = context.shade.safety;
  const evaluated = results.filter(({ outcome }) => outcome !== "does-not-apply");
  const others = results.filter(({ outcome }) => outcome === "does-not-apply");
  if (evaluated.length > 0) evaluatedTable(context, evaluated);
  if (others.length > 0) othersTable(context, others);
}

function evaluatedTable(context: ShadeContext, evaluated: readonly RuleResult[]): void {
  const { book } = context;
  const worst = evaluated.map((result) => worstText(context, result));
  // Where no result hangs on a height, what each comes to has its place.
  const hasWorst = worst.some((text) => text !== "");
  table(book, {
    title: "Rules that were evaluated for this shade, the heaviest outcome first",
    heading: "What each rule came to",
    columns: [
      { title: "Outcome", share: 1.25 },
      { title: "Rule", share: 2.6 },
      { title: "What the shade comes to, and the limit", share: hasWorst ? 2.7 : 4.15 },
      ...(hasWorst ? [{ title: "Worst", share: 1.45 }] : []),
      { title: "Source", share: 3 },
    ],
    rows: evaluated.map((result, i): CellLike[] => [
      {
        text: capital(RULE_OUTCOME_NAMES[result.outcome]),
        strong: true,
        sign: {
          widthPt: MARK_WIDTH,
          draw: (x, y) => drawOutcomeMark(book.pen, result.outcome, x, y),
        },
      },
      `${result.words}\n${result.ruleId}`,
      comesToAndLimit(result),
      ...(hasWorst ? [worst[i] ?? ""] : []),
      { text: ruleSourceText(result), quiet: true },
    ]),
  });
}

/** Why a rule is open may name its limit already; a yes or no has none to name. */
function comesToAndLimit(result: RuleResult): string {
  const { limitText, unit, what, why } = result;
  if (limitText === undefined || unit === "yes-no") return comesTo(result);
  const isNamed = what === undefined && why.includes(limitText);
  return isNamed ? comesTo(result) : `${comesTo(result)}\nLimit: ${limitText}.`;
}

function othersTable({ book }: ShadeContext, others: readonly RuleResult[]): void {
  table(book, {
    title: "Rules that do not apply to this shade, and why",
    heading: "What does not apply, and why",
    columns: [
      { title: "Rule", share: 4 },
      { title: "Why not", share: 3.2 },
      { title: "Source", share: 3.2 },
    ],
    rows: others.map((result): CellLike[] => [
      {
        text: `${result.words}\n${result.ruleId}`,
        sign: {
          widthPt: MARK_WIDTH,
          draw: (x, y) => drawOutcomeMark(book.pen, result.outcome, x, y),
        },
      },
      sentence(result.why),
      { text: ruleSourceText(result), quiet: true },
    ]),
  });
}

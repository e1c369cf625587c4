import { type Drawing, drawSheet } from "../../drawing/index.ts";
import { groupedBy } from "../../figures/index.ts";
import type { RuleResult } from "../../shade-plan/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { figureRow } from "../typeset/figure.ts";
import { comesTo, raiseWords } from "./safety-words.ts";
import { capital } from "./sentence.ts";

const FIGURE_PT = 240;
/** States that are drawn, those of the heaviest results first. */
const MOST_STATES = 3;

/** The shade in every state in which a rule fails or stays open at its worst: from the side and from the back. */
export function worstStates(context: ShadeContext): void {
  const { book, plan, shade, sheet } = context;
  for (const { raise, results } of statesOf(shade.safety.results)) {
    // Beside cords as long as the window a raised shade would be a few mm from the side: it has a scale of its own.
    const side = drawSheet("side", plan, shade, { raise, near: true });
    const drawings = [side, withWorst(sheet("back", raise), results)];
    figureRow(book, drawings, FIGURE_PT, {
      heading: `Where it is worst: ${raiseWords(raise)}`,
      ownScales: true,
    });
  }
}

interface State {
  raise: number;
  results: RuleResult[];
}

function statesOf(results: readonly RuleResult[]): State[] {
  const states: State[] = [];
  for (const result of results) {
    const { worst, outcome, what } = result;
    const isSeen = outcome === "failed" || (outcome === "not-proven" && what !== undefined);
    if (worst === undefined || !isSeen) continue;
    const known = states.find(({ raise }) => Math.abs(raise - worst.raise) < 1e-6);
    if (known !== undefined) known.results.push(result);
    else states.push({ raise: worst.raise, results: [result] });
  }
  return states.slice(0, MOST_STATES);
}

/** The drawing with the spans and cords that are worst in it named under it. */
function withWorst(drawing: Drawing, results: readonly RuleResult[]): Drawing {
  const named = groupedBy(results, (result) => {
    const { what, valueText } = result;
    return what === undefined ? comesTo(result).replace(/\.$/, "") : `${what}, ${valueText}`;
  });
  const list = [...named].map(
    ([words, same]) => `${capital(words)} (${same.map(({ ruleId }) => ruleId).join(", ")}).`,
  );
  return { ...drawing, caption: `${drawing.caption} Worst here: ${list.join(" ")}` };
}

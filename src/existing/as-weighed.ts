import { figureRule, type StageResult } from "../figures/index.ts";
import type { Mass } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import type { ExistingShade } from "./existing-reads.ts";

const WEIGHED = figureRule({
  id: "existing.mass",
  label: "Shade as it was weighed",
  symbol: "M",
  unit: "kg",
  formula: "M",
  inputs: { M: ["kg", "cloth, bar and rings together", "shade/existing"] },
  cite: cite("maker", "weighed"),
  note: "its parts keep their shares",
  compute: ({ M }) => M,
});

/** What a shade that hangs already was weighed at, shared among its parts as they were taken to be. */
export function massAsWeighed({
  shade,
  planned,
}: {
  shade: ExistingShade;
  planned: StageResult<Mass>;
}): StageResult<Mass> {
  const massKg = shade.existing?.massKg;
  const { totalKg } = planned.values;
  if (massKg === undefined || totalKg <= 0) return planned;
  const weighed = WEIGHED.figure({ M: massKg });
  const times = weighed.value / totalKg;
  const { parts, clothGsm, onBoardKg } = planned.values;
  return {
    values: {
      parts: parts.map(({ hemKg, boardKg, ...part }) => ({
        ...part,
        massKg: part.massKg * times,
        ...(hemKg === undefined ? {} : { hemKg: hemKg * times }),
        ...(boardKg === undefined ? {} : { boardKg: boardKg * times }),
      })),
      totalKg: weighed.value,
      clothGsm: clothGsm * times,
      onBoardKg,
    },
    findings: planned.findings,
    workings: [...planned.workings, weighed],
  };
}

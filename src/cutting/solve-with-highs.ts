import type { Highs } from "highs";
import type { SolveWhole, WholeProgramme } from "./whole-programme.ts";

const MOST_S = 20;

/**
 * Whole-number programmes by HiGHS, once it is loaded. It holds its thread until it is through and looks at its time
 * limit only now and then: run it in a worker that can be ended.
 *
 * @param mostS how long one programme may take, asked anew for each
 */
export function solveWithHighs(highs: Highs, mostS: () => number = () => MOST_S): SolveWhole {
  return (programme, target) => {
    const model = highs.createModel(modelOf(programme));
    try {
      model.options.set({ output_flag: false, time_limit: mostS(), objective_target: target });
      model.run();
      const { infeasible } = highs.constants.modelStatus;
      if (model.getModelStatus() === infeasible) return { bound: Number.POSITIVE_INFINITY };
      const bound = Number(model.info.get("mip_dual_bound"));
      // 2: a feasible point is there, the best one or another.
      const found = model.info.get("primal_solution_status") === 2;
      const values = found ? Float64Array.from(model.getSolution().colValue, Math.round) : undefined;
      return { values, bound: Number.isFinite(bound) ? bound : 0 };
    } finally {
      model.dispose();
    }
  };
}

function modelOf({ cost, upper, rowLower, rowUpper, starts, rows, values }: WholeProgramme) {
  const numCols = cost.length;
  const numRows = rowLower.length;
  return {
    numCols,
    numRows,
    colCost: cost,
    colLower: cost.map(() => 0),
    colUpper: upper,
    rowLower,
    rowUpper,
    matrix: { format: "csc" as const, numRows, numCols, starts, indices: rows, values },
    integrality: cost.map(() => 1 as const),
  };
}

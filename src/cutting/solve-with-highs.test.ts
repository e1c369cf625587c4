import type { Highs } from "highs";
import { expect, test } from "vitest";
import { solveWithHighs } from "./solve-with-highs.ts";

const PROGRAMME = {
  cost: [3, 1],
  upper: [2, 5],
  rowLower: [2],
  rowUpper: [2],
  starts: [0, 1, 2],
  rows: [0, 0],
  values: [1, 1],
};

/**
 * A solver that has come so far and no further: the real one cannot be stopped at a wished point. Its status of the
 * primal solution is 0 for none, 1 for an infeasible point and 2 for a feasible one (HiGHS, `HighsStatus.h`,
 * SolutionStatus).
 */
function stoppedAt(status: "optimal" | "infeasible" | "time", primal: number, bound: number) {
  const said: { models: object[]; options: object[]; freed: number } = { models: [], options: [], freed: 0 };
  const info = new Map([
    ["mip_dual_bound", bound],
    ["primal_solution_status", primal],
  ]);
  const highs = {
    constants: { modelStatus: { optimal: 7, infeasible: 8 } },
    createModel: (model: object) => {
      said.models.push(model);
      return {
        options: { set: (options: object) => said.options.push(options) },
        run: () => {},
        getModelStatus: () => ({ optimal: 7, infeasible: 8, time: 13 })[status],
        info: { get: (name: string) => info.get(name) },
        getSolution: () => ({ colValue: [0.9999999, 1.0000002] }),
        dispose: () => said.freed++,
      };
    },
  } as unknown as Highs;
  return { highs, said };
}

test.each([
  ["optimal", 2, 4, { values: [1, 1], bound: 4 }],
  ["time", 2, 2.5, { values: [1, 1], bound: 2.5 }],
  // Nothing was found in time, or only what does not hold.
  ["time", 0, 2.5, { bound: 2.5 }],
  ["time", 1, 2.5, { bound: 2.5 }],
  // Nothing is proved yet: what costs nothing is no more than any plan.
  ["time", 2, Number.NEGATIVE_INFINITY, { values: [1, 1], bound: 0 }],
  ["infeasible", 0, Number.POSITIVE_INFINITY, { bound: Number.POSITIVE_INFINITY }],
] as const)("stopped as %s with a point of status %d, proved %d", (status, primal, bound, answer) => {
  const { highs, said } = stoppedAt(status, primal, bound);
  const { values, ...rest } = solveWithHighs(highs)(PROGRAMME, 3);
  expect({ ...(values ? { values: [...values] } : {}), ...rest }).toEqual(answer);
  expect(said.freed).toBe(1);
});

test("is told the programme column by column, the cost that is enough, and its time, asked anew each time", () => {
  const { highs, said } = stoppedAt("optimal", 2, 4);
  let leftS = 9;
  const solve = solveWithHighs(highs, () => --leftS);
  solve(PROGRAMME, 3);
  solve(PROGRAMME, 2);
  expect(said.options).toEqual([
    { output_flag: false, time_limit: 8, objective_target: 3 },
    { output_flag: false, time_limit: 7, objective_target: 2 },
  ]);
  expect(said.models[0]).toEqual({
    numCols: 2,
    numRows: 1,
    colCost: [3, 1],
    colLower: [0, 0],
    colUpper: [2, 5],
    rowLower: [2],
    rowUpper: [2],
    matrix: { format: "csc", numRows: 1, numCols: 2, starts: [0, 1, 2], indices: [0, 0], values: [1, 1] },
    // Whole numbers.
    integrality: [1, 1],
  });
});

test("frees what it took where the solver fails", () => {
  const { highs, said } = stoppedAt("optimal", 2, 4);
  const create = highs.createModel.bind(highs);
  Object.assign(highs, {
    createModel: (model: object) =>
      Object.assign(create(model as Parameters<typeof create>[0]), {
        run: () => {
          throw new Error("no memory");
        },
      }),
  });
  expect(() => solveWithHighs(highs)(PROGRAMME, 3)).toThrow("no memory");
  expect(said.freed).toBe(1);
});

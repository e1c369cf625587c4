import fc from "fast-check";
import { compile, type EvalFunction } from "mathjs";
import { describe, expect, it } from "vitest";
import type { Working } from "../../src/figures/index.ts";
import { hasFigure, plan } from "../../src/plan/index.ts";
import { anyJob } from "../arbitrary-job.ts";
import { jobWith } from "../job-with.ts";

/** mathjs is a general-purpose expression library: it reads the printed formula and knows nothing of ours. */
const compiled = new Map<string, EvalFunction>();

function evaluate(working: Working): number {
  const source = working.formula
    .replaceAll("−", "-")
    .replaceAll("·", "*")
    .replaceAll("×", "*")
    .replaceAll("÷", "/");
  let expression = compiled.get(source);
  if (expression === undefined) {
    expression = compile(source);
    compiled.set(source, expression);
  }
  const scope: Record<string, number> = { pi: Math.PI, π: Math.PI };
  for (const input of working.inputs) scope[input.symbol] = input.value;
  return Number(expression.evaluate(scope));
}

/** A formula with ceil or floor may fall on either side of a whole number in the last digit. */
function steps(working: Working): number {
  return /ceil|floor|round/.test(working.formula) ? largestStep(working) : 0;
}

function largestStep(working: Working): number {
  return Math.max(1, ...working.inputs.map((input) => Math.abs(input.value)));
}

function agrees(working: Working): boolean {
  const value = evaluate(working);
  const tolerance = 1e-9 * Math.max(1, Math.abs(value), Math.abs(working.value));
  if (Math.abs(value - working.value) <= tolerance) return true;
  if (steps(working) === 0) return false;
  // Nudged by a hair, the rounded argument falls on the other side.
  return [1 - 1e-9, 1 + 1e-9].some((hair) => {
    const nudged = {
      ...working,
      inputs: working.inputs.map((input, i) => (i === 0 ? { ...input, value: input.value * hair } : input)),
    };
    return Math.abs(evaluate(nudged) - working.value) <= 1e-6 * Math.max(1, Math.abs(working.value));
  });
}

function allWorkings(planned: ReturnType<typeof plan>): Working[] {
  const rooms = planned.rooms.flatMap((room) => room.workings);
  return [...planned.workings, ...rooms, ...planned.shades.flatMap((shade) => shade.workings)];
}

describe("workings", () => {
  it("print a formula that gives their number when read by mathjs", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const working of allWorkings(plan(job))) {
          if (!agrees(working)) {
            throw new Error(
              `${working.id}: ${working.formula} gives ${evaluate(working)}, not ${working.value}: ${JSON.stringify(working.inputs)}`,
            );
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  it("have ids of their own within a shade", () => {
    const shade = plan(jobWith({})).shades[0];
    const ids = shade?.workings.map((working) => working.id) ?? [];
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length).toBeGreaterThan(15);
  });

  it("are there for every figure that a finding or a step leans on", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const shade of plan(job).shades) {
          const ids = new Set(shade.workings.map((working) => working.id));
          for (const { id, figures } of [...shade.findings, ...shade.steps]) {
            for (const figure of figures ?? [])
              if (!ids.has(figure)) throw new Error(`${id} leans on ${figure}, which is not worked out`);
          }
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe("whether a shade has a figure", () => {
  it("is told by its plan as by a copy of it, which knows its workings alone", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const shade of plan(job).shades) {
          const known = new Set(shade.workings.map(({ id }) => id));
          const copy = { ...shade };
          for (const id of [...known, "shape.raised-height", "cloth.face-cut-width", "shape.nothing"]) {
            expect(hasFigure(shade, id), id).toBe(known.has(id));
            expect(hasFigure(copy, id), id).toBe(known.has(id));
          }
        }
      }),
    );
  });
});

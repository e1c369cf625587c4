import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyJob } from "../../test/arbitrary-job.ts";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { afterRemedy, PLAIN_MASS, plannedLock, resolvedShadesOf, rigInput } from "../../test/rig-inputs.ts";
import { type Finding, workingOf } from "../figures/index.ts";
import type { Job, JobInput, ResolvedShade } from "../job/index.ts";
import { alongHeadMm } from "../shade-plan/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { BoardInput } from "./board-input.ts";
import { boardLoads } from "./board-loads.ts";
import { planBoard } from "./plan-board.ts";

type WindowInput = Parameters<typeof jobWith>[0];

function inputOf(resolved: ResolvedShade): BoardInput {
  const { resolved: shade, ...input } = rigInput(resolved);
  const { values: lift } = plannedLock(input);
  return { ...input, shade, lift };
}

function planned(resolved: ResolvedShade) {
  const input = inputOf(resolved);
  const { values: board, findings, workings } = planBoard(input);
  return { board, findings: [...findings], input, workings: workings.map(workingOf) };
}

function one(window: WindowInput, job: Partial<JobInput> = {}) {
  const [resolved] = resolvedShadesOf(metric(window, job));
  if (!resolved) throw new Error("invalid test job: no window");
  return planned(resolved);
}

function metric(window: WindowInput, job: Partial<JobInput> = {}): Job {
  return jobWith(
    { opening: { widthsMm: [900], heightsMm: [1500] }, ...window },
    { units: { system: "metric", ruler: "1 mm" }, ...job },
  );
}

const ids = (findings: Finding[]) => findings.map(({ id }) => id);

describe("the board of any valid shade", () => {
  test("is made of finite numbers, its fixings in order and on the board", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const resolved of resolvedShadesOf(job)) {
          const { board, findings } = planned(resolved);
          expect(JSON.stringify(board)).not.toContain("null");
          expect(board.brackets.length).toBeGreaterThan(0);
          board.brackets.forEach(({ xMm, number }, i) => {
            expect(number).toBe(i + 1);
            expect(xMm).toBeGreaterThanOrEqual(board.leftMm - 1e-6);
            expect(xMm).toBeLessThanOrEqual(board.leftMm + board.lengthMm + 1e-6);
            expect(xMm).toBeGreaterThan(board.brackets[i - 1]?.xMm ?? Number.NEGATIVE_INFINITY);
          });
          for (const { text } of findings) expect(text).not.toMatch(/NaN|Infinity|undefined/);
        }
      }),
      { numRuns: 100 },
    );
  });

  test("has its fixings clear of eyes and lock, or says that one is not", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const resolved of resolvedShadesOf(job)) {
          const { board, findings, input } = planned(resolved);
          if (ids(findings).includes("board.fixing-not-clear")) continue;
          const half = (board.fixing === "brackets" ? 20 : 10) / 2;
          const { lift } = input;
          // Along the board, where they lie.
          const apart = (a: number, b: number) => Math.abs(alongHeadMm(input.size, a, b)) + 1e-6;
          for (const { xMm } of board.brackets) {
            for (const eye of lift.eyes) {
              expect(apart(eye.xMm, xMm)).toBeGreaterThanOrEqual(resolved.eye.outsideDiameterMm / 2 + half);
            }
            if (lift.kind !== "cord-lock") throw new Error("invalid test: no lock");
            expect(apart(lift.seat.xMm, xMm)).toBeGreaterThanOrEqual(lift.housingLengthMm / 2 + half);
          }
        }
      }),
      { numRuns: 100 },
    );
  });

  test("carries exactly the weight and the hand", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const resolved of resolvedShadesOf(job)) {
          const { board, input, workings } = planned(resolved);
          const boardKg = workings.find(({ id }) => id === "board.mass")?.value ?? Number.NaN;
          const { size, lift, mass } = input;
          const railN = lift.topRail?.pullN ?? 0;
          // With a hand on the lift cords, and on those of a top that comes down.
          for (const hand of lift.topRail === undefined ? (["lift"] as const) : (["lift", "rail"] as const)) {
            const loads = boardLoads({ size, board, lift }, boardKg + mass.onBoardKg, mass, hand);
            const total = loads.evenN + loads.points.reduce((sum, { loadN }) => sum + loadN, 0);
            const handN = hand === "lift" ? lift.pullN : railN;
            expectNear(total - handN, board.loadN - Math.max(lift.pullN, railN), 1e-6 * board.loadN);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe("a plain shade", () => {
  const shade = (
    making: NonNullable<WindowInput["shade"]>["making"] = {},
    mount: "inside" | "outside" = "outside",
  ) => ({
    shade: { mount, making },
  });

  test("outside: brackets within 100 mm of the ends and 600 mm of each other, two screws each", () => {
    const { board } = one(
      shade({ board: { bracketEndMm: 100, bracketSpacingMm: 600, substrate: "timber" } }),
    );
    expect(board.fixing).toBe("brackets");
    const places = board.brackets.map(({ xMm }) => xMm - board.leftMm);
    expect(places[0] ?? Number.NaN).toBeLessThanOrEqual(100);
    expect(board.lengthMm - (places.at(-1) ?? 0)).toBeLessThanOrEqual(100);
    places.slice(1).forEach((place, i) => {
      expect(place - (places[i] ?? 0)).toBeLessThanOrEqual(600);
    });
    expect(board.screws.count).toBe(2 * board.brackets.length);
  });

  test("inside: one screw up through the board at each place", () => {
    const { board } = one(shade({}, "inside"));
    expect(board.fixing).toBe("screwed-up");
    expect(board.screws.count).toBe(board.brackets.length);
  });

  test("screws: bracket or board, wall skin, and 7 diameters of a No. 8 in timber (Wood Handbook eq. 8-13)", () => {
    // 2 + 12.7 + 7 × 4.17 = 43.89 → 45 mm; 19.05 + 12.7 + 29.19 = 60.94 → 70 mm.
    expect(one(shade({ board: { substrate: "timber" } })).board.screws).toEqual({
      count: 6,
      lengthMm: 45,
      into: "solid wood",
    });
    expectNear(one(shade({ board: { substrate: "timber" } }, "inside")).board.screws.lengthMm, 70, 0);
  });

  test("bar 1/2 in under the width", () => {
    const { board, input } = one(shade());
    expectNear(board.barLengthMm ?? Number.NaN, input.size.finishedWidthMm - 12.7, 1e-9);
  });

  test("load: shade, board and hand", () => {
    const { board, input } = one(shade());
    // 38.1 × 19.05 mm of wood of 450 kg/m³.
    const boardKg = 0.0381 * 0.01905 * (board.lengthMm / 1000) * 450;
    expectNear(board.loadN, (PLAIN_MASS.totalKg + boardKg) * GRAVITY + input.lift.pullN, 1e-9);
  });

  test("worked on the left, its fixings are mirrored", () => {
    const right = one(shade({ lift: { controlSide: "right" } }));
    const left = one(shade({ lift: { controlSide: "left" } }));
    const width = right.input.size.finishedWidthMm;
    const mirrored = left.board.brackets.map(({ xMm }) => width - xMm).reverse();
    right.board.brackets.forEach(({ xMm }, i) => {
      expectNear(mirrored[i] ?? Number.NaN, xMm, 1e-6);
    });
  });
});

describe("findings", () => {
  const find = (findings: Finding[], id: string) => {
    const found = findings.find((finding) => finding.id === id);
    if (!found) throw new Error(`no finding ${id} among ${ids(findings).join(", ")}`);
    return found;
  };

  function expectCured(job: Job, id: string): Finding {
    const planOf = (one: Job) => resolvedShadesOf(one).flatMap((resolved) => planned(resolved).findings);
    const finding = find(planOf(job), id);
    expect(finding.remedies.length, `remedies of ${id}`).toBeGreaterThan(0);
    for (const remedy of finding.remedies) {
      expect(ids(planOf(afterRemedy(job, remedy))), remedy.label).not.toContain(id);
    }
    return finding;
  }

  test("an unknown wall is asked for; each answer ends the question", () => {
    const finding = expectCured(metric({}), "board.wall-unknown");
    expect(finding.severity).toBe("unproven");
    expect(finding.remedies).toHaveLength(3);
  });

  test.each([
    ["timber", []],
    ["masonry", ["note board.masonry"]],
    ["hollow-wall", ["unproven board.hollow-wall"]],
  ] as const)("%s", (substrate, expected) => {
    const { findings } = one({ shade: { mount: "outside", making: { board: { substrate } } } });
    const wall = findings.filter(({ path }) => path?.endsWith("substrate"));
    expect(wall.map(({ severity, id }) => `${severity} ${id}`)).toEqual([
      ...expected,
      "note board.local-codes",
    ]);
    expect(wall.at(-1)?.text).toMatch(/Local codes, licensed practice/);
  });

  test("a recess that is too shallow: another board or an outside mount", () => {
    // Board 64 mm; 2 × 7 + 2 folds of 0.8 mm, twice lofted, 26 mm: 90 mm of 60.
    const shallow = metric({
      opening: { widthsMm: [900], heightsMm: [1500], recessDepthMm: 70 },
      shade: { mount: "inside", making: { board: { section: "board-1x3" } } },
    });
    const finding = expectCured(shallow, "board.recess-too-shallow");
    expect(finding.remedies.map(({ label }) => label)).toEqual([
      "Use “1 × 2 board (19 × 38 mm)”",
      "Mount it outside the opening",
    ]);
  });

  test("a recess at, above and below the depth that is needed; handles count", () => {
    const at = (recessDepthMm: number, handleMm?: number) =>
      one({
        opening: {
          widthsMm: [900],
          heightsMm: [1500],
          recessDepthMm,
          ...(handleMm === undefined ? {} : { obstructions: [{ kind: "handle", projectionMm: handleMm }] }),
        },
        shade: { mount: "inside" },
      });
    const needed = at(999).workings.find(({ id }) => id === "board.recess-needed")?.value ?? Number.NaN;
    // Board depth + (2p + 2) × (0.5 + 0.3 mm) × 2, p rows.
    expectNear(needed, 38.1 + (2 * at(999).input.grid.rows.length + 2) * 0.8 * 2, 1e-9);
    expect(ids(at(needed).findings)).not.toContain("board.recess-too-shallow");
    expect(ids(at(needed - 0.01).findings)).toContain("board.recess-too-shallow");
    expect(ids(at(needed + 30, 20).findings)).toContain("board.recess-too-shallow");
    expect(ids(at(needed + 32.7, 20).findings)).not.toContain("board.recess-too-shallow");
  });

  test("a lock wider than the board: a deeper board", () => {
    const wide = metric(
      { shade: { making: { lift: { lock: "wide" } } } },
      {
        hardware: {
          locks: [
            {
              id: "wide",
              name: "Wide lock",
              housingLengthMm: 30,
              housingWidthMm: 50,
              housingHeightMm: 24,
              dividerWires: 5,
              cordsMax: 12,
            },
          ],
        },
      },
    );
    const finding = expectCured(wide, "board.lock-too-wide");
    expect(finding.remedies.map(({ label }) => label)).toEqual(["Use “1 × 3 board (19 × 64 mm)”"]);
  });

  test("an eye at the very end of the board: a longer board or a wider inset", () => {
    const edge = metric({
      shade: { making: { columns: { edgeInsetMm: 8 }, mount: { boardShorterMm: 30 } } },
    });
    expect(expectCured(edge, "board.eye-off-board").severity).toBe("stop");
  });

  test("eyes wider than the board", () => {
    const eyes = metric(
      { shade: { making: { lift: { eye: "huge" } } } },
      { hardware: { eyes: [{ id: "huge", name: "Huge eye", outsideDiameterMm: 45 }] } },
    );
    expectCured(eyes, "board.eyes-too-wide");
  });

  test("brackets nearer than they can be used", () => {
    expectCured(
      metric({ shade: { mount: "outside", making: { board: { bracketSpacingMm: 30 } } } }),
      "board.fixings-too-near",
    );
  });

  test("eyes so near each other that no bracket goes between", () => {
    const { findings } = one({ shade: { mount: "outside", making: { columns: { count: 30 } } } });
    expect(find(findings, "board.fixing-not-clear").severity).toBe("fix");
  });

  test("a board too thick for any screw that is sold", () => {
    const { findings, board } = one(
      { shade: { mount: "inside", making: { board: { section: "beam" } } } },
      { hardware: { boards: [{ id: "beam", name: "Beam", depthMm: 60, thicknessMm: 90 }] } },
    );
    expect(find(findings, "board.no-such-screw").severity).toBe("fix");
    expectNear(board.screws.lengthMm, 90 + 12.7 + 7 * 4.17, 1e-9);
  });
});

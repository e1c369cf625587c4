import { describe, expect, it } from "vitest";
import { type HandShade, handShade } from "../../test/hand-shade.ts";
import { lengthsIn, numbersOf, strayLengths } from "../../test/lengths-in-text.ts";
import { verdictIn } from "../../test/words.ts";
import { CHAPTERS, SHEETS, type Step } from "../shade-plan/index.ts";
import { planSteps, type StepInput } from "./index.ts";
import { PRACTICE } from "./practice.ts";

const METRIC = { system: "metric", ruler: "1 mm" } as const;
const plain = (text: string) => text.replaceAll("\u00a0", " ");

function textOf(step: Step): string {
  return plain([step.title, step.text, step.check ?? "", step.caution ?? ""].join(" "));
}

function stepsOf(shade: HandShade = {}): Step[] {
  return planSteps(handShade(shade));
}

function find(steps: Step[], id: string): Step {
  const step = steps.find((one) => one.id === id);
  if (step === undefined) throw new Error(`no step ${id}`);
  return step;
}

describe("the steps of X1", () => {
  const steps = stepsOf();

  it("come chapter by chapter in the order of the work, none left out", () => {
    const order = steps.map((step) => CHAPTERS.indexOf(step.chapter));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(new Set(steps.map((step) => step.chapter))).toEqual(new Set(CHAPTERS));
  });

  it("have ids of their own that begin with their chapter", () => {
    expect(new Set(steps.map((step) => step.id)).size).toBe(steps.length);
    for (const step of steps) {
      expect(step.id).toMatch(/^[a-z]+(?:-[a-z0-9]+)+$/);
      expect(step.id.startsWith(`${step.chapter}-`)).toBe(true);
      if (step.sheet !== undefined) expect(SHEETS).toContain(step.sheet);
    }
  });

  // Run X1 of the trade notes: rows 3.8, 11.4 … from the hem up, columns 2, 10 … from the left, to the eighth.
  it("mark X1's rows from the hem up and its columns from the left edge", () => {
    expect(plain(find(steps, "make-rows").text)).toContain(
      "row 1 at 3 3⁄4 in, 2 at 11 3⁄8 in, 3 at 19 in, 4 at 26 5⁄8 in, 5 at 34 1⁄4 in, 6 at 41 3⁄4 in and 7 at 49 3⁄8 in",
    );
    expect(plain(find(steps, "make-columns").text)).toContain(
      "column 1 at 2 in, 2 at 10 in, 3 at 18 in, 4 at 26 in and 5 at 34 in",
    );
    expect(find(steps, "make-rings").title).toBe("Sew 35 rings");
  });

  // X1: cords 94.2, 102.2, 110.2, 118.2, 126.2 in; cut to the eighth above.
  it("cut X1's cords and thread them slot by slot from the side they come from", () => {
    expect(plain(find(steps, "string-cut").text)).toContain(
      "cord 1 to 126 1⁄4 in, 2 to 118 1⁄4 in, 3 to 110 1⁄4 in, 4 to 102 1⁄4 in and 5 to 94 1⁄4 in",
    );
    const thread = find(steps, "string-thread");
    expect(thread.text).toContain(
      "cord 4 from the left end into slot 2; cord 5 from the right end into slot 3",
    );
    expect(thread.check).toContain(
      "Slot 1 holds cords 1 and 2, slot 2 holds cords 3 and 4 and slot 3 holds cord 5",
    );
  });

  it("move knots by cord: the one nearest the lock stays", () => {
    expect(find(steps, "level-knots").text).toContain("Leave cord 5, nearest the lock");
  });

  it("catch the layers along the columns only once those are marked", () => {
    const order = steps.map(({ id }) => id);
    expect(order.indexOf("make-catch-layers")).toBe(order.indexOf("make-columns") + 1);
    expect(find(steps, "make-catch-down").text).not.toContain("column");
  });

  it("turn the eyes across the board, and say why at each step of the threading", () => {
    expect(find(steps, "board-eyes").text).toContain("its ring stands across the board");
    expect(find(steps, "string-open-lock").text).toMatch(/board is in the way.*gravity closes them/);
    expect(find(steps, "string-thread").text).toMatch(/One cord at a time, each from its own side.*tweezers/);
    for (const hand of ["left", "right"] as const) {
      const shade = handShade();
      if (shade.lift.kind !== "cord-lock") throw new Error("invalid test shade: no lock");
      const seat = { ...shade.lift.seat, facing: hand };
      const worked = planSteps({ ...shade, lift: { ...shade.lift, seat } });
      const named = ["board-lock", "string-open-lock", "string-screw-lock"].map((id) =>
        textOf(find(worked, id)),
      );
      for (const text of named) expect(text).toMatch(new RegExp(`smooth crown .*outwards, to the ${hand}`));
    }
  });

  it("carry the cautions where the hazard is", () => {
    const caution = (id: string) => find(steps, id).caution ?? "";
    expect(caution("string-thread")).toMatch(/strangle.*never knot/i);
    expect(caution("hang-cleat")).toMatch(/cots.*never knot.*cleat does not remove the hazard.*local codes/i);
    expect(caution("hang-wall")).toMatch(/electric cables/);
    expect(caution("hang-board")).toMatch(/one hand on the board/i);
    expect(caution("board-attach")).toMatch(/staple gun/);
    expect(caution("make-side-hems")).toMatch(/iron and steam/i);
    expect(caution("measure-size")).toMatch(/ladder/);
  });
});

describe("a shade of another make", () => {
  const layers = (...names: ("face" | "interlining" | "blackout" | "lining")[]): HandShade["layers"] =>
    names.map((layer) => ({ layer, cutWidthIn: layer === "face" ? 42 : 36, cutLengthIn: 66.5 }));
  const ids = (shade: HandShade) => stepsOf(shade).map((step) => step.id);

  it("unlined: hems are sewn at once and rings go on the face", () => {
    const steps = stepsOf({ layers: layers("face"), window: { shade: { lining: null } } });
    expect(find(steps, "make-side-hems").title).toBe("Sew the side hems");
    expect(find(steps, "make-rows").text).toContain("mark on the wrong side of the face");
    expect(steps.map((step) => step.id)).not.toContain("make-lining");
    expect(find(steps, "board-cover").text).toContain("of Plain cotton");
  });

  it("interlined and with blackout: layers from the room to the glass, a cool iron", () => {
    const steps = stepsOf({
      layers: layers("face", "interlining", "blackout", "lining"),
      window: { shade: { interlining: "domett", blackout: "blackout-lining" } },
    });
    const order = steps.map((step) => step.id);
    expect(order.indexOf("make-interlining")).toBeLessThan(order.indexOf("make-blackout"));
    expect(order.indexOf("make-blackout")).toBeLessThan(order.indexOf("make-lining"));
    expect(find(steps, "cut-press").caution).toContain("blackout melts");
    expect(find(steps, "make-rings").text).toContain("point of light");
  });

  it("hook-and-loop: the tape is sewn on, and only one half is stapled", () => {
    const shade = { window: { shade: { making: { board: { attachment: "hook-and-loop" as const } } } } };
    expect(ids(shade)).toContain("make-tape");
    expect(find(stepsOf(shade), "board-attach").title).toBe("Press the shade to the board");
    expect(ids({})).not.toContain("make-tape");
  });

  it("inside mount: measured by its opening, screwed up instead of onto brackets", () => {
    const shade = handShade({ window: { shade: { mount: "inside" } } });
    const steps = planSteps({ ...shade, board: { ...shade.board, fixing: "screwed-up" } });
    expect(steps.map((step) => step.id)).toEqual(
      expect.arrayContaining(["measure-opening", "measure-square", "measure-depth", "measure-finished"]),
    );
    expect(steps.map((step) => step.id)).not.toContain("hang-brackets");
    expect(find(steps, "hang-board").title).toBe("Screw the board up");
  });

  it("outside mount: brackets on a level line above the opening", () => {
    const steps = stepsOf({ window: { shade: { mount: "outside" } } });
    expect(plain(find(steps, "hang-brackets").text)).toContain("level line 4 in above the opening");
  });

  it.each(["lining-pocket", "through-pocket", "strip-pocket"] as const)(
    "ribs in a %s: pockets are marked and sewn before the rings, ribs follow them",
    (kind) => {
      const order = stepsOfRibbed(kind).map((step) => step.id);
      const at = (id: string) => order.indexOf(id);
      expect(at("make-pocket-lines")).toBeGreaterThan(-1);
      expect(at("make-pockets")).toBe(at("make-pocket-lines") + 1);
      expect(at("make-pockets")).toBeLessThan(at("make-rings"));
      expect(at("make-ribs")).toBeGreaterThan(at("make-rings"));
      // Pockets on the lining come before it is laid on, pockets through all layers after the hem.
      expect(at("make-pockets") < at("make-lining")).toBe(kind !== "through-pocket");
      expect(order).not.toContain("make-rows");
    },
  );

  function stepsOfRibbed(kind: "lining-pocket" | "through-pocket" | "strip-pocket"): Step[] {
    const shade = handShade({ window: { shade: { making: { ribs: { kind } } } } });
    const ribLines = shade.grid.rows.map((row) => ({
      row: row.number,
      fromHemMm: row.fromHemMm,
      onLiningMm: row.fromHemMm + 10,
    }));
    const strips = kind === "strip-pocket" ? { count: 7, widthMm: 76.2, lengthMm: 901.7 } : undefined;
    return planSteps({ ...shade, cloth: { ...shade.cloth, ribLines, ribLengthMm: 889, strips } });
  }
});

/** Lengths that a text may state: figures of the plan, places on the board, and the measures of the hand. */
function figuresOf({ resolved, size, grid, cloth, lift, board }: StepInput): number[] {
  const { path: _, ...asked } = resolved;
  const habits = Object.values(PRACTICE).map((habit) => habit[resolved.units.system].value);
  const numbers = numbersOf({ asked, size, grid, cloth, lift, board });
  const onBoard = numbersOf([board.eyes, board.brackets, lift.kind === "cord-lock" ? lift.seat : []]).map(
    (xMm) => xMm - board.leftMm,
  );
  const { hems } = resolved.making;
  const hemsMm = [hems.sideTurnMm * hems.sideTurns, hems.bottomTurnMm * hems.bottomTurns];
  const face = cloth.layers[0];
  const beyondTopMm = (face?.cutLengthMm ?? 0) - size.finishedLengthMm - (hemsMm[1] ?? 0);
  return [...numbers, ...onBoard, ...habits, ...hemsMm, beyondTopMm];
}

/** Names of parts hold lengths of their own: “Plain cotton, 54 in”. */
function withoutNames(text: string, { resolved }: StepInput): string {
  const parts = [
    ...Object.values(resolved.cloths),
    resolved.bar,
    resolved.rib,
    resolved.board,
    resolved.eye,
    resolved.ring,
    resolved.cord,
  ];
  return parts.reduce((rest, part) => rest.replaceAll(plain(part?.name ?? "-"), ""), text);
}

describe("every length in the words", () => {
  it.each([
    ["imperial", {}],
    ["metric", { job: { units: METRIC } }],
    ["outside, metric", { window: { shade: { mount: "outside" } }, job: { units: METRIC } }],
    ["inside", { window: { shade: { mount: "inside" } } }],
  ] as [string, HandShade][])("is a figure of the plan (%s)", (_name, shade) => {
    const input = handShade(shade);
    const figures = figuresOf(input);
    let count = 0;
    for (const step of planSteps(input)) {
      const text = withoutNames(textOf(step), input);
      expect(strayLengths(text, figures, input.resolved.units), `${step.id}: ${text}`).toEqual([]);
      count += lengthsIn(text).length;
    }
    expect(count).toBeGreaterThan(60);
  });

  it("would be caught if it were not", () => {
    const input = handShade();
    expect(strayLengths("Cut it 41 1⁄8 in long.", figuresOf(input), input.resolved.units)).toEqual([
      "41 1⁄8 in",
    ]);
  });
});

describe("the words themselves", () => {
  it("pass no verdict and raise no voice", () => {
    for (const shade of [{}, { window: { shade: { mount: "inside" } } }] as HandShade[]) {
      for (const step of stepsOf(shade)) {
        expect(verdictIn(textOf(step)), step.id).toBeUndefined();
        expect(textOf(step)).not.toMatch(/!|undefined|NaN|null|\[object/);
        expect(step.text, step.id).toMatch(/[.]$/);
        if (step.check !== undefined) expect(step.check, step.id).toMatch(/[.]$/);
      }
    }
  });

  it("are the same each time", () => {
    expect(stepsOf()).toEqual(stepsOf());
  });
});

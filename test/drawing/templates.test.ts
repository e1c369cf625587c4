import { describe, expect, test } from "vitest";
import {
  type Drawing,
  drawShadeTemplates,
  hasTemplates,
  type Polyline,
  place,
} from "../../src/drawing/index.ts";
import { plan, type ShadePlan } from "../../src/plan/index.ts";
import { headYMm } from "../../src/shade-plan/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

function planned(window: Parameters<typeof jobWith>[0]): { shade: ShadePlan; templates: Drawing[] } {
  const all = plan(jobWith(window, { units: { system: "metric", ruler: "1 mm" } }));
  const [shade] = all.shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return { shade, templates: drawShadeTemplates(all, shade) };
}

function areaOf(points: readonly (readonly [number, number])[]): number {
  const twice = points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

const lines = (drawing: Drawing | undefined, role: string): Polyline[] =>
  (drawing?.primitives ?? []).filter((one): one is Polyline => one.kind === "polyline" && one.role === role);

describe("templates at full size", () => {
  test("a shade of straight lines and square corners has none", () => {
    const { shade, templates } = planned({ shade: { making: { hems: { corner: "square" } } } });
    expect(templates).toEqual([]);
    expect(hasTemplates(shade)).toBe(false);
  });

  test("scallops that hardly hang ask for no template, and none is promised", () => {
    const { shade } = planned({
      shade: { style: "austrian", mount: "outside", making: { hems: { corner: "square" } } },
    });
    const taut = { ...shade.form, swags: shade.form.swags.map((swag) => ({ ...swag, sagMm: 0.5 })) };
    const flat = { ...shade, form: taut };
    expect(flat.form.swags.length).toBeGreaterThan(0);
    expect(drawShadeTemplates({ units: { system: "metric", ruler: "1 mm" } }, flat)).toEqual([]);
    expect(hasTemplates(flat)).toBe(false);
  });

  test("the head is the shade's own line, half of an arc, millimetre for millimetre", () => {
    const head = { kind: "arched" as const, fallMm: 250 };
    const { shade, templates } = planned({
      opening: { widthsMm: [900], heightsMm: [1500], head },
      shade: { mount: "outside" },
    });
    const [curve] = lines(
      templates.find(({ id }) => id === "template-head"),
      "finishedEdge",
    );
    const points = curve?.points ?? [];
    expect(points.length).toBeGreaterThan(20);
    for (const [x, y] of points) expectNear(y, headYMm(shade.size, x), 1e-9);
    expectNear(points.at(-1)?.[0] ?? 0, shade.size.finishedWidthMm / 2, 1e-9);
  });

  test("a scallop is as long as the cloth across half of it", () => {
    const { shade, templates } = planned({ shade: { style: "austrian", mount: "outside" } });
    const [curve] = lines(
      templates.find(({ id }) => id === "template-scallop"),
      "finishedEdge",
    );
    const points = curve?.points ?? [];
    const walked = points.slice(1).reduce((sum, [x, y], i) => {
      const [a, b] = points[i] ?? [0, 0];
      return sum + Math.hypot(x - a, y - b);
    }, 0);
    const widest = [...shade.form.swags].sort((a, b) => b.toMm - b.fromMm - (a.toMm - a.fromMm))[0];
    expectNear(walked, (widest?.arcMm ?? 0) / 2, 0.5);
  });

  test("every pleat has a template with its own lines: half ones at the edges have another", () => {
    const { shade, templates } = planned({ shade: { style: "pleated-balloon", mount: "outside" } });
    const { pleats } = shade.form;
    const folded = new Set(pleats.map(({ flatMm: [left, , right] }) => Math.round(right - left)));
    expect(folded.size).toBe(2);
    const drawn = templates.filter(({ id }) => id.startsWith("template-pleat"));
    expect(drawn.length).toBe(2);
    for (const { number, flatMm } of pleats) {
      const own = drawn.filter(({ title }) => new RegExp(`\\b${number}\\b`).test(title));
      expect(own.length, `pleat ${number}`).toBe(1);
      const xs = ["crease", "fold"]
        .flatMap((role) => lines(own[0], role).map(({ points }) => points[0]?.[0] ?? Number.NaN))
        .sort((a, b) => a - b);
      for (const [i, x] of flatMm.entries()) expectNear(xs[i] ?? Number.NaN, x - flatMm[0], 0.1);
      expect(own[0]?.caption).not.toContain("alike");
    }
  });

  test("none is a tint: a strip to lay on the cloth costs no ink but its lines", () => {
    const windows = [
      { shade: { style: "tailed", mount: "outside" } },
      { shade: { style: "pleated-balloon", mount: "outside" } },
      { shade: { style: "austrian", mount: "outside" } },
      { shade: { making: { hems: { corner: "mitred" } } } },
    ] as const;
    for (const window of windows) {
      const { templates } = planned(window);
      expect(templates).not.toEqual([]);
      for (const template of templates) {
        // By the shoelace formula; heads of arrows and the like are smaller.
        const filled = place(template, { scale: 1 }).items.filter(
          (one) =>
            one.kind === "path" && one.fill !== undefined && one.lines.some((points) => areaOf(points) > 100),
        );
        expect(filled, template.title).toEqual([]);
      }
    }
  });

  test("the mitre folds halfway between its creases: seen from the corner, hem over side", () => {
    const { shade, templates } = planned({ shade: { making: { hems: { corner: "mitred" } } } });
    const [fold] = lines(
      templates.find(({ id }) => id === "template-corner"),
      "crease",
    );
    const [[ax, ay] = [0, 0], [bx, by] = [0, 0]] = fold?.points ?? [];
    expectNear(
      (Math.atan2(Math.abs(by - ay), Math.abs(bx - ax)) * 180) / Math.PI,
      shade.cloth.corner.angleDeg ?? 0,
      1e-6,
    );
  });
});

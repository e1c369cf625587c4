import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NO_PARTS } from "../../test/hand-shade.ts";
import { jobWith, resolvedWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { type Figure, workingOf } from "../figures/index.ts";
import { dropFamily, type FoldCloth, foldWeight, type stackFolds } from "../mechanics/index.ts";
import { plan } from "../plan/index.ts";
import type { Folds, Form } from "../shade-plan/index.ts";
import { breakWay, uprightN } from "./break-way.ts";
import { foldLayers } from "./fold-cloth.ts";
import type { FoldsInput } from "./folds-input.ts";
import { judgeFolding } from "./judge-folding.ts";
import { planFolds } from "./plan-folds.ts";

const METRIC = { units: { system: "metric", ruler: "1 mm" } } as const;
const plain = (text = "") => text.replaceAll("\u00a0", " ");

/** A shade with ribs, as planned, and what its folds follow from. */
function shadeWith(window: Parameters<typeof jobWith>[0] = {}) {
  const [shade] = plan(jobWith(window, METRIC)).shades;
  const resolved = resolvedWith(window, METRIC);
  if (shade?.folds === undefined) throw new Error("invalid test: no folds");
  const { size, grid, form, mass, folds } = shade;
  const input: FoldsInput = { shade: resolved, size, grid, form, mass };
  return { input, folds, layers: foldLayers(resolved.cloths) };
}

const RIBBED = { shade: { making: { ribs: { kind: "strip-pocket" as const } } } };
const { input, folds, layers } = shadeWith(RIBBED);
const judge = (over: Partial<Folds>, shade: object = {}) =>
  judgeFolding(
    { ...input, shade: { ...input.shade, ...shade } as FoldsInput["shade"] },
    { ...folds, measured: true, breaks: "forward", sag: { ...folds.sag, barMm: 0, ribMm: 0 }, ...over },
    layers,
  ).map((finding) => ({ ...finding, text: plain(finding.text) }));

describe("what is said of folds, at its limit", () => {
  test("a sag is seen over its limit and not at it, of bar and of rib", () => {
    const { limitMm } = folds.sag;
    const ids = (barMm: number, ribMm: number) =>
      judge({ sag: { ...folds.sag, barMm, ribMm } }).map(({ id }) => id);
    expect(ids(limitMm, limitMm)).toEqual([]);
    expect(ids(limitMm + 1e-6, limitMm)).toEqual(["folds.hem-sags"]);
    expect(ids(limitMm, limitMm + 1e-6)).toEqual(["folds.ribs-sag"]);
    const [hem] = judge({ sag: { ...folds.sag, barMm: 9 } }, { parts: NO_PARTS });
    expect(hem?.text).toMatch(
      /^The hem would sag by 9 mm between columns \d+ mm apart with “.+”; more than \d+ mm is seen\.$/,
    );
    // Without a list no other bar is offered; and columns are, only where more of them help.
    expect(hem?.remedies).toEqual([]);
    const [rib] = judge({ sag: { ...folds.sag, ribMm: 9 } }, { parts: NO_PARTS });
    expect(rib?.remedies).toEqual([]);
  });

  test("folds that break backwards for certain are a fault, those that may are worth knowing", () => {
    const [will] = judge({ breaks: "backward" });
    const [may] = judge({ breaks: "unsure" });
    expect([will?.severity, may?.severity]).toEqual(["fix", "note"]);
    const why =
      "break backwards, towards the glass: the cloth is stiff for what hangs below it, and nothing hinges at the rows.";
    expect(will?.text).toContain(`Folds will ${why}`);
    expect(may?.text).toContain(`Folds may ${why}`);
    for (const one of [will, may])
      expect(one).toMatchObject({
        ...{ id: "folds.break-backwards", figures: ["folds.forward"] },
        cite: { source: "heavy-elastica", at: "cloth running on through a row without a hinge" },
        remedies: [{ label: "Put ribs at the rows", changes: "cloth for their pockets, and weight" }],
      });
    expect(judge({})).toEqual([]);
  });

  test("a stiffness that nobody measured is told with the figures that rest on it, where anything folds", () => {
    expect(judge({ measured: false })[0]?.figures).toEqual(["folds.bending-length", "folds.out"]);
    expect(judge({ measured: false, arcsMm: [] })).toEqual([]);
  });
});

describe("figures of folds", () => {
  const figures = (window: Parameters<typeof shadeWith>[0]): Figure[] => {
    const { input: given } = shadeWith(window);
    return [...planFolds(given).workings];
  };
  const restsOn = (list: readonly Figure[], id: string) => {
    const figure = list.find((one) => workingOf(one).id === id);
    return figure?.rule.restsOn(figure.of) ?? [];
  };

  test("name settings and figures that there are, a bar its own and a rib its own", () => {
    const all = figures(RIBBED);
    for (const figure of all)
      for (const on of figure.rule.restsOn(figure.of))
        expect(on, workingOf(figure).id).toMatch(
          /^(?:figure:[a-z]+\.[a-z*][a-z0-9*-]*|[a-z]+\/(?:\*|[a-zA-Z]+))$/,
        );
    expect(restsOn(all, "folds.bar-sag")).toEqual(
      expect.arrayContaining(["board/bar", "figure:cloth.bar-mass", "figure:folds.start", "lift/rearCords"]),
    );
    expect(restsOn(all, "folds.bar-sag")).not.toContain("ribs/rib");
    expect(restsOn(all, "folds.rib-sag")).toEqual(
      expect.arrayContaining(["ribs/rib", "figure:cloth.rib-mass"]),
    );
    expect(restsOn(all, "folds.rib-sag")).not.toContain("board/bar");
  });

  test("bonded layers are told to be stiffer than what is printed for loose ones", () => {
    const note = (bonded: boolean) => {
      const window = { shade: { lining: "cotton-lining", making: { lining: { bonded } } } };
      return figures(window)
        .map(workingOf)
        .find(({ id }) => id === "folds.bending-length")?.note;
    };
    expect(note(true)).toBe("as if the layers were loose: bonded they are stiffer, so take it for the least");
    expect(note(false)).toBe("loose layers: masses and stiffnesses add");
  });
});

test("cloth that is drawn in across, or hangs in swags or of itself, has no section of folds", () => {
  const values = (over: Partial<Form>) => planFolds({ ...input, form: { ...input.form, ...over } }).values;
  expect(values({})).toBeDefined();
  expect(values({ across: "gathered" })).toBeUndefined();
  expect(values({ swags: [{}] as never })).toBeUndefined();
  expect(values({ ease: [{}] as never })).toBeUndefined();
  expect(values({ ease: [] })).toBeDefined();
});

test("of any folds the way that they break is that of the row where the printed ratio is least", () => {
  const weightNPerMm2 = 230 * 9.80665e-9;
  const cloth: FoldCloth = {
    ...{ weightNPerMm2, rigidityNmm: weightNPerMm2 * 25 ** 3, thicknessMm: 0.8, paneMm: 38 },
    skirt: { lengthMm: 100, weightNPerMm: 0.01, centreMm: 60 },
  };
  const bare = { ribs: { rows: [] } } as unknown as Form;
  const mm = fc.double({ min: 60, max: 600, noNaN: true });
  const lean = fc.double({ min: 0, max: 3, noNaN: true });
  fc.assert(
    fc.property(fc.array(fc.tuple(mm, lean), { minLength: 2, maxLength: 6 }), (list) => {
      const arcsMm = list.map(([arcMm]) => arcMm);
      const planesRad = [0, ...list.map(([, rad]) => rad)];
      let liftN = cloth.skirt.weightNPerMm;
      const ratios = arcsMm.slice(0, -1).map((arcMm, i) => {
        liftN += weightNPerMm2 * arcMm;
        const rad = Math.max(2 * dropFamily(foldWeight(cloth, arcMm)).freeRad, planesRad[i + 1] ?? 0);
        return (liftN * 2.5) / (rad * uprightN(cloth, arcMm / 2));
      });
      const [figure] = breakWay(bare, cloth, arcsMm, { planesRad } as ReturnType<typeof stackFolds>).workings;
      const least = Math.min(...ratios);
      expectNear(figure?.value ?? 0, least, 1e-9 * least);
    }),
  );
});

import { expect, test } from "vitest";
import { gatheredBalloon } from "../../test/gallery/gathered-windows.ts";
import { outside, pleatedBalloon, relaxed } from "../../test/gallery/windows.ts";
import { swingsInMm } from "../drape/findings/swing.ts";
import {
  differs,
  drapeShade,
  type HangingShade,
  type SurfaceFigure,
  surfaceFigures,
} from "../drape/index.ts";
import { lengthText } from "../units/index.ts";
import type { ShadePlan } from "./plan-types.ts";
import { withSurface } from "./with-surface.ts";

const found = (plan: ReturnType<typeof relaxed>["plan"]) =>
  withSurface(plan).shades[0]?.findings.filter(({ id }) => id.startsWith("drape.")) ?? [];

/** Where its lowest point differs most from the plan's, let down, half way up or raised. */
function lowestOff(shade: ShadePlan): SurfaceFigure {
  let before: HangingShade | undefined;
  const [most] = [0, 0.5, 1]
    .flatMap((raise) => {
      before = drapeShade(shade, raise, before === undefined ? {} : { before });
      return surfaceFigures(shade, raise, before).filter(({ kind }) => kind === "lowest");
    })
    .filter(differs)
    .sort((a, b) => Math.abs(b.surfaceMm - (b.planMm ?? 0)) - Math.abs(a.surfaceMm - (a.planMm ?? 0)));
  if (most === undefined) throw new Error("no figure");
  return most;
}

test("what the surface has otherwise than the plan joins the findings of its shade, with both figures and which is used", () => {
  const { plan, shade } = gatheredBalloon();
  const figure = lowestOff(shade);
  const differing = found(plan).find(({ id }) => id === "drape.differs");
  expect(differing?.text).toMatch(
    new RegExp(
      `reaches ${lengthText(figure.surfaceMm, plan.units)} below the top line where the plan has ${lengthText(figure.planMm ?? 0, plan.units)}[a-z, ]+ stands out .+ and [a-z ]+ dips .+\\. The plan goes by its own figures\\.`,
    ),
  );
  expect(differing?.shadeId).toBe(shade.shadeId);
  // The depth of its poufs and the dip of its edge at each height, of which the plan has no profile.
  const hangs = found(plan).find(({ id }) => id === "drape.hangs")?.text;
  const dips = surfaceFigures(shade, 0, drapeShade(shade, 0)).flatMap((one) =>
    one.kind === "dip" ? [one.surfaceMm] : [],
  );
  expect(hangs).toContain(
    `dips between columns by up to ${lengthText(Math.max(...dips), plan.units)} let down`,
  );
  expect(hangs).toMatch(/stands out from its rings by .+ let down, .+ half way up and .+ raised\./);
  // What the plan said before stays as it was.
  expect(withSurface(plan).shades[0]?.findings.slice(0, shade.findings.length)).toEqual(shade.findings);
});

test("sides that draw in are told with their measure; a shade whose folds the plan solves has nothing more", () => {
  const { plan, shade } = relaxed();
  const most = Math.max(
    ...surfaceFigures(shade, 0.5, drapeShade(shade, 0.5, { before: drapeShade(shade, 0) })).flatMap(
      ({ kind, surfaceMm }) => (kind === "draws-in" ? [surfaceMm] : []),
    ),
  );
  expect(most).toBeGreaterThan(10);
  // One note has both readings: rings plumb, and cords that swing.
  const sides = found(plan).filter(({ id }) => id === "drape.sides");
  expect(sides.map(({ text }) => text)).toEqual([
    expect.stringMatching(
      /^Each side draws in by up to .+ (?:let down|half way up|raised) with its rings plumb .+; on free cords .+ swing in by up to .+ (?:half way up|raised), unless .+\. Outside a reveal/,
    ),
  ]);
  expect(found(plan).map(({ id }) => id)).toEqual(["drape.hangs", "drape.differs", "drape.sides"]);
  expect(found(outside().plan)).toEqual([]);
});

// Its lowest point is 59 mm off in 1,452, a 25th; of the 241 mm that hang below its rings it is a quarter.
test("poufs are told by what hangs below their rings, with why the plan has them lower and what the cords let in", () => {
  const { plan, shade } = pleatedBalloon();
  const texts = new Map(found(plan).map(({ id, text }) => [id, text]));
  const { surfaceMm, planMm = 0 } = lowestOff(shade);
  expect(Math.abs(surfaceMm - planMm)).toBeLessThan(0.1 * planMm);
  expect(texts.get("drape.differs")).toContain("a firm weave holds its poufs higher");
  const lowered = shade.grid.rows[0]?.yMm ?? 0;
  const inMm = swingsInMm(shade.form, shade.grid, lowered - 0.5 * shade.grid.travelMm);
  // Its sides hang straight where its rings do: the cords are told alone.
  expect(texts.get("drape.sides")).toMatch(
    new RegExp(`^On free cords .+ by up to ${lengthText(inMm, plan.units)} half way up`),
  );
  expect(found(gatheredBalloon().plan).some(({ id }) => id === "drape.sides")).toBe(false);
});

test("cloth that hangs flat where it is let down is said to, with no nought as a measure", () => {
  const hangs = found(relaxed().plan).find(({ id }) => id === "drape.hangs")?.text;
  expect(hangs).toMatch(
    /the shade hangs flat let down and stands out from its rings by .+ half way up and .+ raised\./,
  );
  expect(hangs).not.toMatch(/\b0[\u00a0 ](?:in|mm)\b/);
});

test("what is known of a shade already is not read anew", () => {
  const { plan, shade } = relaxed();
  const [known] = shade.findings;
  if (known === undefined) throw new Error("no finding");
  expect(withSurface(plan, () => [known]).shades[0]?.findings).toEqual([...shade.findings, known]);
  expect(withSurface(plan, () => []).shades[0]?.findings).toEqual(shade.findings);
});

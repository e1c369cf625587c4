import { expect, test } from "vitest";
import { gatheredBalloon } from "../../test/gallery/gathered-windows.ts";
import { outside, relaxed } from "../../test/gallery/windows.ts";
import { differs, drapeShade, surfaceFigures } from "../drape/index.ts";
import { lengthText } from "../units/index.ts";
import { withSurface } from "./with-surface.ts";

const found = (plan: ReturnType<typeof relaxed>["plan"]) =>
  withSurface(plan).shades[0]?.findings.filter(({ id }) => id.startsWith("drape.")) ?? [];

test("what the surface has otherwise than the plan joins the findings of its shade, with both figures and which is used", () => {
  const { plan, shade } = gatheredBalloon();
  const figure = surfaceFigures(shade, 1, drapeShade(shade, 1)).find(({ kind }) => kind === "lowest");
  if (figure?.planMm === undefined) throw new Error("no figure");
  expect(differs(figure)).toBe(true);
  const lowest = found(plan).find(({ id }) => id === "drape.lowest");
  expect(lowest?.text).toContain(`the plan has ${lengthText(figure.planMm, plan.units)} and goes by that`);
  expect(lowest?.shadeId).toBe(shade.shadeId);
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
  const [drawnIn] = found(plan).filter(({ id }) => id === "drape.draws-in");
  expect(drawnIn?.text).toMatch(/^Each side draws in by up to .+ (?:let down|half way up|raised)/);
  expect(found(outside().plan)).toEqual([]);
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

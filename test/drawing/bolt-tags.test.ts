import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawBoltPlan, place } from "../../src/drawing/index.ts";
import { openJobText } from "../../src/job/index.ts";
import { cuttingTicket, planAndCut } from "../../src/plan/index.ts";
import { PAGE } from "../gallery/papers.ts";

const opened = openJobText(readFileSync(new URL("../../examples/lantern-row.json", import.meta.url), "utf8"));
if (!opened.ok) throw new Error("no job");
const { job } = opened;
const { cutting } = planAndCut(job, {}, 3);
const bolts = (cutting?.cloths ?? []).flatMap((cloth) =>
  "bolts" in cloth.answer ? cloth.answer.bolts.map((bolt) => ({ cloth, bolt })) : [],
);

test("numbers of cuts lie clear of each other, though sleeves of cords are rows slimmer than a number", () => {
  let most = 0;
  for (const { cloth, bolt } of bolts) {
    const { items } = place(drawBoltPlan({ units: job.units, cutting: cloth, bolt }), PAGE);
    const tags = items.flatMap((item) =>
      item.kind === "circle" && item.part?.startsWith("cut-") ? [item] : [],
    );
    most = Math.max(most, tags.length);
    const close = tags.flatMap((one, i) =>
      tags
        .slice(i + 1)
        .filter(
          ({ centre, radiusMm }) =>
            Math.hypot(centre[0] - one.centre[0], centre[1] - one.centre[1]) < radiusMm + one.radiusMm,
        )
        .map(({ part }) => `${one.part} and ${part}`),
    );
    expect(close, cloth.clothName).toEqual([]);
  }
  expect(most).toBeGreaterThan(30);
});

test("a check sum names its unit once, and no length of nought", () => {
  const checks = bolts.flatMap(({ cloth, bolt }) =>
    cuttingTicket(cloth, bolt, job.units).map(({ check }) => check.replaceAll("\u00a0", " ")),
  );
  expect(checks.filter((check) => check.includes("="))).not.toEqual([]);
  for (const check of checks) {
    expect(check.match(/\bin\b/g), check).toHaveLength(1);
    expect(check).not.toMatch(/(?:^|\s)0(?: in|\s=)/);
  }
});

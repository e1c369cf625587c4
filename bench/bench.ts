import { ensureWeb } from "../scripts/build-web.mjs";
import { type Harness, startBrowser } from "../test/e2e/browser.ts";
import { contractMemory } from "./contract-memory.ts";
import { cut400x10 } from "./cut-400x10.ts";
import { cutC1C7 } from "./cut-c1-c7.ts";
import { cutContract } from "./cut-contract.ts";
import { cutFirst } from "./cut-first.ts";
import { cutGrowth } from "./cut-growth.ts";
import { cutKrN } from "./cut-kr-n.ts";
import { cutLengths } from "./cut-lengths.ts";
import { cutProved } from "./cut-proved.ts";
import { cutVsPackers } from "./cut-vs-packers.ts";
import { drapeFirst, drapeHeights } from "./drape.ts";
import { drapeFrame } from "./drape-frame.ts";
import { drapeVsSoftBody } from "./drape-vs-soft-body.ts";
import { editRepaint, editRepaintBrowser } from "./edit-repaint.ts";
import type { Figure } from "./figure.ts";
import { foldProfile } from "./fold-profile.ts";
import { foldVsBvp, foldVsBvpError } from "./fold-vs-bvp.ts";
import { jobOfMany } from "./job-many.ts";
import { liftSearch } from "./lift-search.ts";
import { loadGzip } from "./load-gzip.ts";
import { loadUsable } from "./load-usable.ts";
import { plan2000 } from "./plan-2000.ts";
import { planEdit, planEdit2000 } from "./plan-edit.ts";
import { planGrowth } from "./plan-growth.ts";
import { planMemory } from "./plan-memory.ts";
import { planOne } from "./plan-one.ts";
import { planRead } from "./plan-read.ts";
import { raiseFrame } from "./raise-frame.ts";
import { roomFigures } from "./room.ts";
import { workbook400 } from "./workbook-400.ts";
import { workbookOne } from "./workbook-one.ts";

type Measured = Figure | Figure[] | Promise<Figure | Figure[]>;

const isLong = process.argv.includes("--long");

/** What is measured, by the first words of its figures' names. */
const MEASURES: [name: string, measure: () => Measured][] = [
  ["plan.one", planOne],
  ["plan.read", planRead],
  ["plan.2000", plan2000],
  ["plan.growth", planGrowth],
  ["plan.edit", planEdit],
  ["plan.edit.2000", planEdit2000],
  ["plan.memory", planMemory],
  ["cut.lengths", cutLengths],
  ["cut.first", cutFirst],
  ["cut.growth", cutGrowth],
  ["cut.400x10", cut400x10],
  ["cut.contract", cutContract],
  ["cut.c1-c7", () => cutC1C7(isLong)],
  ["cut.kr-n", () => cutKrN(isLong)],
  ["cut.proved", () => cutProved(isLong)],
  ["cut.vs-packers", cutVsPackers],
  ["lift.search", liftSearch],
  ["drape.first", drapeFirst],
  ["drape.heights", drapeHeights],
  ["drape.vs-soft-body", drapeVsSoftBody],
  ["fold.profile", foldProfile],
  ["fold.vs-bvp", foldVsBvp],
  ["fold.vs-bvp-error", foldVsBvpError],
  ["workbook.one", workbookOne],
  ["workbook.400", workbook400],
  ["contract.memory", () => contractMemory(isLong)],
  ["room", roomFigures],
  ["drape.frame", drapeFrame],
];

/** What is measured in a browser. */
const IN_BROWSER: [name: string, measure: (harness: Harness) => Measured][] = [
  ["edit.repaint", editRepaint],
  ["edit.repaint.browser", editRepaintBrowser],
  ["raise.frame", raiseFrame],
  ["load.gzip", loadGzip],
  ["load.usable", loadUsable],
  ["job.200", (harness) => jobOfMany(harness, 200)],
  ["job.500", (harness) => jobOfMany(harness, 500)],
];

/** Those that were asked for by the beginnings of their names, or all. */
function wanted<Measure>(measures: readonly [name: string, measure: Measure][]): Measure[] {
  const asked = process.argv.slice(2).filter((word) => !word.startsWith("--"));
  return measures
    .filter(([name]) => asked.length === 0 || asked.some((word) => name.startsWith(word)))
    .map(([, measure]) => measure);
}

async function measureWanted(): Promise<Figure[]> {
  const figures: Figure[] = [];
  const inBrowser = wanted(IN_BROWSER);
  const measures = wanted(MEASURES);
  if (measures.length + inBrowser.length === 0) throw new Error("nothing of these names is measured");
  if (inBrowser.length > 0 || measures.includes(drapeFrame)) ensureWeb();
  for (const measure of measures) figures.push(...[await measure()].flat());
  if (inBrowser.length > 0) {
    const harness = await startBrowser();
    try {
      for (const measure of inBrowser) figures.push(...[await measure(harness)].flat());
    } finally {
      await harness.close();
    }
  }
  return figures.map((figure) => ({ ...figure, value: Number(figure.value.toPrecision(4)) }));
}

function tableText(figures: readonly Figure[]): string {
  const rows = figures.map(({ name, value, unit, goal, better }) => {
    const met = better === "lower" ? value <= goal : value >= goal;
    const bound = `${better === "lower" ? "at most" : "at least"} ${goal} ${unit}`;
    return [name, `${value} ${unit}`, bound, met ? "met" : "missed"];
  });
  const widths = [0, 1, 2, 3].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

const figures = await measureWanted();
console.log(process.argv.includes("--json") ? JSON.stringify(figures, null, 2) : tableText(figures));

import { ensureWeb } from "../scripts/build-web.mjs";
import { startBrowser } from "../test/e2e/browser.ts";
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
import { editRepaint } from "./edit-repaint.ts";
import type { Figure } from "./figure.ts";
import { foldProfile } from "./fold-profile.ts";
import { foldVsBvp, foldVsBvpError } from "./fold-vs-bvp.ts";
import { job200 } from "./job-200.ts";
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

async function measureAll(): Promise<Figure[]> {
  const long = process.argv.includes("--long");
  const figures = [
    planOne(),
    planRead(),
    plan2000(),
    planGrowth(),
    planEdit(),
    planEdit2000(),
    planMemory(),
    cutLengths(),
    cutFirst(),
    cutGrowth(),
    ...cut400x10(),
    cutContract(),
    ...cutC1C7(long),
    cutKrN(long),
    cutProved(long),
    ...(await cutVsPackers()),
    liftSearch(),
    drapeFirst(),
    drapeHeights(),
    await drapeVsSoftBody(),
    foldProfile(),
    foldVsBvp(),
    foldVsBvpError(),
    ...(await workbookOne()),
    ...workbook400(),
    ...(await roomFigures()),
  ];
  ensureWeb();
  figures.push(await drapeFrame());
  const harness = await startBrowser();
  try {
    for (const measure of [editRepaint, raiseFrame, loadGzip, loadUsable])
      figures.push(await measure(harness));
    figures.push(...(await job200(harness)));
  } finally {
    await harness.close();
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

const figures = await measureAll();
console.log(process.argv.includes("--json") ? JSON.stringify(figures, null, 2) : tableText(figures));

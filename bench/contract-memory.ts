import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { jobText } from "../src/job/index.ts";
import type { Figure } from "./figure.ts";
import { contractOf } from "./many-windows.ts";

/** 2 GiB. */
const GOAL_MB = 2147;

/** The most memory that commands take for a contract, planned to JSON, and cut with all drawings and JSON as well. */
export function contractMemory(isLong: boolean): Figure[] {
  const folder = mkdtempSync(join(tmpdir(), "shadewright-contract-"));
  try {
    const run = (windows: number, words: (job: string) => string[]): number => {
      const job = join(folder, `${windows}.json`);
      writeFileSync(job, jobText(contractOf(windows)));
      const script = fileURLToPath(new URL("./contract-run.js", import.meta.url));
      const said = execFileSync(process.execPath, [script, ...words(job), "--json", "--allow-findings"], {
        encoding: "utf8",
        env: { ...process.env, NODE_OPTIONS: "" },
      });
      const { exit, maxRssMb } = JSON.parse(said) as { exit: number; maxRssMb: number };
      if (exit !== 0) throw new Error(`the command ended with ${exit}`);
      return maxRssMb;
    };
    return (isLong ? [2000, 10_000] : [2000]).flatMap((windows): Figure[] => [
      {
        name: `contract.memory.plan.${windows}`,
        value: run(windows, (job) => ["plan", job]),
        ...{ unit: "MB", goal: GOAL_MB, better: "lower" },
      },
      {
        name: `contract.memory.cut.${windows}`,
        value: run(windows, (job) => ["cut", job, "--out", join(folder, "out")]),
        ...{ unit: "MB", goal: GOAL_MB, better: "lower" },
      },
    ]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

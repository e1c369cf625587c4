import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Figure } from "./figure.ts";

const WINDOWS = 400;

/** The workbook of a contract, planned and printed in a process of its own: how long, and how much memory at most. */
export function workbook400(): Figure[] {
  const script = fileURLToPath(new URL("./contract-workbook.js", import.meta.url));
  const said = execFileSync(process.execPath, [script, String(WINDOWS)], {
    encoding: "utf8",
  });
  const { seconds, maxRssMb } = JSON.parse(said) as { seconds: number; maxRssMb: number };
  return [
    { name: "workbook.400", value: seconds, unit: "s", goal: 60, better: "lower" },
    { name: "workbook.400.memory", value: maxRssMb, unit: "MB", goal: 1000, better: "lower" },
  ];
}

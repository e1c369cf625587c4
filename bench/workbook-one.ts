import { readWorkbookFonts } from "../src/cli/workbook-fonts.ts";
import { plan } from "../src/plan/index.ts";
import { makeWorkbook } from "../src/workbook/index.ts";
import { type Figure, median } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

const WARM = 3;
const TIMES = 10;

/** The workbook of one shade, all pages, the machine warm. */
export async function workbookOne(): Promise<Figure> {
  const input = { plan: plan(jobOf(1)), paper: "letter", fonts: readWorkbookFonts() } as const;
  const samples: number[] = [];
  for (let n = -WARM; n < TIMES; n++) {
    const start = performance.now();
    await makeWorkbook(input);
    if (n >= 0) samples.push(performance.now() - start);
  }
  return { name: "workbook.one", value: median(samples), unit: "ms", goal: 500, better: "lower" };
}

import { readWorkbookFonts } from "../src/cli/workbook-fonts.ts";
import { plan } from "../src/plan/index.ts";
import { writeWorkbook } from "../src/workbook/index.ts";
import { jobOf } from "./many-windows.ts";

/** Plans and prints so many windows in a process of its own, and says what that took. */
const windows = Number(process.argv[2]);
const start = performance.now();
let bytes = 0;
await writeWorkbook(
  { plan: plan(jobOf(windows)), paper: "letter", fonts: readWorkbookFonts(), createdOn: new Date(0) },
  async (chunk) => {
    bytes += chunk.length;
  },
);
const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
console.log(
  JSON.stringify({
    seconds: (performance.now() - start) / 1000,
    cpuSeconds: (userCPUTime + systemCPUTime) / 1e6,
    maxRssMb: maxRSS / 1000,
    bytes,
  }),
);

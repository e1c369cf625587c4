import { main } from "../src/cli/main.ts";
import { keepHeapSmall } from "../src/cli/small-heap.ts";

/** One command line in a process of its own, whose results go nowhere: says how it ended, how long and how much memory. */
keepHeapSmall();
const start = performance.now();
let bytes = 0;
const exit = await main(process.argv.slice(2), {
  stdin: process.stdin,
  out: (text) => {
    bytes += text.length;
  },
  outPart: async (part) => {
    bytes += part.length;
  },
  err: () => {},
  columns: 100,
});
const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
console.log(
  JSON.stringify({
    exit,
    bytes,
    seconds: (performance.now() - start) / 1000,
    cpuSeconds: (userCPUTime + systemCPUTime) / 1e6,
    maxRssMb: maxRSS / 1000,
  }),
);

import { Session } from "node:inspector";
import { plan } from "../src/plan/index.ts";
import type { Figure } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

const WARM = 300;
const PLANS = 100;

interface SampledNode {
  selfSize: number;
  children: SampledNode[];
}

function bytesOf({ selfSize, children }: SampledNode): number {
  return children.reduce((sum, child) => sum + bytesOf(child), selfSize);
}

/** What one plan of one shade takes from the heap, kept or not, by the engine's own sampling. */
export function planMemory(): Figure {
  const job = jobOf(1);
  for (let n = 0; n < WARM; n++) plan(job);
  const session = new Session();
  session.connect();
  session.post("HeapProfiler.startSampling", {
    samplingInterval: 1024,
    includeObjectsCollectedByMajorGC: true,
    includeObjectsCollectedByMinorGC: true,
  });
  for (let n = 0; n < PLANS; n++) plan(job);
  let bytes = Number.NaN;
  // The callback of a session on its own thread is called before `post` returns.
  session.post("HeapProfiler.stopSampling", (error, { profile }) => {
    if (error === null) bytes = bytesOf(profile.head);
  });
  session.disconnect();
  return { name: "plan.memory", value: bytes / PLANS / 1000, unit: "kB", goal: 250, better: "lower" };
}

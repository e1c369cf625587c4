import { type Figure, type Finding, figureRule } from "../../figures/index.ts";
import { leastHoldN } from "../../job/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { fineText, forceText } from "../../units/index.ts";
import type { LockInput } from "../lift-input.ts";
import { LOCK_CHOICE } from "./lock-parts.ts";

/** What a lock must hold of one cord, over what hangs on it: it is worn and damp before it is new again. */
const HOLD_FACTOR = sourced(2, "ratio", cite("common-practice", "one cord holds twice what hangs on it"));
/** A test with a cord that is off by more than this share of the one in use says nothing about it. */
const SAME_CORD = 0.1;

const HOLD_NEEDED = figureRule({
  id: "lift.hold-needed",
  label: "What the lock must hold of one cord",
  symbol: "H",
  unit: "N",
  formula: "k·T",
  inputs: {
    k: ["ratio", "kept in hand"],
    T: ["N", "largest load of one cord", "figure:lift.held", "figure:shape.columns"],
  },
  restsOn: LOCK_CHOICE,
  cite: HOLD_FACTOR.cite,
  compute: ({ k, T }) => k * T,
});

/** Does the lock hold, by the test at the bench? Asked of every lock that was tested, and of one without a stated capacity. */
export function judgeHold(
  { shade, liftParts: { lock } }: LockInput,
  loadsN: readonly number[],
): { findings: Finding[]; workings: Figure[] } {
  const test = lock.tests?.hold;
  if (test === undefined && lock.cordsMax !== undefined) return { findings: [], workings: [] };
  const largestN = Math.max(0, ...loadsN);
  const needed = HOLD_NEEDED.figure({ k: HOLD_FACTOR.value, T: largestN });
  const text = (forceN: number) => forceText(forceN, shade.units);
  const found = (id: string, severity: Finding["severity"], words: string) => ({
    findings: [
      {
        stage: "lift",
        shadeId: shade.shadeId,
        path: `${shade.path}/shade/making/lift/lock`,
        cite: HOLD_FACTOR.cite,
        figures: ["lift.hold-needed"],
        remedies: [],
        id,
        severity,
        text: words,
      } satisfies Finding,
    ],
    workings: [needed],
  });
  if (test === undefined) {
    return found(
      "lift.hold-untested",
      "unproven",
      `Nobody states how much “${lock.name}” holds. Thread one cord, lock it and pull on a luggage scale ten times: the least reading must be ${text(needed.value)} or more, twice what hangs on the heaviest cord of this shade.`,
    );
  }
  const leastN = leastHoldN(test);
  const cordMm = shade.cord.diameterMm;
  if (Math.abs(test.cordDiameterMm - cordMm) > SAME_CORD * cordMm) {
    return found(
      "lift.hold-other-cord",
      "unproven",
      `“${lock.name}” was tested with cord of ${fineText(test.cordDiameterMm)}; this one is ${fineText(cordMm)}. Test it again with this cord: it must hold ${text(needed.value)}.`,
    );
  }
  if (leastN >= needed.value) return { findings: [], workings: [needed] };
  return found(
    "lift.hold-short",
    leastN < largestN ? "stop" : "fix",
    `In your test one cord slipped in “${lock.name}” at ${text(leastN)}; the heaviest cord of this shade carries ${text(largestN)}, and twice that, ${text(needed.value)}, is asked for. Take another lock, a thicker cord that it takes, more columns, or a lighter bar.`,
  );
}

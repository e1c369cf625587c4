import { MEASURE_STIFFNESS } from "../job/index.ts";
import type { Step } from "../shade-plan/index.ts";
import { listed } from "../words/index.ts";
import type { Bench } from "./bench.ts";

/** A strip of each cloth whose stiffness nobody measured, while there is cloth to spare. */
export function cutStiffness({ resolved, cloth }: Bench): Step[] {
  const unknown = cloth.layers.filter((cut) => resolved.cloths[cut.layer]?.bendingLengthMm === undefined);
  if (unknown.length === 0) return [];
  const names = [...new Set(unknown.map((cut) => `“${cut.clothName}”`))];
  return [
    {
      id: "cut-stiffness",
      chapter: "cut",
      title: "Measure how stiff the cloth is",
      text: `How far raised folds stand out follows from how stiff ${listed(names)} ${names.length === 1 ? "is" : "are"}; so far it is a guess. ${MEASURE_STIFFNESS} Enter it with the cloth.`,
      check: "Two strips of one cloth differ by less than a tenth; otherwise cut a third.",
    },
  ];
}

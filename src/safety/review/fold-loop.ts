import type { Finding, Remedy, WorkingBook } from "../../figures/index.ts";
import { type ResolvedShade, STYLE_TRAITS } from "../../job/index.ts";
import type { Form, Stretch } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { inches, lengthText, SAME_LENGTH_MM } from "../../units/index.ts";
import { type Setting, variantPatch } from "./variants.ts";

/** Way around cloth and tape between two marks, at most: as a workroom reads the loops of a hobbled shade. */
const WORKROOM_LOOP = sourced(inches(16.9), "mm", cite("hobbled-workroom", "cloth + tape at most 16.9 in"));

/**
 * The loop that a soft fold makes of its own cloth and the tape behind it. No rule that was read asks for it: the
 * loop that a hand can draw is the cord’s, and the review has that. A workroom counts the cloth as well.
 */
export function judgeFoldLoop(
  { resolved, form }: { resolved: ResolvedShade; form: Form },
  book: WorkingBook,
): Finding[] {
  if (form.across !== "flat") return [];
  const worst = form.stretches
    .slice(0, -1)
    .filter((stretch) => hangingMm(stretch) > stretch.cordMm + SAME_LENGTH_MM)
    .sort((a, b) => b.cordMm + hangingMm(b) - (a.cordMm + hangingMm(a)))[0];
  if (worst === undefined) return [];
  const loopMm = book.figure("safety.fold-loop", {
    label: "Around the loop of cloth and tape between two marks",
    symbol: "P",
    unit: "mm",
    formula: "t + c",
    given: {
      t: [worst.cordMm, "mm", "tape between two marks"],
      c: [hangingMm(worst), "mm", "cloth between them"],
    },
    cite: WORKROOM_LOOP.cite,
    compute: ({ t, c }) => t + c,
  });
  if (loopMm <= WORKROOM_LOOP.value + SAME_LENGTH_MM) return [];
  const text = (mm: number) => lengthText(mm, resolved.units);
  return [
    {
      id: "safety.fold-loop",
      severity: "fix",
      stage: "safety",
      shadeId: resolved.shadeId,
      path: `${resolved.path}/shade/making/hobble`,
      text: `Each soft fold makes a loop of its own: ${text(hangingMm(worst))} of cloth and ${text(worst.cordMm)} of tape, ${text(loopMm)} around. A workroom keeps cloth and tape together to ${text(WORKROOM_LOOP.value)}, since a child’s head goes through a larger one. No rule that was read here says so.`,
      cite: WORKROOM_LOOP.cite,
      figures: ["safety.fold-loop"],
      remedies: remediesFor(resolved, worst),
    },
  ];
}

function hangingMm({ clothMm, sewnMm = 0 }: Stretch): number {
  return clothMm - sewnMm;
}

/** Closer tape marks: at this fullness cloth and tape together then keep to the loop, however many marks fill the length. */
function remediesFor(resolved: ResolvedShade, { cordMm }: Stretch): Remedy[] {
  const { hobble } = resolved.making;
  if (!STYLE_TRAITS[resolved.style].hangsOnTapes) return [];
  const tapeMm = Math.floor(WORKROOM_LOOP.value / (1 + hobble.fullness));
  const asItFalls: Setting[] =
    hobble.match && resolved.cloths.face.repeat !== undefined ? [["hobble", "match", false]] : [];
  const closer: Setting[] = [
    ["hobble", "rule", "tape"],
    ["hobble", "tapeMm", tapeMm],
    ...(hobble.clothMm === undefined
      ? asItFalls
      : ([["hobble", "clothMm", Math.floor(tapeMm * hobble.fullness)]] satisfies Setting[])),
  ];
  const offer = (label: string, settings: readonly Setting[]): Remedy => ({
    label,
    ...(asItFalls.length > 0 ? { changes: "The pattern then falls on the folds as it comes." } : {}),
    patch: variantPatch(resolved, settings),
  });
  // The other reading halves both: cloth L/n and tape L/2n.
  const halves =
    hobble.rule === "folds-of-six" && hobble.clothMm === undefined && 1.5 * cordMm <= WORKROOM_LOOP.value;
  return [
    ...(halves
      ? [
          offer("Read the published rule to the letter: folds of half the size", [
            ["hobble", "rule", "folds-of-three"],
            ...asItFalls,
          ]),
        ]
      : []),
    offer(`Mark the tape at most ${lengthText(tapeMm, resolved.units)} apart`, closer),
  ];
}

import {
  type Finding,
  figureId,
  figureRule,
  lazy,
  type Remedy,
  type StageResult,
} from "../../figures/index.ts";
import { STYLE_TRAITS } from "../../job/index.ts";
import type { Stretch } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { inches, lengthText, SAME_LENGTH_MM } from "../../units/index.ts";
import type { SafetyShade } from "../safety-reads.ts";
import type { ShadeFacts } from "./lift-geometry.ts";
import { type VariantSetting, variantPatch } from "./variants.ts";

/** Way around cloth and tape between two marks, at most: as a workroom reads the loops of a hobbled shade. */
const WORKROOM_LOOP = sourced(inches(16.9), "mm", cite("hobbled-workroom", "cloth + tape at most 16.9 in"));

const FOLD_LOOP = figureRule({
  id: "safety.fold-loop",
  label: "Around the loop of cloth and tape between two marks",
  symbol: "P",
  unit: "mm",
  formula: "t + c",
  inputs: {
    t: ["mm", "tape between two marks", "figure:shape.*"],
    c: ["mm", "cloth between them", "figure:shape.*"],
  },
  restsOn: ["shade/style", "shade/face", "hobble/tapeMm", "hobble/clothMm", "hobble/fullness", "hobble/rule"],
  cite: WORKROOM_LOOP.cite,
  compute: ({ t, c }) => t + c,
});

/**
 * The loop that a soft fold makes of its own cloth and the tape behind it. No rule that was read asks for it: the
 * loop that a hand can draw is the cord’s, and the review has that. A workroom counts the cloth as well.
 */
export function judgeFoldLoop({
  shade,
  form,
}: Pick<ShadeFacts, "shade" | "form">): Omit<StageResult<undefined>, "values"> {
  if (form.across !== "flat") return NOTHING;
  const worst = form.stretches
    .slice(0, -1)
    .filter((stretch) => hangingMm(stretch) > stretch.cordMm + SAME_LENGTH_MM)
    .sort((a, b) => b.cordMm + hangingMm(b) - (a.cordMm + hangingMm(a)))[0];
  if (worst === undefined) return NOTHING;
  const loop = FOLD_LOOP.figure({ t: worst.cordMm, c: hangingMm(worst) });
  const workings = [loop];
  if (loop.value <= WORKROOM_LOOP.value + SAME_LENGTH_MM) return { findings: [], workings };
  const text = (mm: number) => lengthText(mm, shade.units);
  const remedies = lazy(() => remediesFor(shade, worst));
  const finding: Finding = {
    id: "safety.fold-loop",
    severity: "fix",
    stage: "safety",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/hobble`,
    text: `Each soft fold makes a loop of its own: ${text(hangingMm(worst))} of cloth and ${text(worst.cordMm)} of tape, ${text(loop.value)} around. A workroom keeps cloth and tape together to ${text(WORKROOM_LOOP.value)}, since a child’s head goes through a larger one. No rule that was read here says so.`,
    cite: WORKROOM_LOOP.cite,
    figures: [figureId(loop)],
    get remedies() {
      return remedies();
    },
  };
  return { findings: [finding], workings };
}

const NOTHING = { findings: [], workings: [] };

function hangingMm({ clothMm, sewnMm = 0 }: Stretch): number {
  return clothMm - sewnMm;
}

/** Closer tape marks: at this fullness cloth and tape together then keep to the loop, however many marks fill the length. */
function remediesFor(shade: SafetyShade, { cordMm }: Stretch): Remedy[] {
  const { hobble } = shade.making;
  if (!STYLE_TRAITS[shade.style].hangsOnTapes) return [];
  const tapeMm = Math.floor(WORKROOM_LOOP.value / (1 + hobble.fullness));
  const asItFalls: VariantSetting[] =
    hobble.match && shade.cloths.face.repeat !== undefined ? [["hobble", "match", false]] : [];
  const closer: VariantSetting[] = [
    ["hobble", "rule", "tape"],
    ["hobble", "tapeMm", tapeMm],
    ...(hobble.clothMm === undefined
      ? asItFalls
      : ([["hobble", "clothMm", Math.floor(tapeMm * hobble.fullness)]] satisfies VariantSetting[])),
  ];
  const offer = (label: string, settings: readonly VariantSetting[]): Remedy => ({
    label,
    ...(asItFalls.length > 0 ? { changes: "The pattern then falls on the folds as it comes." } : {}),
    patch: variantPatch(shade, settings),
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
    offer(`Mark the tape at most ${lengthText(tapeMm, shade.units)} apart`, closer),
  ];
}

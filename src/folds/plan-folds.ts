import type { Finding, WorkingBook } from "../account/index.ts";
import { LOFT } from "../job/index.ts";
import { fixedApron, foldOpening, foldWeight, stackFolds } from "../mechanics/index.ts";
import type { ClothFeel, Folds } from "../shade/index.ts";
import { cite } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import { breakWay } from "./break-way.ts";
import { foldArcs } from "./fold-arcs.ts";
import { clothFeel, foldCloth, foldLayers } from "./fold-cloth.ts";
import type { FoldsInput } from "./folds-input.ts";
import { hemSag } from "./hem-sag.ts";
import { judgeFolding } from "./judge-folding.ts";

/** A stack of more folds than this is taken as this deep and that many times thicker: nobody makes it. */
const MOST_FOLDS = 24;

/**
 * How the cloth folds: what it feels, how far folds stand out raised and on their way, what starts them, which way they
 * break, and how the hem hangs between columns. Shapes for every height come from `layFolds` when they are drawn. Cloth
 * that is drawn in across, or hangs in swags, folds in two directions at once: it has no such section.
 */
export function planFolds(
  input: FoldsInput,
  book: WorkingBook,
): { feel: ClothFeel; folds?: Folds; findings: Finding[] } {
  const { form, grid } = input;
  const hangs = form.swags.length > 0 || (form.ease ?? []).length > 0;
  const layers = foldLayers(input.brief);
  const feel = clothFeel(input.brief, layers);
  if (form.across === "gathered" || hangs) return { feel, findings: [] };
  const { cloth, bendingMm } = foldCloth(input, layers, feel, book);
  const arcsMm = foldArcs(grid, form).slice(0, MOST_FOLDS);
  const stack = stackFolds({ ...cloth, apron: apronOf(input, cloth), arcsMm });
  const folds: Folds = {
    cloth,
    arcsMm,
    bendingMm,
    measured: feel.measured,
    outMm: standsOut(stack.frontMm, cloth.thicknessMm, book),
    behindMm: stack.behindMm,
    trainedMm: trained(arcsMm.length, cloth.thicknessMm, book),
    ...opening(input, cloth, arcsMm, book),
    breaks: breakWay(input, cloth, arcsMm, stack, book),
    sag: hemSag(input, cloth, book),
  };
  return { feel, folds, findings: judgeFolding(input, folds, layers) };
}

/** A soft fold over the hem holds the folds above it off, and nothing swings it back. */
function apronOf({ form: { stretches } }: FoldsInput, cloth: Folds["cloth"]) {
  const [lowest] = stretches;
  if (lowest === undefined || lowest.clothMm - lowest.cordMm < 1) return cloth.apron;
  const { outShare } = foldOpening(foldWeight(cloth, lowest.clothMm));
  const leanRad = Math.min(Math.PI / 3, Math.atan2(outShare * lowest.clothMm, Math.max(1, lowest.cordMm)));
  return fixedApron(leanRad);
}

function standsOut(frontMm: number, thicknessMm: number, book: WorkingBook): number {
  return book.figure("folds.out", {
    label: "Raised folds stand out in front of the flat cloth",
    symbol: "f",
    unit: "mm",
    formula: "x + t / 2",
    given: {
      x: [frontMm, "mm", "middle of the foremost fold’s cloth, where its loop is widest"],
      t: [thicknessMm, "mm", "thickness of all layers"],
    },
    cite: cite("heavy-elastica", "gathered folds pressed by those in front of them"),
    note: "as sewn; trained and tied they lie flatter",
    reckon: ({ x, t }) => x + t / 2,
  });
}

function trained(folds: number, thicknessMm: number, book: WorkingBook): number {
  return book.figure("folds.trained", {
    label: "Depth of the stack once trained flat",
    symbol: "d_0",
    unit: "mm",
    formula: "(2·p + 2)·t·k",
    given: {
      p: [folds, "count", "folds"],
      t: [thicknessMm, "mm", "thickness of all layers"],
      k: [LOFT.value, "ratio", "loft of gathered folds"],
    },
    cite: LOFT.cite,
    reckon: ({ p, t, k }) => (2 * p + 2) * t * k,
  });
}

/** The lowest fold on its way: what makes it give way, and how far it swings out. */
function opening(
  { size }: FoldsInput,
  cloth: Folds["cloth"],
  arcsMm: readonly number[],
  book: WorkingBook,
): Pick<Folds, "openOutMm" | "startN"> {
  const arcMm = arcsMm[0] ?? 0;
  const { startShare, outShare } = foldOpening(foldWeight(cloth, arcMm));
  const startN = book.figure("folds.start", {
    label: "Pull that makes the first fold give way, besides the weight below it",
    symbol: "P",
    unit: "N",
    formula: "u·g·m·s·W / 10^9",
    given: {
      u: [startShare, "ratio", "share of the fold’s weight"],
      g: [GRAVITY, "ratio", "standard gravity, m/s²"],
      m: [(cloth.weightNPerMm2 / GRAVITY) * 1e9, "g/m2", "mass per area of all layers"],
      s: [arcMm, "mm", "cloth in the fold"],
      W: [size.finishedWidthMm, "mm", "finished width"],
    },
    cite: cite("heavy-elastica", "a strip between two rows, 2 % of it slack"),
    reckon: ({ u, g, m, s, W }) => (u * g * m * s * W) / 1e9,
  });
  return { startN, openOutMm: outShare * arcMm };
}

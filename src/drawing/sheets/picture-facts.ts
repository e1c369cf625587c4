import { differs, type SurfaceFigure } from "../../drape/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import { listed } from "../../words/index.ts";
import type { Fact } from "../model.ts";

/** What is read from the cloth as it hangs, each beside the plan's own figure; alike scallops and columns once. */
export function pictureFacts(figures: readonly SurfaceFigure[], units: UnitChoice): Fact[] {
  return [...new Set(figures.map(({ kind }) => kind))].flatMap((kind): Fact[] => {
    const own = figures.filter((figure) => figure.kind === kind);
    const texts = own.map((figure) => textOf(figure, units));
    const [first = ""] = texts;
    if (texts.every((text) => text === first)) return [{ label: nameOf(kind), text: first }];
    return own.map(({ number }, at) => ({ label: `${nameOf(kind)}, ${number ?? 1}`, text: texts[at] ?? "" }));
  });
}

/** Which figures differ from the plan’s by more than a tenth, in one sentence; nothing where none does. */
export function differenceWords(figures: readonly SurfaceFigure[]): string {
  const kinds = new Set(figures.filter(differs).map(({ kind }) => kind));
  if (kinds.size === 0) return "";
  const names = [...kinds].map((kind) => nameOf(kind).toLowerCase());
  return ` More than a tenth from the plan: ${listed(names)}. The plan goes by its own figures.`;
}

function nameOf(kind: SurfaceFigure["kind"]): string {
  return {
    lowest: "Lowest point of the cloth",
    "stands-out": "How far the cloth stands out",
    "draws-in": "How far the sides draw in",
    dip: "Dip of the scallops",
    "along-column": "Cloth along the columns",
  }[kind];
}

function textOf(figure: SurfaceFigure, units: UnitChoice): string {
  const own = lengthText(figure.surfaceMm, units);
  if (figure.planMm === undefined) return `${own} as it hangs; the plan has no figure for it`;
  const plan = lengthText(figure.planMm, units);
  if (!differs(figure))
    return plan === own
      ? `${own} as it hangs, as the plan has it`
      : `${own} as it hangs; the plan has ${plan}`;
  return `${own} as it hangs, ${plan} in the plan, which differs by more than a tenth: the plan’s is used`;
}

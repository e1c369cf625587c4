import type { Finding, Remedy } from "../figures/index.ts";
import { MEASURE_STIFFNESS, settingPatch } from "../job/index.ts";
import type { Folds } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import { areBonded, type FoldLayer } from "./fold-cloth.ts";
import type { FoldsInput } from "./folds-input.ts";
import {
  barWeightNPerMm,
  fewestColumns,
  type LoadedBar,
  limitOf,
  loadedBars,
  sagOver,
  widestBay,
} from "./hem-sag.ts";

/** What is to be said of how the cloth folds. */
export function judgeFolding(input: FoldsInput, folds: Folds, layers: readonly FoldLayer[]): Finding[] {
  return [...unknownStiffness(input, folds, layers), ...breaksBack(input, folds), ...sags(input, folds)];
}

function unknownStiffness({ shade }: FoldsInput, folds: Folds, layers: readonly FoldLayer[]): Finding[] {
  if (folds.measured || folds.arcsMm.length === 0) return [];
  const names = layers.filter(({ measured }) => !measured).map(({ cloth }) => `“${cloth.name}”`);
  const outText = lengthText(folds.outMm, shade.units);
  const bonded = areBonded(shade, layers);
  return [
    {
      id: "folds.stiffness-unknown",
      severity: "unproven",
      stage: "cloth",
      shadeId: shade.shadeId,
      path: bonded ? `${shade.path}/shade/making/lining/bondedBendingMm` : `${shade.path}/shade`,
      text: bonded
        ? `The layers are bonded, and how stiff they are together was not measured. They are stiffer than loose ones, so that raised folds stand out by ${outText} at least. Bond a strip of all layers as the shade will be, and measure that. ${MEASURE_STIFFNESS}`
        : `The stiffness of ${[...new Set(names)].join(" and ")} was not measured, so that raised folds stand out by ${outText} is a guess. ${MEASURE_STIFFNESS}`,
      cite: cite("peirce-1930"),
      figures: ["folds.bending-length", "folds.out"],
      remedies: [],
    },
  ];
}

function breaksBack({ shade }: FoldsInput, { breaks }: Folds): Finding[] {
  if (breaks === "forward") return [];
  const goes = breaks === "backward" ? "Folds will" : "Folds may";
  return [
    {
      id: "folds.break-backwards",
      severity: breaks === "backward" ? "fix" : "note",
      stage: "shape",
      shadeId: shade.shadeId,
      path: `${shade.path}/shade/making/ribs/kind`,
      text: `${goes} break backwards, towards the glass: the cloth is stiff for what hangs below it, and nothing hinges at the rows. Ribs at the rows, a heavier bar, or folds laid by hand and tied for some days make them break forward.`,
      cite: cite("heavy-elastica", "cloth running on through a row without a hinge"),
      figures: ["folds.forward"],
      remedies: [
        {
          label: "Put ribs at the rows",
          changes: "cloth for their pockets, and weight",
          patch: settingPatch(
            shade,
            "ribs",
            "kind",
            shade.cloths.lining === undefined ? "strip-pocket" : "lining-pocket",
          ),
        },
      ],
    },
  ];
}

function sags(input: FoldsInput, folds: Folds): Finding[] {
  const { sag, cloth } = folds;
  const { bar, rib } = loadedBars(input, cloth);
  const bars: [LoadedBar | undefined, number | undefined, "bar" | "rib"][] = [
    [bar, sag.barMm, "bar"],
    [rib, sag.ribMm, "rib"],
  ];
  return bars.flatMap(([loaded, mm, what]) =>
    loaded === undefined || mm === undefined || mm <= sag.limitMm
      ? []
      : [sagging(input, loaded, mm, sag.limitMm, what)],
  );
}

function sagging(
  input: FoldsInput,
  loaded: LoadedBar,
  sagMm: number,
  limitMm: number,
  what: "bar" | "rib",
): Finding {
  const { shade, grid } = input;
  const text = (mm: number) => lengthText(mm, shade.units);
  const bayMm = widestBay(grid.columns.map(({ xMm }) => xMm));
  const words = what === "bar" ? "The hem" : "Ribs";
  return {
    id: what === "bar" ? "folds.hem-sags" : "folds.ribs-sag",
    severity: "fix",
    stage: "shape",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/columns/largestSpacingMm`,
    text: `${words} would sag by ${text(sagMm)} between columns ${text(bayMm)} apart with “${loaded.bar.name}”; more than ${text(limitMm)} is seen.`,
    cite: cite("beam-theory", "continuous beam on the columns"),
    figures: [`folds.${what}-sag`, "folds.sag-limit"],
    remedies: [...closerColumns(input, loaded), ...stifferBars(input, loaded, what)],
  };
}

function closerColumns(input: FoldsInput, loaded: LoadedBar): Remedy[] {
  const { shade, grid } = input;
  const needed = fewestColumns(input, [loaded]);
  if (needed <= grid.columns.length) return [];
  if (shade.making.columns.count !== undefined) {
    return [{ label: `Use ${needed} columns`, patch: settingPatch(shade, "columns", "count", needed) }];
  }
  const first = grid.columns[0]?.xMm ?? 0;
  const last = grid.columns.at(-1)?.xMm ?? 0;
  const spacingMm = Math.max(20, (last - first) / (needed - 1));
  return [
    {
      label: `Columns at most ${lengthText(spacingMm, shade.units)} apart: ${needed} of them`,
      patch: settingPatch(shade, "columns", "largestSpacingMm", spacingMm),
    },
  ];
}

/** Bars of the list that stay straight over the columns as they are, what they weigh more taken along. */
function stifferBars(input: FoldsInput, loaded: LoadedBar, what: "bar" | "rib"): Remedy[] {
  const { shade, grid, size } = input;
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  const limitMm = limitOf(widestBay(columnsMm));
  const list = what === "bar" ? shade.parts.bars : shade.parts.ribs;
  const own = barWeightNPerMm(loaded.bar);
  return list
    .filter((bar) => {
      const loadNPerMm = loaded.loadNPerMm - own + barWeightNPerMm(bar);
      return (
        bar.id !== loaded.bar.id && sagOver(columnsMm, size.finishedWidthMm, { bar, loadNPerMm }) <= limitMm
      );
    })
    .slice(0, 2)
    .map((bar) => ({
      label: `Use “${bar.name}”`,
      patch:
        what === "bar"
          ? settingPatch(shade, "board", "bar", bar.id)
          : settingPatch(shade, "ribs", "rib", bar.id),
    }));
}

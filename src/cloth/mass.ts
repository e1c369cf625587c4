import type { WorkingBook } from "../figures/index.ts";
import { BAR_DENSITY, type Bar, barSectionMm2, type Cloth } from "../job/index.ts";
import {
  type ClothPlan,
  LAYER_NAMES,
  type Mass,
  type MassPart,
  ribCount,
  ringCount,
  type Trim,
} from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import type { ClothInput } from "./cloth-input.ts";

/** Mass of what hangs on the cords: each layer with its hems, bar, ribs and rings. */
export function massOf(
  { resolved, grid, form }: ClothInput,
  cloth: ClothPlan,
  cloths: ReadonlyMap<string, Cloth>,
  book: WorkingBook,
): Mass {
  const parts: MassPart[] = [];
  let layersGsm = 0;
  for (const cut of cloth.layers) {
    const gsm = cloths.get(cut.clothId)?.massGsm ?? 0;
    layersGsm += gsm;
    const areaMm2 = cut.panels.reduce((sum, panel) => sum + panel.widthMm * panel.lengthMm, 0);
    const massKg = book.figure(`cloth.${cut.layer}-mass`, {
      label: `${LAYER_NAMES[cut.layer]}: mass with hems`,
      symbol: "m",
      unit: "kg",
      formula: "A·g / 10^9",
      given: { A: [areaMm2, "mm2", "area as cut"], g: [gsm, "g/m2", "mass per area"] },
      cite: cite("arithmetic"),
      compute: ({ A, g }) => (A * g) / 1e9,
    });
    parts.push({ part: cut.layer, label: LAYER_NAMES[cut.layer], massKg });
  }
  if (form.bar !== undefined) {
    parts.push({
      part: "bar",
      label: resolved.bar.name,
      massKg: barMass(book, "cloth.bar-mass", resolved.bar, form.bar.toMm - form.bar.fromMm, 1),
    });
  }
  if (cloth.ribLengthMm !== undefined) {
    parts.push({
      part: "ribs",
      label: resolved.rib.name,
      massKg: barMass(book, "cloth.rib-mass", resolved.rib, cloth.ribLengthMm, ribCount(form)),
    });
  }
  const rings = ringCount(grid, form);
  parts.push({
    part: "rings",
    label: `${rings} rings`,
    massKg: (rings * (resolved.ring.massG ?? RING_MASS_G)) / 1000,
  });
  parts.push(...trimMass(cloth.trims, cloths, book));
  return {
    parts,
    totalKg: parts.reduce((sum, part) => sum + part.massKg, 0),
    clothGsm: layersGsm,
  };
}

/** Trims that are lifted with the shade: bands, pocket strips, sleeves. */
function trimMass(trims: readonly Trim[], cloths: ReadonlyMap<string, Cloth>, book: WorkingBook): MassPart[] {
  return trims
    .filter((trim) => trim.hangs)
    .map((trim) => {
      const massKg = book.figure(`cloth.${trim.id}-mass`, {
        label: `${trim.label}: mass`,
        symbol: "m",
        unit: "kg",
        formula: "n·v·s·g / 10^9",
        given: {
          n: [trim.count, "count", "pieces"],
          v: [trim.widthMm, "mm", "cut width"],
          s: [trim.lengthMm, "mm", "cut length"],
          g: [cloths.get(trim.clothId)?.massGsm ?? 0, "g/m2", "mass per area"],
        },
        cite: cite("arithmetic"),
        compute: ({ n, v, s, g }) => (n * v * s * g) / 1e9,
      });
      return { part: TRIM_PARTS[trim.id] ?? "bands", label: trim.label, massKg };
    });
}

const TRIM_PARTS: Record<string, MassPart["part"]> = { "pocket-strip": "strips", sleeve: "sleeves" };

/** A plastic ring of 12 mm, where none was weighed: recalled from memory. */
const RING_MASS_G = 0.5;

function barMass(book: WorkingBook, id: string, bar: Bar, lengthMm: number, count: number): number {
  if (bar.massGPerM !== undefined) {
    return book.figure(id, {
      label: `${bar.name}: mass`,
      symbol: "m",
      unit: "kg",
      formula: "n·l·g / 10^6",
      given: {
        n: [count, "count", "pieces"],
        l: [lengthMm, "mm", "length of one"],
        g: [bar.massGPerM, "g/m", "mass per metre as weighed"],
      },
      cite: cite("maker"),
      compute: ({ n, l, g }) => (n * l * g) / 1e6,
    });
  }
  const density = BAR_DENSITY[bar.material];
  return book.figure(id, {
    label: `${bar.name}: mass`,
    symbol: "m",
    unit: "kg",
    formula: "n·l·A·ρ / 10^9",
    given: {
      n: [count, "count", "pieces"],
      l: [lengthMm, "mm", "length of one"],
      A: [barSectionMm2(bar), "mm2", "section"],
      ρ: [density.value, "kg/m3", "density"],
    },
    cite: density.cite,
    compute: (v) => (v.n * v.l * v.A * v.ρ) / 1e9,
  });
}

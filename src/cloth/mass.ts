import { type Figure, figureRule, figureRuleOf, type StageResult, staged } from "../figures/index.ts";
import { BAR_DENSITY, type Bar, barSectionMm2, type Cloth } from "../job/index.ts";
import {
  LAYER_NAMES,
  type Layer,
  type Mass,
  type MassPart,
  ribCount,
  ringCount,
  type Trim,
} from "../shade-plan/index.ts";
import { type Cite, cite } from "../sources/index.ts";
import type { MassInput } from "./cloth-input.ts";
import { clothsOf } from "./cloths-of.ts";

const LAYER_MASS = figureRuleOf<{ layer: Layer }>()({
  id: ({ layer }) => `cloth.${layer}-mass`,
  label: ({ layer }) => `${LAYER_NAMES[layer]}: mass with hems`,
  symbol: "m",
  unit: "kg",
  formula: "A·g / 10^9",
  inputs: ({ layer }) => ({
    A: ["mm2", "area as cut", `figure:cloth.${layer}-cut-*`, "hems/joins", "hems/seamMm"],
    g: ["g/m2", "mass per area", `shade/${layer}`],
  }),
  cite: cite("arithmetic"),
  compute: ({ A, g }) => (A * g) / 1e9,
});

const TRIM_MASS = figureRuleOf<Pick<Trim, "id" | "label">>()({
  id: ({ id }) => `cloth.${id}-mass`,
  label: ({ label }) => `${label}: mass`,
  symbol: "m",
  unit: "kg",
  formula: "n·v·s·g / 10^9",
  inputs: ({ id }) => {
    const behind = TRIM_BEHIND[id] ?? BAND_BEHIND;
    return {
      n: ["count", "pieces", ...behind],
      v: ["mm", "cut width", ...behind],
      s: ["mm", "cut length", ...behind, "figure:measure.finished-*"],
      g: ["g/m2", "mass per area", "shade/banding", "shade/bottomBand", "shade/lining", "shade/face"],
    };
  },
  cite: cite("arithmetic"),
  compute: ({ n, v, s, g }) => (n * v * s * g) / 1e9,
});

const BAND_BEHIND = [
  "banding/where",
  "banding/widthMm",
  "banding/insetMm",
  "banding/turnMm",
  "banding/corners",
  "banding/bottomBandMm",
  "hems/makeUp",
  "hems/sideTurnMm",
  "hems/sideTurns",
  "hems/bottomTurnMm",
  "hems/bottomTurns",
  "hems/boardAllowanceMm",
  "hems/seamMm",
  "board/attachment",
  "board/section",
  "board/returns",
  "shade/mount",
  "figure:shape.*",
];
const TRIM_BEHIND: Record<string, readonly string[]> = {
  "pocket-strip": ["ribs/kind", "ribs/face", "ribs/at", "figure:shape.*"],
  frill: [
    "gather/frillMm",
    "gather/frillEdges",
    "gather/frillDouble",
    "figure:shape.frill",
    "figure:cloth.frill-cut-depth",
  ],
  sleeve: ["lift/rearCords", "figure:cloth.sleeve-*", "figure:shape.columns"],
};

type BarPart = "bar" | "rib";
const BAR_BEHIND: Record<BarPart, { count: readonly string[]; length: readonly string[]; part: string }> = {
  bar: {
    count: [],
    length: [
      "board/barShorterMm",
      "gather/weight",
      "pleat/bar",
      "relax/weight",
      "figure:measure.finished-width",
      "figure:shape.*",
    ],
    part: "board/bar",
  },
  rib: {
    count: ["ribs/kind", "ribs/at", "figure:shape.*"],
    length: ["ribs/shorterMm", "figure:measure.finished-width"],
    part: "ribs/rib",
  },
};

interface OfBar {
  part: BarPart;
  name: string;
}

const WEIGHED_BAR_MASS = figureRuleOf<OfBar>()({
  id: ({ part }) => `cloth.${part}-mass`,
  label: ({ name }) => `${name}: mass`,
  symbol: "m",
  unit: "kg",
  formula: "n·l·g / 10^6",
  inputs: ({ part }) => ({
    n: ["count", "pieces", ...BAR_BEHIND[part].count],
    l: ["mm", "length of one", ...BAR_BEHIND[part].length],
    g: ["g/m", "mass per metre as weighed", BAR_BEHIND[part].part],
  }),
  cite: cite("maker"),
  compute: ({ n, l, g }) => (n * l * g) / 1e6,
});

const BAR_MASS = figureRuleOf<OfBar & { density: Cite }>()({
  id: ({ part }) => `cloth.${part}-mass`,
  label: ({ name }) => `${name}: mass`,
  symbol: "m",
  unit: "kg",
  formula: "n·l·A·ρ / 10^9",
  inputs: ({ part }) => ({
    n: ["count", "pieces", ...BAR_BEHIND[part].count],
    l: ["mm", "length of one", ...BAR_BEHIND[part].length],
    A: ["mm2", "section", BAR_BEHIND[part].part],
    ρ: ["kg/m3", "density", BAR_BEHIND[part].part],
  }),
  cite: ({ density }) => density,
  compute: (v) => (v.n * v.l * v.A * v.ρ) / 1e9,
});

const ON_BOARD_MASS = figureRule({
  id: "cloth.on-board-mass",
  label: "Cloth on the board: mass",
  symbol: "K",
  unit: "kg",
  formula: "Y / 1000",
  inputs: {
    Y: [
      "g",
      "cover, returns and dust strip as cut",
      "board/coverFrom",
      "board/returns",
      "board/dustStripMm",
      "shade/face",
      "shade/lining",
      "figure:measure.board-length",
      "figure:cloth.cover-*",
      "figure:cloth.return-*",
      "figure:cloth.dust-strip-width",
    ],
  },
  cite: cite("arithmetic"),
  compute: ({ Y }) => Y / 1000,
});

/** Mass of what hangs on the cords, kg: each layer with its hems, bands, strips and sleeves, bar, ribs and rings; beside it the cloth on the board. */
export function planMass({ shade, grid, form, cloth }: MassInput): StageResult<Mass> {
  const cloths = clothsOf(shade);
  const workings: Figure[] = [];
  const parts: MassPart[] = [];
  const add = (
    part: MassPart["part"],
    label: string,
    mass: Figure,
    lies: { hemShare?: number; boardShare?: number } = {},
  ) => {
    workings.push(mass);
    const massKg = mass.value;
    const { hemShare = 0, boardShare = 0 } = lies;
    parts.push({
      part,
      label,
      massKg,
      ...(hemShare > 0 ? { hemKg: massKg * hemShare } : {}),
      ...(boardShare > 0 ? { boardKg: massKg * boardShare } : {}),
    });
  };
  let clothGsm = 0;
  for (const { layer, clothId, panels, edges, cutLengthMm } of cloth.layers) {
    const gsm = cloths.get(clothId)?.massGsm ?? 0;
    clothGsm += gsm;
    let areaMm2 = 0;
    for (const { widthMm, lengthMm } of panels) areaMm2 += widthMm * lengthMm;
    add(layer, LAYER_NAMES[layer], LAYER_MASS.figure({ A: areaMm2, g: gsm }, { layer }), {
      hemShare: edges.bottomMm / cutLengthMm,
      boardShare: edges.topMm / cutLengthMm,
    });
  }
  if (form.bar !== undefined) {
    add("bar", shade.bar.name, barMass("bar", shade.bar, form.bar.toMm - form.bar.fromMm, 1));
  }
  if (cloth.ribLengthMm !== undefined) {
    add("ribs", shade.rib.name, barMass("rib", shade.rib, cloth.ribLengthMm, ribCount(form)));
  }
  const rings = ringCount(grid, form);
  const ringsKg = (rings * (shade.ring.massG ?? RING_MASS_G)) / 1000;
  parts.push({ part: "rings", label: `${rings} rings`, massKg: ringsKg });
  let onBoardG = 0;
  for (const trim of cloth.trims) {
    const mass = trimMass(trim, cloths);
    if (trim.hangs) add(TRIM_PARTS[trim.id] ?? "bands", trim.label, mass);
    else onBoardG += 1000 * mass.value;
  }
  const onBoard = ON_BOARD_MASS.figure({ Y: onBoardG });
  const totalKg = parts.reduce((sum, part) => sum + part.massKg, 0);
  return staged(
    { parts, totalKg, clothGsm, onBoardKg: onBoard.value },
    { workings: () => [...workings, onBoard] },
  );
}

/** A trim: a band, pocket strips, sleeves, a cover. */
function trimMass(trim: Trim, cloths: ReadonlyMap<string, Cloth>): Figure {
  const { id, label, count, widthMm, lengthMm, clothId } = trim;
  return TRIM_MASS.figure(
    { n: count, v: widthMm, s: lengthMm, g: cloths.get(clothId)?.massGsm ?? 0 },
    { id, label },
  );
}

const TRIM_PARTS: Record<string, MassPart["part"]> = { "pocket-strip": "strips", sleeve: "sleeves" };

/** A plastic ring of 12 mm, where none was weighed: recalled from memory. */
const RING_MASS_G = 0.5;

function barMass(part: BarPart, bar: Bar, lengthMm: number, count: number): Figure {
  const { name, massGPerM } = bar;
  if (massGPerM !== undefined) {
    return WEIGHED_BAR_MASS.figure({ n: count, l: lengthMm, g: massGPerM }, { part, name });
  }
  const density = BAR_DENSITY[bar.material];
  return BAR_MASS.figure(
    { n: count, l: lengthMm, A: barSectionMm2(bar), ρ: density.value },
    { part, name, density: density.cite },
  );
}

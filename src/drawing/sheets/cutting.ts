import { LAYER_NAMES, type LayerCut, type TrimBolt } from "../../shade-plan/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Drawing, Fact, Primitive } from "../model.ts";
import { CLOTH_ROLE, drawLay, patternLines } from "./cutting-pieces.ts";
import { dimensionOf, line, movedOnPaper, name, note, rect } from "./shapes.ts";
import { figureRef, type SheetInput } from "./sheet-input.ts";

/** Between two cloths, mm on paper: the name of the next one, and a row of measures each. */
const NAME_PAPER_MM = 13;
const ROW_PAPER_MM = 6;
/** The same for a name in two lines where no measures stand below the cloth before it. */
const BARE_PAPER_MM = 10;
/** Length of a cloth in its widths beyond which more than its name stands above it. */
const ROOM_FOR_NAME = 1.8;

/** One cloth on the table: a layer with the pieces beside it, or a cloth of which only bands or covers are cut. */
interface Table {
  cut?: LayerCut;
  trims?: TrimBolt;
  name: string;
  usableWidthMm: number;
  lengthMm: number;
}

/** Every cloth as it lies on the table, bolt end on the left: panels, hem lines, pieces beside them, grain, pattern, what is left. */
export function drawCutting(input: SheetInput): Drawing {
  const tables = tablesOf(input);
  const primitives: Primitive[] = [];
  let top = 0;
  let below = 0;
  let bareBelow = 0;
  for (const table of tables) {
    const drawn = drawTable(input, table, top);
    const bare = movedOnPaper(drawn, [0, bareBelow]);
    primitives.push(
      ...movedOnPaper(drawn, [0, below]).map((one, i) => ({
        ...one,
        bareShiftPaperMm: bare[i]?.shiftPaperMm,
      })),
    );
    top += table.usableWidthMm;
    below += NAME_PAPER_MM + ROW_PAPER_MM * rowsOf(table).length;
    bareBelow += BARE_PAPER_MM;
  }
  return {
    id: "cutting",
    title: "Cutting",
    caption:
      "Each cloth as it lies on the table, right side up, cut from the left, tops to the left: the left selvedge is the lower one. Check the width of your own cloth first.",
    primitives,
    facts: [...tables.flatMap((table) => factsOf(table, input)), ...trimFacts(input)],
  };
}

function tablesOf({ shade }: SheetInput): Table[] {
  const { layers, trimBolts } = shade.cloth;
  const own = layers.map((cut): Table => {
    const trims = trimBolts.find((bolt) => bolt.beside === cut.layer);
    const usedMm = trims === undefined ? cut.lengthMm : trims.fromMm + trims.lengthMm;
    return {
      cut,
      trims,
      name: `${LAYER_NAMES[cut.layer]}: ${cut.clothName}`,
      usableWidthMm: cut.usableWidthMm,
      lengthMm: Math.max(usedMm, cut.buyMm),
    };
  });
  const others = trimBolts
    .filter((bolt) => bolt.beside === undefined)
    .map((trims): Table => {
      return {
        trims,
        name: trims.clothName,
        usableWidthMm: trims.usableWidthMm,
        lengthMm: Math.max(trims.lengthMm, trims.buyMm ?? 0),
      };
    });
  return [...own, ...others];
}

function factsOf({ cut, trims }: Table, { units }: SheetInput): Fact[] {
  if (cut === undefined) {
    return trims === undefined
      ? []
      : [
          {
            label: trims.clothName,
            text: `${lengthText(trims.lengthMm, units)} off a cloth ${lengthText(trims.usableWidthMm, units)} wide`,
          },
        ];
  }
  return [
    {
      label: `${LAYER_NAMES[cut.layer]}, ${cut.clothName}`,
      text: `${lengthText(cut.lengthMm, units)} off a cloth ${lengthText(cut.usableWidthMm, units)} wide${cut.turned ? ", turned sideways" : ""}`,
    },
    ...(cut.motif === undefined
      ? []
      : [
          {
            label: `${LAYER_NAMES[cut.layer]}, first cut`,
            text: `${lengthText(cut.startWasteMm, units)} from where a repeat begins`,
          },
        ]),
    ...cut.panels.map((panel) => ({
      label: panel.label,
      text: `${lengthText(panel.widthMm, units)} wide × ${lengthText(panel.lengthMm, units)} long`,
    })),
  ];
}

function trimFacts({ shade, units }: SheetInput): Fact[] {
  return shade.cloth.trims.map(({ label, clothName, count, widthMm, lengthMm }) => ({
    label,
    text: `${count === 1 ? "one" : `${count}, each`} ${lengthText(widthMm, units)} wide × ${lengthText(lengthMm, units)} long, of ${clothName}`,
  }));
}

function drawTable(input: SheetInput, table: Table, top: number): Primitive[] {
  const { cut, trims, usableWidthMm, lengthMm } = table;
  const bolt = { x: 0, y: top, width: lengthMm, height: usableWidthMm };
  const edge = (y: number) =>
    line("selvedge", [
      [0, y],
      [lengthMm, y],
    ]);
  const part = cut?.layer ?? trims?.clothId;
  const role = cut === undefined ? "bandCloth" : CLOTH_ROLE[cut.layer];
  const sizes = new Set<string>();
  return [
    rect("clothOnBolt", bolt, { part }),
    rect("waste", bolt),
    edge(top),
    edge(top + usableWidthMm),
    ...(cut?.lays.flatMap((lay) => drawLay(input, { lay, usableWidthMm, top, role, cut, sizes })) ?? []),
    ...(trims?.lays.flatMap((lay) => drawLay(input, { lay, usableWidthMm, top, role, sizes })) ?? []),
    ...(cut === undefined ? [] : patternLines(cut, top, lengthMm)),
    name([0, top], table.name, {
      anchor: "start",
      baseline: "bottom",
      shiftPaperMm: [0, -2],
      part,
    }),
    ...drawMeasures(input, table, top),
  ];
}

/** Lengths to write below a cloth: what the panels take, what all pieces take, what is bought. */
function rowsOf({ cut, trims, lengthMm }: Table): [toMm: number, label: string, id: string][] {
  const usedMm = trims === undefined ? (cut?.lengthMm ?? 0) : trims.fromMm + trims.lengthMm;
  const panelsMm = cut?.lengthMm ?? usedMm;
  return [
    [panelsMm, "cut", "length"],
    ...(usedMm - panelsMm > 0.5 ? [[usedMm, "pieces and all", "buy"] as [number, string, string]] : []),
    ...(lengthMm - usedMm > 0.5 ? [[lengthMm, "buy", "buy"] as [number, string, string]] : []),
  ];
}

function drawMeasures(input: SheetInput, table: Table, top: number): Primitive[] {
  const { units } = input;
  const { cut, usableWidthMm, lengthMm } = table;
  const bottom = top + usableWidthMm;
  const of = cut?.layer ?? `trims-${table.trims?.clothId}`;
  const ref = (id: string) => figureRef(input, `cloth.${of}-${id}`);
  const along = (to: number, offset: number, label: string, id: string) =>
    dimensionOf({ from: [0, bottom], to: [to, bottom], offset, label, ...ref(id) }, units);
  const starts = cut?.motif !== undefined && cut.startWasteMm > 0.5;
  return [
    dimensionOf({ from: [0, top], to: [0, bottom], offset: -6, part: cut?.layer }, units),
    ...rowsOf(table).map(([toMm, label, id], i) => along(toMm, -ROW_PAPER_MM * (i + 1), label, id)),
    ...(starts
      ? [
          dimensionOf(
            {
              from: [0, top],
              to: [cut.startWasteMm, top],
              offset: -4.5,
              label: "start",
              yields: true,
              ground: "waste",
              ...ref("start"),
            },
            units,
          ),
        ]
      : []),
    // On a short cloth its name takes the place.
    ...(lengthMm > ROOM_FOR_NAME * usableWidthMm
      ? [
          note([lengthMm, top], "bolt →", {
            anchor: "end",
            baseline: "bottom",
            shiftPaperMm: [0, -2],
            yields: true,
            atDesk: true,
          }),
        ]
      : []),
  ];
}

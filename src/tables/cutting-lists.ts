import {
  boltName,
  boltsCut,
  boughtToMeasure,
  type CuttingPlan,
  cuttingTicket,
  type LengthsCutting,
} from "../plan/index.ts";
import { asciiText, type Cell, type Table, textAndMm } from "./table.ts";

/** Every list of a cutting plan: where each piece lies, each cut in its order, lengths, what is kept. */
export function cuttingLists(cutting: CuttingPlan): Table[] {
  return [
    placesList(cutting),
    cutsList(cutting),
    lengthsList(cutting),
    keptList(cutting),
    statusList(cutting),
  ];
}

function placesList(cutting: CuttingPlan): Table {
  return {
    name: "cutting-pieces",
    header: [
      "cloth",
      "bolt",
      "window",
      "piece",
      "acrossBolt",
      "acrossBoltMm",
      "alongBolt",
      "alongBoltMm",
      "fromSelvedge",
      "fromSelvedgeMm",
      "fromEnd",
      "fromEndMm",
      "turnedDeg",
    ],
    rows: boltsCut(cutting).flatMap(({ cloth, bolt }) => {
      const pieces = new Map(cloth.problem.pieces.map((piece) => [piece.id, piece]));
      return bolt.placements.map((placement): Cell[] => {
        const piece = pieces.get(placement.pieceId);
        return [
          cloth.clothName,
          boltName(cloth, bolt.boltId),
          piece?.shade ?? "",
          piece?.part ?? placement.pieceId,
          ...textAndMm(placement.widthMm, cutting.units),
          ...textAndMm(placement.lengthMm, cutting.units),
          ...textAndMm(placement.xMm, cutting.units),
          ...textAndMm(placement.yMm, cutting.units),
          placement.turn,
        ];
      });
    }),
  };
}

function cutsList(cutting: CuttingPlan): Table {
  return {
    name: "cutting-order",
    header: ["cloth", "bolt", "cut", "how", "setsFree", "check", "within", "direction", "onBoltMm"],
    rows: boltsCut(cutting).flatMap(({ cloth, bolt }) =>
      cuttingTicket(cloth, bolt, cutting.units).map(({ numbers, how, frees, check, within, cut }): Cell[] => [
        cloth.clothName,
        boltName(cloth, bolt.boltId),
        numbers,
        asciiText(how),
        asciiText(frees),
        asciiText(check),
        asciiText(within),
        cut.direction,
        Math.round(cut.atMm * 1000) / 1000,
      ]),
    ),
  };
}

/** Bars of one thing, numbered, each cut on a line of its own. */
function lengthsList(cutting: CuttingPlan): Table {
  const { units } = cutting;
  return {
    name: "cutting-lengths",
    header: [
      "what",
      "length",
      "number",
      "stock",
      "stockMm",
      "window",
      "piece",
      "cut",
      "cutMm",
      "from",
      "fromMm",
      "offcut",
      "offcutMm",
      "keep",
    ],
    rows: cutting.lengths.flatMap((lengths) => [
      ...barRows(lengths, units),
      ...boughtToMeasure(lengths).map(({ shade, part, lengthMm }): Cell[] => [
        lengths.name,
        "to its own length",
        "",
        "",
        "",
        shade ?? "",
        part ?? "",
        ...textAndMm(lengthMm, units),
        "",
        "",
        "",
        "",
        "",
      ]),
    ]),
  };
}

function barRows({ name, answer, stockNames }: LengthsCutting, units: CuttingPlan["units"]): Cell[][] {
  if (answer.kind === "infeasible") return [];
  return answer.plan.bars.flatMap((bar, i) =>
    bar.cuts.map(({ shade, part, lengthMm, fromMm }): Cell[] => [
      name,
      stockNames[bar.stockId] ?? bar.stockId,
      i + 1,
      ...textAndMm(bar.stockMm, units),
      shade ?? "",
      part ?? "",
      ...textAndMm(lengthMm, units),
      ...textAndMm(fromMm, units),
      ...textAndMm(bar.offcutMm, units),
      bar.kept ? "yes" : "no",
    ]),
  );
}

function keptList(cutting: CuttingPlan): Table {
  const { units } = cutting;
  return {
    name: "cutting-kept",
    header: ["what", "from", "name", "width", "widthMm", "length", "lengthMm"],
    rows: [
      ...boltsCut(cutting).flatMap(({ cloth, bolt }) =>
        bolt.remnants.map((remnant): Cell[] => [
          cloth.clothName,
          boltName(cloth, bolt.boltId),
          remnant.name,
          ...textAndMm(remnant.widthMm, units),
          ...textAndMm(remnant.lengthMm, units),
        ]),
      ),
      ...cutting.lengths.flatMap(({ name, answer, stockNames }) =>
        answer.kind === "infeasible"
          ? []
          : answer.plan.bars.flatMap((bar, i): Cell[][] =>
              bar.kept
                ? [
                    [
                      name,
                      stockNames[bar.stockId] ?? bar.stockId,
                      `offcut of ${i + 1}`,
                      "",
                      "",
                      ...textAndMm(bar.offcutMm, units),
                    ],
                  ]
                : [],
            ),
      ),
    ],
  };
}

/** How near each plan is to the least that it could take. */
function statusList(cutting: CuttingPlan): Table {
  return {
    name: "cutting-gaps",
    header: ["what", "status", "takes", "atLeast", "in", "gapPercent", "boundBy"],
    rows: [
      ...cutting.cloths.map(({ clothName, answer }): Cell[] =>
        "bolts" in answer
          ? [
              clothName,
              answer.status,
              round(answer.cost),
              round(answer.bound.cost),
              "mm of new cloth at its price",
              percent(answer.gap),
              answer.bound.which,
            ]
          : [clothName, answer.status, "", "", "", "", ""],
      ),
      ...cutting.lengths.map((one): Cell[] => {
        const { name, answer } = one;
        return answer.kind === "infeasible"
          ? [name, answer.kind, "", "", "", "", ""]
          : [
              name,
              answer.kind,
              round(answer.plan.cost),
              round(answer.bound.cost),
              isPriced(one) ? "money" : "mm",
              percent(answer.bound.cost > 0 ? answer.plan.cost / answer.bound.cost - 1 : 0),
              answer.bound.by,
            ];
      }),
    ],
  };
}

/** Lengths are weighed by their prices where each has one, else by what they measure. */
function isPriced({ newStockIds, stockPrices }: LengthsCutting): boolean {
  return newStockIds.length > 0 && newStockIds.every((id) => (stockPrices[id] ?? 0) > 0);
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function percent(share: number): number {
  return Math.round(share * 10_000) / 100;
}

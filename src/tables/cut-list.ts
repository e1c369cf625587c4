import type { ShadePlan } from "../plan/index.ts";
import { clothTaken } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { PlanList } from "./plan-list.ts";
import { type Cell, textAndMm } from "./table.ts";

/** Every piece to cut: cloth, bands, strips and covers, ribs, bar, board, lift tube. Cords have a list of their own. */
export const CUT_LIST: PlanList = {
  name: "cut-list",
  header: [
    "room",
    "window",
    "piece",
    "material",
    "count",
    "width",
    "widthMm",
    "length",
    "lengthMm",
    "fromSelvedge",
    "fromSelvedgeMm",
    "alongBolt",
    "alongBoltMm",
  ],
  rowsOfShade: (shade, { units }) => [
    ...clothRows(shade, units),
    ...trimRows(shade, units),
    ...stickRows(shade, units),
  ],
};

const NO_POSITION: Cell[] = ["", "", "", ""];

function clothRows({ roomName, windowName, cloth, existing }: ShadePlan, units: UnitChoice): Cell[][] {
  return clothTaken(cloth, existing).layers.flatMap((cut) => {
    return cut.panels.map((panel): Cell[] => {
      const lay = cut.lays.find((one) => one.panelId === panel.id);
      return [
        roomName,
        windowName,
        cut.turned ? `${panel.label}, sideways` : panel.label,
        cut.clothName,
        1,
        ...textAndMm(panel.widthMm, units),
        ...textAndMm(panel.lengthMm, units),
        ...(lay === undefined ? NO_POSITION : [...textAndMm(lay.xMm, units), ...textAndMm(lay.yMm, units)]),
      ];
    });
  });
}

/** Pieces beside the panels: bands, board cover, returns, strips. A single one has its place on the cloth. */
function trimRows({ roomName, windowName, cloth, existing }: ShadePlan, units: UnitChoice): Cell[][] {
  return clothTaken(cloth, existing).trims.map((trim) => {
    const bolt = cloth.trimBolts.find((one) => one.clothId === trim.clothId);
    const lay = trim.count === 1 ? bolt?.lays.find((one) => one.panelId === trim.id) : undefined;
    return [
      roomName,
      windowName,
      trim.label,
      trim.clothName,
      trim.count,
      ...textAndMm(trim.widthMm, units),
      ...textAndMm(trim.lengthMm, units),
      ...(lay === undefined ? NO_POSITION : [...textAndMm(lay.xMm, units), ...textAndMm(lay.yMm, units)]),
    ];
  });
}

function stickRows(
  { roomName, windowName, cloth, board, lift, cost, existing }: ShadePlan,
  units: UnitChoice,
): Cell[][] {
  const row = (piece: string, material: string, count: number, lengthMm: number): Cell[] => [
    roomName,
    windowName,
    piece,
    material,
    count,
    "",
    "",
    ...textAndMm(lengthMm, units),
    ...NO_POSITION,
  ];
  const ribs = cloth.ribLines.length;
  const ribName = cost.shopping.find((line) => line.id.startsWith("rib-"))?.label ?? "";
  const isNew = existing === undefined;
  return [
    ...(cloth.ribLengthMm === undefined || ribs === 0 || !isNew
      ? []
      : [row("Rib", ribName, ribs, cloth.ribLengthMm)]),
    ...(board.barLengthMm === undefined || !isNew
      ? []
      : [row("Weight bar", board.barName ?? "", 1, board.barLengthMm)]),
    ...(isNew ? [row("Board", board.sectionName, 1, board.cutMm)] : []),
    ...(lift.takeUp !== "tube" || existing?.takes.tube === false
      ? []
      : [row("Lift tube", lift.tube.name, 1, lift.tube.lengthMm)]),
    ...(lift.wovenSleeves === undefined || existing?.takes.sleeves === false
      ? []
      : [
          row("Woven sleeve", "Woven sleeve for lift cord", lift.wovenSleeves.count, lift.wovenSleeves.cutMm),
        ]),
  ];
}

import type { Finding, Remedy } from "../../figures/index.ts";
import { LIFT_TRAITS, settingPatch } from "../../job/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { downToMark, lengthText, soldLengthText, upToMark } from "../../units/index.ts";
import { BOARD_END_MM, hasRoom } from "../gaps.ts";
import type { TubeInput } from "../lift-input.ts";
import { boardRemedy, insetRemedy } from "../make-room.ts";
import { LARGEST_BAY } from "./place-supports.ts";
import { driveGaps } from "./seat-drive.ts";
import { PARTS_APART, tubeLine } from "./tube-line.ts";
import type { TubeRig } from "./tube-parts.ts";

const sideBySide = cite("geometry", "parts laid side by side along the board");

/** Is there room along the board for drive, spools and supports? */
export function judgePositions(input: TubeInput, lift: TubeLift, rig: TubeRig): Finding[] {
  return [
    ...(lift.drive.forced ? [noPlace(input, lift)] : controlBehind(input, lift)),
    ...spoolsTouch(input, lift),
    ...spoolOffBoard(input, lift),
    ...supports(input, lift, rig),
    ...tubeTooLong(input, lift),
  ];
}

function base({ shade }: TubeInput, id: string) {
  return { stage: "rig", shadeId: shade.shadeId, id, cite: sideBySide } as const;
}

function lineWith({ shade, size, grid, liftParts }: TubeInput, driveMm: number) {
  return tubeLine(shade, size, grid.columns, { spoolMm: liftParts.spool.lengthMm, driveMm });
}

/** Board that a drive takes up outside the last spool, mm. */
function outsideMm({ liftParts }: TubeInput): number {
  return BOARD_END_MM + liftParts.drive.lengthMm + PARTS_APART.value + liftParts.spool.lengthMm / 2;
}

function noPlace(input: TubeInput, lift: TubeLift): Finding {
  const { shade, liftParts } = input;
  const line = lineWith(input, liftParts.drive.lengthMm);
  const text = (mm: number) => lengthText(mm, shade.units);
  const hasMm = Math.max(0, (line.eyesMm[0] ?? 0) - line.boardFromMm);
  const remedies = [
    ...movedInset(input),
    ...longerBoard(input, hasMm),
    ...shorterDrive(input),
    ...widerBays(input),
  ];
  const cure =
    remedies.length > 0 ? "" : " Use fewer columns, a shorter drive, or an inset that leaves it room.";
  return {
    ...base(input, "rig.no-drive-place"),
    severity: "stop",
    path: `${shade.path}/shade/making/lift/drive`,
    text: `There is no place for “${lift.drive.name}” under the board: outside the last spool on the ${lift.controlSide} it needs ${text(outsideMm(input))} and has ${text(hasMm)}, and it does not fit between two spools either. It is drawn where it misses by least.${cure}`,
    remedies,
  };
}

function movedInset(input: TubeInput): Remedy[] {
  const { shade, size } = input;
  const boardFromMm = (size.finishedWidthMm - size.boardLengthMm) / 2;
  const insetMm = upToMark(boardFromMm + outsideMm(input), shade.units.ruler);
  return insetRemedy(shade, insetMm, size.finishedWidthMm);
}

function longerBoard(input: TubeInput, hasMm: number): Remedy[] {
  const { shade, size } = input;
  const nowMm = size.finishedWidthMm - size.boardLengthMm;
  const shorterMm = downToMark(nowMm - 2 * (outsideMm(input) - hasMm), shade.units.ruler);
  return boardRemedy(shade, shorterMm, nowMm);
}

function shorterDrive(input: TubeInput): Remedy[] {
  const { shade, liftParts, mass } = input;
  return shade.drives
    .filter((other) => other.kind === liftParts.drive.kind && other.lengthMm < liftParts.drive.lengthMm)
    .filter((other) => (other.massMaxKg ?? 0) >= mass.totalKg)
    .filter((other) => driveGaps(lineWith(input, other.lengthMm), liftParts.kind).some(hasRoom))
    .slice(0, 2)
    .map((other) => ({
      label: `Use the shorter “${other.name}”`,
      patch: settingPatch(shade, "lift", "drive", other.id),
    }));
}

/** Fewer columns make wider bays; of use only to what may sit between two spools. */
function widerBays(input: TubeInput): Remedy[] {
  const { shade, grid, liftParts } = input;
  if (LIFT_TRAITS[liftParts.kind].hangs !== "nothing") return [];
  const first = grid.columns[0]?.xMm ?? 0;
  const last = grid.columns.at(-1)?.xMm ?? 0;
  const bayMm = liftParts.drive.lengthMm + liftParts.spool.lengthMm + 2 * PARTS_APART.value;
  const count = Math.floor((last - first) / bayMm) + 1;
  if (count < 2 || count >= grid.columns.length) return [];
  return [{ label: `Use ${count} columns`, patch: settingPatch(shade, "columns", "count", count) }];
}

/** A loop or a wand that hangs between two spools hangs behind the cloth. */
function controlBehind(input: TubeInput, lift: TubeLift): Finding[] {
  if (lift.drive.place !== "between" || lift.hangs === "nothing") return [];
  const { shade } = input;
  return [
    {
      ...base(input, "rig.control-behind"),
      severity: "fix",
      path: `${shade.path}/shade/making/columns/edgeInsetMm`,
      text: `Outside the last spool there is no room for “${lift.drive.name}”, so it sits between two spools, and its ${lift.hangs} hangs behind the cloth.`,
      remedies: movedInset(input),
    },
  ];
}

function spoolsTouch(input: TubeInput, lift: TubeLift): Finding[] {
  const { shade, grid, liftParts } = input;
  const nearest = lift.spools.reduce(
    (least, { xMm }, i) => (i === 0 ? least : Math.min(least, xMm - (lift.spools[i - 1]?.xMm ?? xMm))),
    Number.POSITIVE_INFINITY,
  );
  const neededMm = liftParts.spool.lengthMm + PARTS_APART.value;
  if (nearest >= neededMm) return [];
  const first = grid.columns[0]?.xMm ?? 0;
  const last = grid.columns.at(-1)?.xMm ?? 0;
  const count = Math.floor((last - first) / neededMm) + 1;
  return [
    {
      ...base(input, "rig.spools-touch"),
      severity: "stop",
      path: `${shade.path}/shade/making/columns`,
      text: `The columns are ${lengthText(nearest, shade.units)} apart, and a spool of “${lift.tube.name}” takes ${lengthText(neededMm, shade.units)} of the tube: neighbours would rub.`,
      remedies:
        count >= 2 && count < grid.columns.length
          ? [{ label: `Use ${count} columns`, patch: settingPatch(shade, "columns", "count", count) }]
          : [],
    },
  ];
}

function spoolOffBoard(input: TubeInput, lift: TubeLift): Finding[] {
  const { shade, size, liftParts } = input;
  const fromMm = (size.finishedWidthMm - size.boardLengthMm) / 2;
  const toMm = fromMm + size.boardLengthMm;
  const insetMm = Math.min(...lift.spools.map(({ xMm }) => Math.min(xMm - fromMm, toMm - xMm)));
  const half = liftParts.spool.lengthMm / 2;
  if (insetMm >= half) return [];
  const edgeMm = upToMark(fromMm + half + BOARD_END_MM, shade.units.ruler);
  return [
    {
      ...base(input, "rig.spool-off-board"),
      severity: "stop",
      path: `${shade.path}/shade/making/columns/edgeInsetMm`,
      text: `The spool of the edge column reaches ${lengthText(half - insetMm, shade.units)} beyond the end of the board.`,
      remedies:
        edgeMm <= size.finishedWidthMm / 4
          ? [
              {
                label: `Set the edge columns in by ${lengthText(edgeMm, shade.units)}`,
                patch: settingPatch(shade, "columns", "edgeInsetMm", edgeMm),
              },
            ]
          : [],
    },
  ];
}

function supports(input: TubeInput, lift: TubeLift, { placed }: TubeRig): Finding[] {
  if (placed.faults.length === 0) return [];
  const { shade } = input;
  const text = (mm: number) => lengthText(mm, shade.units);
  return [
    {
      ...base(input, "rig.supports"),
      severity: "fix",
      path: `${shade.path}/shade/making/columns`,
      text: placed.faults.includes("clear")
        ? `A support of the tube finds no place clear of the spools: it takes ${text(lift.supportLengthMm + 2 * PARTS_APART.value)} beside one.`
        : `Spools and drive push two supports of the tube more than ${text(LARGEST_BAY.value)} apart.`,
      remedies: [],
    },
  ];
}

function tubeTooLong(input: TubeInput, lift: TubeLift): Finding[] {
  const { shade, liftParts } = input;
  const { stockMm } = liftParts.tube;
  if (stockMm === undefined || lift.tube.lengthMm <= stockMm) return [];
  const longer = shade.parts.tubes.filter(
    (tube) => tube.id !== liftParts.tube.id && (tube.stockMm ?? 0) >= lift.tube.lengthMm,
  );
  return [
    {
      ...base(input, "rig.tube-too-long"),
      severity: "fix",
      path: `${shade.path}/shade/making/lift/tube`,
      text: `The tube is ${lengthText(lift.tube.lengthMm, shade.units)} long, and “${liftParts.tube.name}” is sold in lengths of ${soldLengthText(stockMm, shade.units)}. It would have to be coupled, which only its maker can say how to do.`,
      remedies: longer.slice(0, 1).map((tube) => ({
        label: `Use “${tube.name}”`,
        patch: settingPatch(shade, "lift", "tube", tube.id),
      })),
    },
  ];
}

import type { Finding, Remedy } from "../figures/index.ts";
import { EYE_FROM_END_MM, partChoice, settingPatch } from "../job/index.ts";
import type { MountedBoard } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { downToMark, lengthText, upToMark } from "../units/index.ts";
import { atSetting } from "./at-setting.ts";
import type { BoardInput } from "./board-input.ts";

/** Do lock and eyes, or tube and drive, fit on this board? */
export function judgeParts(input: BoardInput, board: MountedBoard): Finding[] {
  return [
    ...tooDeep(input),
    ...screwsBehindTube(input, board),
    ...(board.eyes.length === 0 ? [] : [...eyesTooWide(input), ...eyeOffBoard(input, board)]),
  ];
}

function deeperBoards({ shade }: BoardInput, leastMm: number): Remedy[] {
  return shade.parts.boards
    .filter((board) => board.depthMm >= leastMm)
    .sort((a, b) => a.depthMm - b.depthMm)
    .slice(0, 1)
    .map(partChoice(shade, "board", "section"));
}

/** Lock, last eye, or the deeper of drive and spools: what must find room between the front and the back of the board. */
export function takesUp({ lift }: BoardInput): { name: string; depthMm: number } {
  if (lift.takeUp === "lock") return { name: lift.lockName, depthMm: lift.housingWidthMm };
  if (lift.takeUp === "cleat") return { name: lift.turn.name, depthMm: lift.turn.diameterMm };
  const flangeMm = lift.spools.reduce((most, spool) => Math.max(most, spool.flangeMm), 0);
  return flangeMm > lift.drive.depthMm
    ? { name: lift.tube.name, depthMm: flangeMm }
    : { name: lift.drive.name, depthMm: lift.drive.depthMm };
}

function tooDeep(input: BoardInput): Finding[] {
  const { shade, lift } = input;
  // Eyes are judged on their own.
  if (lift.takeUp === "cleat") return [];
  const { name, depthMm } = takesUp(input);
  if (depthMm <= shade.board.depthMm) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const isLock = lift.takeUp === "lock";
  return [
    {
      ...atSetting(input.shade, "board/section"),
      id: isLock ? "board.lock-too-wide" : "board.drive-too-deep",
      severity: "fix",
      text: isLock
        ? `“${name}” is ${text(depthMm)} wide and the board only ${text(shade.board.depthMm)} deep: the lock stands out over its edges and cannot be screwed down square.`
        : `“${name}” is ${text(depthMm)} deep and the board only ${text(shade.board.depthMm)}: it stands out over the edges, towards the cloth and the wall.`,
      cite: cite("geometry"),
      remedies: deeperBoards(input, depthMm),
    },
  ];
}

/** A driver passes between the wall edge and the tube only where there is room for it. */
const DRIVER = sourced(7, "mm", cite("our-choice", "bit and its holder"));

function screwsBehindTube(input: BoardInput, board: MountedBoard): Finding[] {
  const { shade, lift } = input;
  if (board.screwsZMm === undefined || lift.takeUp !== "tube") return [];
  const roomMm = shade.board.depthMm / 2 - lift.tube.diameterMm / 2;
  if (roomMm >= DRIVER.value) return [];
  return [
    {
      ...atSetting(input.shade, "board/section"),
      id: "board.screws-behind-tube",
      severity: "fix",
      text: `The tube leaves only ${lengthText(Math.max(0, roomMm), shade.units)} of the board beside it, and no driver reaches the screws past it. Take a deeper board, or screw the board up before the tube goes into its supports.`,
      cite: DRIVER.cite,
      figures: ["board.screw-line"],
      remedies: deeperBoards(input, lift.tube.diameterMm + 2 * DRIVER.value),
    },
  ];
}

function eyesTooWide(input: BoardInput): Finding[] {
  const { shade } = input;
  const lastMm = input.lift.takeUp === "cleat" ? input.lift.turn.diameterMm : 0;
  const eyeMm = Math.max(shade.eye.outsideDiameterMm, lastMm);
  if (eyeMm <= shade.board.depthMm) return [];
  return [
    {
      ...atSetting(input.shade, "lift/eye"),
      id: "board.eyes-too-wide",
      severity: "fix",
      text: `The eyes are ${lengthText(eyeMm, shade.units)} across and the board only ${lengthText(shade.board.depthMm, shade.units)} deep.`,
      cite: cite("geometry"),
      remedies: deeperBoards(input, eyeMm),
    },
  ];
}

function eyeOffBoard(input: BoardInput, board: MountedBoard): Finding[] {
  const { shade, size } = input;
  const edge = shade.eye.outsideDiameterMm / 2;
  const insetMm = Math.min(
    ...board.eyes.map(({ xMm }) => Math.min(xMm - board.leftMm, board.leftMm + board.lengthMm - xMm)),
  );
  if (insetMm >= edge) return [];
  const neededMm = edge + EYE_FROM_END_MM;
  const remedies: Remedy[] = [];
  const shorterMm = downToMark(
    size.finishedWidthMm - board.lengthMm - 2 * (neededMm - insetMm),
    shade.units.ruler,
  );
  if (shorterMm >= 0) {
    remedies.push({
      label: `Make the board only ${lengthText(shorterMm, shade.units)} shorter than the shade`,
      patch: settingPatch(shade, "mount", "boardShorterMm", shorterMm),
    });
  }
  const edgeInset = upToMark(board.leftMm + neededMm, shade.units.ruler);
  if (edgeInset <= size.finishedWidthMm / 4) {
    remedies.push({
      label: `Set the edge columns in by ${lengthText(edgeInset, shade.units)}`,
      patch: settingPatch(shade, "columns", "edgeInsetMm", edgeInset),
    });
  }
  return [
    {
      ...atSetting(input.shade, "columns/edgeInsetMm"),
      id: "board.eye-off-board",
      severity: "stop",
      text:
        insetMm < 0
          ? `The eye of the edge column lies ${lengthText(-insetMm, shade.units)} beyond the end of the board.`
          : `The eye of the edge column is ${lengthText(insetMm, shade.units)} from the end of the board, which would split there.`,
      cite: cite("geometry", "half an eye of wood beyond the eye’s middle"),
      remedies,
    },
  ];
}

import type { Finding, Remedy } from "../../figures/index.ts";
import { settingPatch } from "../../job/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { downToMark, lengthText, upToMark } from "../../units/index.ts";
import { acrossFromControl, alongFromControl, type ControlFrame } from "../control-frame.ts";
import { BOARD_END_MM, type BoardLine, gapAfter, gapsToTry, hasRoom } from "../gaps.ts";
import type { LiftShade, LockInput } from "../lift-input.ts";
import { boardRemedy, insetRemedy } from "../make-room.ts";
import type { FoundSeat } from "./find-seat.ts";
import { misfits } from "./lock-fit.ts";

const seatCite = cite("lock-instructions", "clear of the last eye, cords entering straight");

/** A hand finds the tail behind the cloth, and the tail hangs free at the edge, with its lock no farther in than this. */
export const TAIL_IN = sourced(
  150,
  "mm",
  cite("our-choice", "a hand’s breadth and a half round the edge of the cloth"),
);

/** Is there a place for the lock, and if not, what makes one? Does its tail hang where a hand comes to it? */
export function judgeSeat(
  input: LockInput,
  frame: ControlFrame,
  line: BoardLine,
  seat: FoundSeat,
): Finding[] {
  if (!seat.forced) return tailBehind(input, frame, line, seat);
  return input.shade.making.lift.seatMm === undefined
    ? [noPlace(input, line)]
    : [fixedPlace(input, frame, line, seat)];
}

function base({ shade }: LockInput) {
  return { stage: "rig", shadeId: shade.shadeId, severity: "stop", cite: seatCite } as const;
}

/** Why it sits farther in than a hand would wish. */
const MOVED: Partial<Record<FoundSeat["chosenFor"], string>> = {
  pull: " There the cords pull easiest.",
  hold: " There they come in level.",
};

function tailBehind(input: LockInput, frame: ControlFrame, line: BoardLine, seat: FoundSeat): Finding[] {
  const { shade } = input;
  if (seat.lockMm <= TAIL_IN.value) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const why = MOVED[seat.chosenFor] ?? "";
  return [
    {
      stage: "rig",
      shadeId: shade.shadeId,
      id: "rig.tail-behind-cloth",
      severity: "note",
      path: `${shade.path}/shade/making/lift/${seat.chosenFor === "maker" ? "seatMm" : "seat"}`,
      text: `The lock sits ${text(seat.lockMm)} in from the ${frame.side} edge, so its tail hangs behind the lowered cloth: a hand must reach round for it, and it brushes the back at every pull.${why} Within ${text(TAIL_IN.value)} of the edge it hangs in the open.`,
      cite: TAIL_IN.cite,
      remedies: [...freeSeat(shade, seat), ...outerSeat(input, line, seat)],
    },
  ];
}

function freeSeat(shade: LiftShade, { chosenFor }: FoundSeat): Remedy[] {
  if (chosenFor !== "maker" || shade.own?.lift?.seatMm === undefined) return [];
  return [
    {
      label: "Let the planner seat the lock",
      patch: [{ op: "remove", path: `${shade.path}/shade/making/lift/seatMm` }],
    },
  ];
}

/** Outside the last eye, or the edge columns nearer to the edge. */
function outerSeat({ shade }: LockInput, line: BoardLine, seat: FoundSeat): Remedy[] {
  if (seat.chosenFor === "maker") return [];
  const outside = gapAfter(line, 0);
  const firstEyeMm = line.eyesMm[0] ?? 0;
  const nearerMm = downToMark(firstEyeMm - (seat.lockMm - TAIL_IN.value), shade.units.ruler);
  return [
    ...(seat.gap.outer > 0 && hasRoom(outside) && outside.fromMm <= TAIL_IN.value
      ? [
          {
            label: "Seat the lock outside the last eye",
            patch: settingPatch(shade, "lift", "seat", "outside"),
          },
        ]
      : []),
    ...(seat.gap.outer > 0 && nearerMm >= line.boardFromMm + line.eyeRadiusMm
      ? [
          {
            label: `Set the edge columns in by ${lengthText(nearerMm, shade.units)}`,
            patch: settingPatch(shade, "columns", "edgeInsetMm", nearerMm),
          },
        ]
      : []),
  ];
}

function noPlace(input: LockInput, line: BoardLine): Finding {
  const { shade } = input;
  const { lock } = input.liftParts;
  const text = (mm: number) => lengthText(mm, shade.units);
  const wish = shade.making.lift.seat;
  const places: string[] = [];
  const outer = line.eyesMm[0] ?? 0;
  const inner = line.eyesMm[1];
  if (inner !== undefined && wish !== "outside") {
    places.push(`between the last two eyes it needs ${text(betweenMm(line))} and has ${text(inner - outer)}`);
  }
  if (inner === undefined || wish !== "between") {
    const hasMm = Math.max(0, outer - line.boardFromMm);
    places.push(`outside the last eye it needs ${text(outsideMm(line))} of board and has ${text(hasMm)}`);
  }
  const remedies = seatRemedies(input, line);
  const cure =
    remedies.length > 0 ? "" : " Use fewer columns, a shorter lock, or an inset that leaves it room.";
  return {
    ...base(input),
    id: "rig.no-seat",
    path: `${shade.path}/shade/making/lift/lock`,
    text: `There is no place for “${lock.name}”: ${places.join("; ")}. It is drawn where it misses by least.${cure}`,
    remedies,
  };
}

/** Board that a lock takes up between two eyes, and between the last eye and the board’s end, mm. */
function betweenMm({ housingLengthMm, eyeRadiusMm, straightRunMm }: BoardLine): number {
  return housingLengthMm + 2 * (eyeRadiusMm + straightRunMm);
}

function outsideMm({ housingLengthMm, eyeRadiusMm, straightRunMm }: BoardLine): number {
  return housingLengthMm + eyeRadiusMm + straightRunMm + BOARD_END_MM;
}

/** Each changes one thing, and only those are offered that leave room for the lock. */
function seatRemedies(input: LockInput, line: BoardLine): Remedy[] {
  return [
    ...otherKind(input, line),
    ...wideBay(input, line),
    ...longerBoard(input, line),
    ...movedInset(input, line),
    ...shorterLock(input, line),
    ...shorterRun(input, line),
  ];
}

function otherKind({ shade }: LockInput, line: BoardLine): Remedy[] {
  if (shade.making.lift.seat === "auto" || !gapsToTry(line, "auto").some(hasRoom)) return [];
  const kind = shade.making.lift.seat === "between" ? "outside the last eye" : "between the last two eyes";
  return [{ label: `Seat the lock ${kind}`, patch: settingPatch(shade, "lift", "seat", "auto") }];
}

/** Fewer columns make wider bays. */
function wideBay({ shade, grid }: LockInput, line: BoardLine): Remedy[] {
  const first = line.eyesMm[0] ?? 0;
  const last = line.eyesMm.at(-1) ?? 0;
  const count = Math.floor((last - first) / betweenMm(line)) + 1;
  if (shade.making.lift.seat === "outside" || count < 2 || count >= grid.columns.length) return [];
  return [{ label: `Use ${count} columns`, patch: settingPatch(shade, "columns", "count", count) }];
}

function longerBoard({ shade, size }: LockInput, line: BoardLine): Remedy[] {
  if (shade.making.lift.seat === "between") return [];
  const shorterMm = downToMark(2 * ((line.eyesMm[0] ?? 0) - outsideMm(line)), shade.units.ruler);
  return boardRemedy(shade, shorterMm, size.finishedWidthMm - size.boardLengthMm);
}

function movedInset({ shade, size }: LockInput, line: BoardLine): Remedy[] {
  if (shade.making.lift.seat === "between") return [];
  const insetMm = upToMark(line.boardFromMm + outsideMm(line), shade.units.ruler);
  return insetRemedy(shade, insetMm, size.finishedWidthMm);
}

function shorterLock({ shade, grid, liftParts: { lock } }: LockInput, line: BoardLine): Remedy[] {
  return shade.locks
    .filter((other) => other.id !== lock.id && other.housingLengthMm < lock.housingLengthMm)
    .filter((other) =>
      misfits(other, shade.cord, grid.columns.length).every(({ severity }) => severity !== "stop"),
    )
    .filter((other) =>
      gapsToTry({ ...line, housingLengthMm: other.housingLengthMm }, shade.making.lift.seat).some(hasRoom),
    )
    .slice(0, 2)
    .map((other) => ({
      label: `Use the shorter “${other.name}”`,
      patch: settingPatch(shade, "lift", "lock", other.id),
    }));
}

/** A straight run shorter than this is no run at all. */
const LEAST_RUN_MM = 6;

function shorterRun({ shade }: LockInput, line: BoardLine): Remedy[] {
  const first = line.eyesMm[0] ?? 0;
  const second = line.eyesMm[1];
  const outsideRun = line.straightRunMm + (first - line.boardFromMm - outsideMm(line));
  const betweenRun =
    second === undefined ? outsideRun : line.straightRunMm + (second - first - betweenMm(line)) / 2;
  const wish = shade.making.lift.seat;
  const most =
    wish === "between" ? betweenRun : wish === "outside" ? outsideRun : Math.max(outsideRun, betweenRun);
  const runMm = downToMark(most, shade.units.ruler);
  if (runMm < LEAST_RUN_MM || runMm >= line.straightRunMm) return [];
  return [
    {
      label: `Let the cords run straight for only ${lengthText(runMm, shade.units)}`,
      patch: settingPatch(shade, "lift", "straightRunMm", runMm),
    },
  ];
}

function fixedPlace(input: LockInput, frame: ControlFrame, line: BoardLine, seat: FoundSeat): Finding {
  const { shade } = input;
  const { lock } = input.liftParts;
  const wished = shade.making.lift.seatMm ?? 0;
  const nearest = nearestPlace(shade, line, alongFromControl(frame, wished));
  const remedies: Remedy[] = nearest === undefined ? [] : [moveTo(shade, acrossFromControl(frame, nearest))];
  if (shade.own?.lift?.seatMm !== undefined) {
    remedies.push({
      label: "Let the planner seat the lock",
      patch: [{ op: "remove", path: `${shade.path}/shade/making/lift/seatMm` }],
    });
  }
  const { gap } = seat;
  const clear = gap.toMm >= gap.fromMm ? "" : " No place in that bay is.";
  return {
    ...base(input),
    id: "rig.seat-not-clear",
    path: `${shade.path}/shade/making/lift/seatMm`,
    text: `With its centre ${lengthText(wished, shade.units)} from the left edge, “${lock.name}” is not clear of the eyes and the ends of the board, with ${lengthText(line.straightRunMm, shade.units)} of straight cord on each side.${clear}`,
    remedies,
  };
}

function nearestPlace({ making }: LiftShade, line: BoardLine, wished: number): number | undefined {
  let best: number | undefined;
  for (const gap of gapsToTry(line, making.lift.seat)) {
    if (!hasRoom(gap)) continue;
    const place = Math.min(Math.max(wished, gap.fromMm), Math.max(gap.fromMm, gap.toMm));
    if (best === undefined || Math.abs(place - wished) < Math.abs(best - wished)) best = place;
  }
  return best;
}

function moveTo(shade: LiftShade, placeMm: number): Remedy {
  return {
    label: `Move it to ${lengthText(placeMm, shade.units)} from the left edge`,
    patch: settingPatch(shade, "lift", "seatMm", placeMm),
  };
}

import type { TubeLift } from "../../shade-plan/index.ts";
import { SAME_LENGTH_MM } from "../../units/index.ts";

/** Written from the drawing and the maker's words alone: it knows nothing of how the parts were placed. */
export interface TubeFacts {
  columnsMm: readonly number[];
  boardFromMm: number;
  boardToMm: number;
}

interface Part {
  what: string;
  fromMm: number;
  toMm: number;
}

/** What is wrong with a tube as it is drawn, in words; nothing where nothing is. */
export function verifyTube(lift: TubeLift, facts: TubeFacts): string[] {
  const parts: Part[] = [
    ...lift.spools.map(({ number, xMm, lengthMm }) => part(`spool ${number}`, xMm, lengthMm)),
    ...lift.supports.map(({ number, xMm }) => part(`support ${number}`, xMm, lift.supportLengthMm)),
    part("the drive", lift.drive.xMm, lift.drive.lengthMm),
  ].sort((a, b) => a.fromMm - b.fromMm);
  const faults: string[] = [];
  parts.forEach((one, i) => {
    const next = parts[i + 1];
    if (next !== undefined && next.fromMm < one.toMm - SAME_LENGTH_MM) {
      faults.push(`${one.what} and ${next.what} overlap`);
    }
    if (one.fromMm < facts.boardFromMm - SAME_LENGTH_MM || one.toMm > facts.boardToMm + SAME_LENGTH_MM) {
      faults.push(`${one.what} reaches beyond the board`);
    }
  });
  for (const { number, xMm } of lift.spools) {
    if (xMm < lift.tube.fromMm - SAME_LENGTH_MM || xMm > lift.tube.toMm + SAME_LENGTH_MM) {
      faults.push(`spool ${number} is not on the tube`);
    }
  }
  return [...faults, ...cordFaults(lift, facts)];
}

function part(what: string, atMm: number, lengthMm: number): Part {
  return { what, fromMm: atMm - lengthMm / 2, toMm: atMm + lengthMm / 2 };
}

function cordFaults({ cords, spools }: TubeLift, { columnsMm }: TubeFacts): string[] {
  if (cords.length !== columnsMm.length || spools.length !== columnsMm.length) {
    return ["not every column has one cord and one spool"];
  }
  return cords.flatMap((cord, i) => {
    const over = Math.abs((spools[i]?.xMm ?? 0) - cord.columnX) <= SAME_LENGTH_MM;
    const own = Math.abs((columnsMm[i] ?? 0) - cord.columnX) <= SAME_LENGTH_MM;
    return over && own ? [] : [`cord ${cord.number} does not hang under its own spool`];
  });
}

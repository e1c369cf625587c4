import type { MountedBoard } from "./board.ts";
import type { Lift, TopRail } from "./lift.ts";

/** Something that is screwed up under a board, where its middle lies. */
export interface BoardMark {
  what:
    | "eye"
    /** The eye above a column over which all cords turn down. */
    | "eye-and-last-eye"
    | "last-eye"
    | "lock"
    | "spool"
    | "support"
    | "drive"
    | "rail-eye"
    | "rail-lock";
  /** As the drawing has it. */
  name: string;
  number?: number;
  xMm: number;
  zMm: number;
  /** Its screws, where they are known. */
  screwsMm?: readonly { xMm: number; zMm: number }[];
}

/** All that a lift and its top rail have under the board, each once: whoever lists places on a board asks here. */
export function boardMarks({ board, lift }: { board: Pick<MountedBoard, "eyes">; lift: Lift }): BoardMark[] {
  return [...liftMarks(board, lift), ...(lift.topRail === undefined ? [] : railMarks(lift.topRail))];
}

function liftMarks({ eyes }: Pick<MountedBoard, "eyes">, lift: Lift): BoardMark[] {
  const plain = eyes.map(
    ({ xMm, zMm }, i): BoardMark => ({ what: "eye", name: `Eye ${i + 1}`, number: i + 1, xMm, zMm }),
  );
  switch (lift.takeUp) {
    case "lock": {
      const { xMm, zMm, screwsMm } = lift.seat;
      return [...plain, { what: "lock", name: "Lock, middle", xMm, zMm, screwsMm }];
    }
    case "cleat": {
      const { xMm, zMm, column } = lift.turn;
      if (column === undefined) return [...plain, { what: "last-eye", name: "Last eye", xMm, zMm }];
      return plain.map((eye) =>
        eye.number === column ? { ...eye, what: "eye-and-last-eye", name: `Eye ${column}, the last` } : eye,
      );
    }
    case "tube": {
      const { tube, spools, supports, drive } = lift;
      const { zMm } = tube;
      return [
        ...spools.map(
          ({ number, xMm }): BoardMark => ({ what: "spool", name: `Spool ${number}`, number, xMm, zMm }),
        ),
        ...supports.map(
          ({ number, xMm }): BoardMark => ({ what: "support", name: `Support ${number}`, number, xMm, zMm }),
        ),
        {
          what: "drive",
          name: "Drive, middle",
          xMm: drive.xMm,
          zMm: drive.zMm,
          screwsMm: drive.screwsMm,
        },
      ];
    }
  }
}

function railMarks({ cords, eyes, seat }: TopRail): BoardMark[] {
  return [
    ...eyes.flatMap(({ xMm, zMm }, i): BoardMark[] => {
      const number = cords[i]?.column;
      if (number === undefined) return [];
      return [{ what: "rail-eye", name: `Rail eye at column ${number}`, number, xMm, zMm }];
    }),
    { what: "rail-lock", name: "Rail lock, middle", xMm: seat.xMm, zMm: seat.zMm, screwsMm: seat.screwsMm },
  ];
}

import type { Finding } from "../figures/index.ts";
import type { Opening } from "../job/index.ts";
import { type HangingCords, hangingCords } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText, type UnitChoice } from "../units/index.ts";
import { counted, listed } from "../words/index.ts";

/** A shade of the room, as far as its cords can meet those of another. */
interface ShadeOfRoom {
  windowName: string;
  opening?: Pick<Opening, "left" | "right"> | undefined;
  lift: Parameters<typeof hangingCords>[0];
}

interface RoomOfShades {
  name: string;
  path: string;
  units: UnitChoice;
  shades: readonly ShadeOfRoom[];
}

const MOST_NAMED = 6;

/** Cords at several windows of one room of which nobody said what hangs beside them: asked once for the room. */
export function judgeRoomCords({ name, path, units, shades }: RoomOfShades): Finding[] {
  const corded = shades
    .map(({ windowName, opening, lift }) => ({ windowName, opening, cords: hangingCords(lift) }))
    .filter(({ cords }) => cords.length > 0);
  const unsaid = corded.some(({ opening }) => opening?.left === undefined && opening?.right === undefined);
  if (corded.length < 2 || !unsaid) return [];
  const [one = 0, other = 0] = corded.map(({ cords }) => longestMm(cords)).sort((a, b) => b - a);
  const names = corded.slice(0, MOST_NAMED).map(({ windowName }) => windowName);
  const more = corded.length - names.length;
  return [
    {
      id: "safety.room-cords",
      severity: "unproven",
      stage: "safety",
      path,
      text: `Cords hang at ${counted(corded.length, "window")} of ${name}: ${listed([...names, ...(more > 0 ? [`${more} more`] : [])])}. Two that hang ${lengthText(one + other, units)} apart or less can reach each other, be tied or twist into one loop. Say at each opening what hangs beside it.`,
      cite: cite("cordless-advice", "never tie cords together"),
      remedies: [],
    },
  ];
}

function longestMm(cords: readonly HangingCords[]): number {
  return Math.max(...cords.map(({ downMm, upMm }) => Math.max(downMm, upMm)));
}

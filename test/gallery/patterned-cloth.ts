import { type Job, SWATCH_SIDE } from "../../src/job/index.ts";

type Rgb = readonly [number, number, number];

/** Where the flowers of the print lie in its repeat. */
const FLOWERS = [
  { x: 0.3, y: 0.28, size: 0.26, turn: 0.6 },
  { x: 0.75, y: 0.7, size: 0.24, turn: -0.7 },
  { x: 0.72, y: 0.2, size: 0.14, turn: 1.8 },
  { x: 0.22, y: 0.75, size: 0.15, turn: -2 },
];
const PETALS = 7;

/** Cloths with a stripe and with a large print, drawn by rule: invented. */
export const PATTERNED: Record<string, { swatch: string; acrossMm: number; alongMm: number }> = {
  stripe: { swatch: swatchOf(stripeAt), acrossMm: 120, alongMm: 120 },
  print: { swatch: swatchOf(printAt), acrossMm: 420, alongMm: 480 },
};

/** The job with the face of its first window in a patterned cloth, as heavy as the one it had. */
export function inPatternedCloth(job: Job, pattern: string): Job {
  const cloth = PATTERNED[pattern];
  const [room] = job.rooms;
  const [window] = room?.windows ?? [];
  if (cloth === undefined || room === undefined || window === undefined)
    throw new Error("invalid gallery job: no such cloth or window");
  const { acrossMm, alongMm, swatch } = cloth;
  const own = job.cloths?.find(({ id }) => id === window.shade.face);
  const patterned = {
    ...{ id: pattern, name: `${pattern}, demo`, usableWidthMm: 1500, massGsm: own?.massGsm ?? 200 },
    repeat: { verticalMm: alongMm, horizontalMm: acrossMm, match: "straight" as const },
    photo: {
      // No page reads it here: pictures on paper show the swatch.
      image: "data:image/png;base64,iVBORw0KGgo=",
      ...{ leftShare: 0, topShare: 0, widthShare: 1, heightShare: 1, swatch },
    },
    demo: true,
  };
  const shade = { ...window.shade, face: pattern };
  return {
    ...job,
    cloths: [...(job.cloths ?? []), patterned],
    rooms: [{ ...room, windows: [{ ...window, shade }] }],
  };
}

function swatchOf(colourAt: (x: number, y: number) => Rgb): string {
  return Array.from({ length: SWATCH_SIDE ** 2 }, (_, n) => {
    const [x, y] = [n % SWATCH_SIDE, Math.floor(n / SWATCH_SIDE)];
    return colourAt((x + 0.5) / SWATCH_SIDE, (y + 0.5) / SWATCH_SIDE)
      .map((channel) => channel.toString(16).padStart(2, "0"))
      .join("");
  }).join("");
}

/** Blue on cream, edged with red. */
function stripeAt(x: number): Rgb {
  if (x < 0.5) return [238, 232, 216];
  return x < 0.56 || x >= 0.94 ? [190, 60, 50] : [52, 84, 120];
}

/** Flowers of seven petals along a winding stem. */
function printAt(x: number, y: number): Rgb {
  for (const flower of FLOWERS) {
    const [dx, dy] = [x - flower.x, y - flower.y];
    for (let k = 0; k < PETALS; k++) {
      const turn = flower.turn + (2 * Math.PI * k) / PETALS;
      const along = dx * Math.cos(turn) + dy * Math.sin(turn) - 0.55 * flower.size;
      const beside = dy * Math.cos(turn) - dx * Math.sin(turn);
      if (Math.hypot(along / (0.45 * flower.size), beside / (0.2 * flower.size)) < 1)
        return k % 2 === 1 ? [176, 62, 84] : [200, 96, 110];
    }
    if (Math.hypot(dx, dy) < 0.15 * flower.size) return [230, 180, 70];
  }
  return Math.abs(0.12 * Math.sin(2 * Math.PI * x) + 0.5 - y) < 0.02 ? [84, 120, 70] : [243, 238, 226];
}

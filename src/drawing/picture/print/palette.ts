import { channelHex, linearOf, srgbOf } from "../lit-colour.ts";

/** Colours told as few by which a pattern is drawn: of each place the number of its colour, and the colours as `#rrggbb`. */
export interface Palette {
  of: Uint8Array;
  /** The most common first. */
  hexes: string[];
}

const MOST_COLOURS = 7;
/** Colours nearer than this are one, in OKLab. */
const ALIKE = 0.07;
const ROUNDS = 4;

type Lab = [number, number, number];

/**
 * Few colours for many: each new one is the farthest from those before it, then all move to the mean of theirs (k-means).
 * Distances are OKLab’s (Ottosson 2020), where equal steps look equal.
 */
export function paletteOf(rgb: readonly string[]): Palette {
  const labs = rgb.map(labOf);
  const centres: Lab[] = [meanOf(labs)];
  const nearest = (lab: Lab) => {
    let best = 0;
    centres.forEach((centre, k) => {
      if (apart(lab, centre) < apart(lab, centres[best] as Lab)) best = k;
    });
    return best;
  };
  while (centres.length < MOST_COLOURS) {
    const gaps = labs.map((lab) => apart(lab, centres[nearest(lab)] as Lab));
    const far = gaps.reduce((best, gap, k) => (gap > (gaps[best] as number) ? k : best), 0);
    if ((gaps[far] ?? 0) < ALIKE) break;
    centres.push(labs[far] as Lab);
  }
  for (let round = 0; round < ROUNDS; round++) {
    const own = labs.map(nearest);
    centres.forEach((_, k) => {
      const mine = labs.filter((_, n) => own[n] === k);
      if (mine.length > 0) centres[k] = meanOf(mine);
    });
  }
  const own = labs.map(nearest);
  const counts = centres.map((_, k) => own.filter((one) => one === k).length);
  const order = centres.map((_, k) => k).filter((k) => (counts[k] as number) > 0);
  order.sort((a, b) => (counts[b] as number) - (counts[a] as number) || a - b);
  return {
    of: Uint8Array.from(own, (k) => order.indexOf(k)),
    hexes: order.map((k) => hexOf(centres[k] as Lab)),
  };
}

function apart(a: Lab, b: Lab): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function meanOf(labs: readonly Lab[]): Lab {
  const sum: Lab = [0, 0, 0];
  for (const lab of labs) for (let c = 0; c < 3; c++) sum[c] = (sum[c] as number) + (lab[c] as number);
  return sum.map((part) => part / Math.max(1, labs.length)) as Lab;
}

function labOf(rgb: string): Lab {
  const [r, g, b] = [0, 2, 4].map((at) => linearOf(Number.parseInt(rgb.slice(at, at + 2), 16) / 255)) as Lab;
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

function hexOf([light, a, b]: Lab): string {
  const l = (light + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (light - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (light - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const channels = [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
  return `#${channels.map((one) => channelHex(srgbOf(Math.min(1, Math.max(0, one))))).join("")}`;
}

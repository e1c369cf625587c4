/** Steps of light that the eye tells apart on one cloth. */
const STEPS = 64;

/**
 * A colour under a share of full light, `#rrggbb`: the light is multiplied as it adds up in the eye's own linear scale
 * (sRGB transfer curve, IEC 61966-2-1), in steps fine enough not to show.
 */
export function litHex(colour: string, light: number): string {
  const share = Math.round(Math.max(0, light) * STEPS) / STEPS;
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  return `#${channels.map((channel) => hexOf(encoded(Math.min(1, decoded(channel) * share)))).join("")}`;
}

function decoded(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

function encoded(value: number): number {
  return value <= 0.0031308 ? value * 12.92 : 1.055 * value ** (1 / 2.4) - 0.055;
}

function hexOf(value: number): string {
  return Math.round(255 * value)
    .toString(16)
    .padStart(2, "0");
}

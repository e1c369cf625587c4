/** Steps of light that the eye tells apart on one cloth. */
const STEPS = 64;

/**
 * A colour under a share of full light, `#rrggbb`: the light is multiplied as it adds up in the eye's own linear scale
 * (sRGB transfer curve, IEC 61966-2-1), in steps fine enough not to show.
 */
export function litHex(colour: string, light: number): string {
  const share = Math.round(Math.max(0, light) * STEPS) / STEPS;
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  return `#${channels.map((channel) => channelHex(srgbOf(Math.min(1, linearOf(channel) * share)))).join("")}`;
}

/** A channel from 0 to 1 as sRGB writes it, in linear light (IEC 61966-2-1). */
export function linearOf(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

/** The other way. */
export function srgbOf(value: number): number {
  return value <= 0.0031308 ? value * 12.92 : 1.055 * value ** (1 / 2.4) - 0.055;
}

/** A channel from 0 to 1 in two hexadecimal digits. */
export function channelHex(value: number): string {
  return Math.round(255 * value)
    .toString(16)
    .padStart(2, "0");
}

/** A dye of the same cloth: each channel that share of what it was, as written. */
export function darkerDye(colour: string, share: number): string {
  const channels = [1, 3, 5].map((at) => (Number.parseInt(colour.slice(at, at + 2), 16) / 255) * share);
  return `#${channels.map(channelHex).join("")}`;
}

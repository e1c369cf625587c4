import type { CommonNet } from "../../../drape/index.ts";

/** Neighbours along the cloth that can stand before a place, lines away. */
const LOOKS = [2, 4, 7, 11, 16];
/** Share of the room's light that a place between folds loses at most. */
const MOST_CLOSED = 0.75;

/** How open each place lies to the room: less where the cloth above and below stands out before it. Written as a grey. */
export function openEach(
  { across, along }: CommonNet,
  places: Float32Array,
  normals: Float32Array,
  grey: Float32Array,
): void {
  // Thousands of places many times a second: nothing is made for one of them.
  for (let j = 0; j < along; j++) {
    for (let i = 0; i < across; i++) {
      const n = 3 * (j * across + i);
      let closed = 0;
      for (let k = 0; k < 2 * LOOKS.length; k++) {
        const look = LOOKS[k >> 1] as number;
        const line = (k & 1) === 0 ? j - look : j + look;
        if (line < 0 || line >= along) continue;
        const other = 3 * (line * across + i);
        const dx = (places[other] as number) - (places[n] as number);
        const dy = (places[other + 1] as number) - (places[n + 1] as number);
        const dz = (places[other + 2] as number) - (places[n + 2] as number);
        const rises =
          dx * (normals[n] as number) + dy * (normals[n + 1] as number) + dz * (normals[n + 2] as number);
        if (rises > 0) closed += rises / (Math.sqrt(dx * dx + dy * dy + dz * dz) || 1);
      }
      const open = 1 - Math.min(MOST_CLOSED, closed / LOOKS.length);
      grey[n] = open;
      grey[n + 1] = open;
      grey[n + 2] = open;
    }
  }
}

/** Height of the bands in which cloth behind cloth is looked for, mm. */
const BAND_MM = 5;
/** Nearer than this is the same layer, mm. */
const SAME_MM = 0.5;

/** How many layers of the cloth itself lie behind each place, towards the pane. */
export function behindEach({ across, along }: CommonNet, places: Float32Array, behind: Float32Array): void {
  const bandAt = new Int32Array(along);
  // Of each band the first of its links, of each link the next in its band and how far back it runs there.
  let first = new Int32Array(0);
  const next: number[] = [];
  const depths: number[] = [];
  for (let i = 0; i < across; i++) {
    let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let j = 0; j < along; j++) {
      const band = Math.round((places[3 * (j * across + i) + 1] as number) / BAND_MM);
      bandAt[j] = band;
      lowest = Math.min(lowest, band);
      highest = Math.max(highest, band);
    }
    if (first.length <= highest - lowest) first = new Int32Array(2 * (highest - lowest) + 1);
    first.fill(-1);
    next.length = 0;
    depths.length = 0;
    for (let j = 1; j < along; j++) {
      const [a, b] = [bandAt[j - 1] as number, bandAt[j] as number];
      const from = places[3 * ((j - 1) * across + i) + 2] as number;
      const deeper = (places[3 * (j * across + i) + 2] as number) - from;
      // Each link counts for the bands that it enters.
      const step = Math.sign(b - a);
      for (let band = a; band !== b; ) {
        band += step;
        next.push(first[band - lowest] as number);
        first[band - lowest] = depths.length;
        depths.push(from + ((band - a) / (b - a)) * deeper);
      }
    }
    for (let j = 0; j < along; j++) {
      const z = (places[3 * (j * across + i) + 2] as number) - SAME_MM;
      let layers = 0;
      for (let k = first[(bandAt[j] as number) - lowest] as number; k >= 0; k = next[k] as number)
        if ((depths[k] as number) < z) layers++;
      behind[j * across + i] = layers;
    }
  }
}

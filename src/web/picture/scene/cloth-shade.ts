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
  for (let j = 0; j < along; j++) {
    for (let i = 0; i < across; i++) {
      const n = 3 * (j * across + i);
      let closed = 0;
      for (const look of LOOKS) {
        for (const line of [j - look, j + look]) {
          if (line < 0 || line >= along) continue;
          const other = 3 * (line * across + i);
          const dx = (places[other] as number) - (places[n] as number);
          const dy = (places[other + 1] as number) - (places[n + 1] as number);
          const dz = (places[other + 2] as number) - (places[n + 2] as number);
          const rises =
            dx * (normals[n] as number) + dy * (normals[n + 1] as number) + dz * (normals[n + 2] as number);
          closed += Math.max(0, rises) / (Math.sqrt(dx * dx + dy * dy + dz * dz) || 1);
        }
      }
      grey.fill(1 - Math.min(MOST_CLOSED, closed / LOOKS.length), n, n + 3);
    }
  }
}

/** Height of the bands in which cloth behind cloth is looked for, mm. */
const BAND_MM = 5;
/** Nearer than this is the same layer, mm. */
const SAME_MM = 0.5;

/** How many layers of the cloth itself lie behind each place, towards the pane. */
export function behindEach({ across, along }: CommonNet, places: Float32Array, behind: Float32Array): void {
  for (let i = 0; i < across; i++) {
    const bands = new Map<number, number[]>();
    const at = (j: number) => 3 * (j * across + i);
    const bandOf = (j: number) => Math.round((places[at(j) + 1] as number) / BAND_MM);
    for (let j = 1; j < along; j++) {
      const [a, b] = [bandOf(j - 1), bandOf(j)];
      // Each link counts for the bands that it enters.
      const step = Math.sign(b - a);
      for (let band = a; band !== b; ) {
        band += step;
        const share = (band - a) / (b - a);
        const from = places[at(j - 1) + 2] as number;
        const z = from + share * ((places[at(j) + 2] as number) - from);
        const known = bands.get(band);
        if (known === undefined) bands.set(band, [z]);
        else known.push(z);
      }
    }
    for (let j = 0; j < along; j++) {
      const z = (places[at(j) + 2] as number) - SAME_MM;
      let layers = 0;
      for (const other of bands.get(bandOf(j)) ?? []) if (other < z) layers++;
      behind[j * across + i] = layers;
    }
  }
}

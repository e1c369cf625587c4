import type { Layer } from "./cloth.ts";

export interface MassPart {
  part: Layer | "bar" | "ribs" | "rings" | "sleeves" | "cord";
  label: string;
  massKg: number;
}

export interface Mass {
  parts: MassPart[];
  totalKg: number;
  /** Cloth alone, per finished area, g/m². */
  clothGsm: number;
}

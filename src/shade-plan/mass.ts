import { LAYERS, type Layer } from "./cloth.ts";

export interface MassPart {
  part: Layer | "bands" | "bar" | "ribs" | "strips" | "rings" | "sleeves" | "cord";
  label: string;
  massKg: number;
}

export interface Mass {
  parts: MassPart[];
  totalKg: number;
  /** Cloth alone, per finished area, g/m². */
  clothGsm: number;
  /** Cloth that lies on the board and is not lifted: cover, returns, dust strip, kg. */
  onBoardKg: number;
}

/** The same mass by where it sits: in the cloth, at the bottom in the bar, or spread over the rows. */
export interface MassByCarrier {
  clothKg: number;
  barKg: number;
  /** Ribs, rings and whatever else goes with the rows. */
  rowsKg: number;
}

export function massByCarrier({ parts }: Mass): MassByCarrier {
  const mass = { clothKg: 0, barKg: 0, rowsKg: 0 };
  for (const { part, massKg } of parts) {
    if (part === "bands" || (LAYERS as readonly string[]).includes(part)) mass.clothKg += massKg;
    else if (part === "bar") mass.barKg += massKg;
    else mass.rowsKg += massKg;
  }
  return mass;
}

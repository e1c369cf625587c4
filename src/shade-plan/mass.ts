import { LAYERS, type Layer } from "./cloth.ts";

export interface MassPart {
  part: Layer | "bands" | "bar" | "ribs" | "strips" | "rings" | "sleeves" | "cord";
  label: string;
  massKg: number;
  /** What of it does not lie evenly over the length: turned up at the hem, and on the board, kg. */
  hemKg?: number;
  boardKg?: number;
}

export interface Mass {
  parts: MassPart[];
  totalKg: number;
  /** Cloth alone, per finished area, g/m². */
  clothGsm: number;
  /** Cloth that lies on the board and is not lifted: cover, returns, dust strip, kg. */
  onBoardKg: number;
}

/** The same mass by where it sits: evenly in the cloth, at the bottom in hem and bar, spread over the rows, or on the board. */
export interface MassByCarrier {
  clothKg: number;
  /** Cloth turned up at the hem, and cloth of the layers that lies on the board and hangs on no cord. */
  hemKg: number;
  boardKg: number;
  barKg: number;
  /** Ribs, rings and whatever else goes with the rows. */
  rowsKg: number;
}

export function massByCarrier({ parts }: Mass): MassByCarrier {
  const mass = { clothKg: 0, hemKg: 0, boardKg: 0, barKg: 0, rowsKg: 0 };
  for (const { part, massKg, hemKg = 0, boardKg = 0 } of parts) {
    mass.hemKg += hemKg;
    mass.boardKg += boardKg;
    if (part === "bands" || (LAYERS as readonly string[]).includes(part))
      mass.clothKg += massKg - hemKg - boardKg;
    else if (part === "bar") mass.barKg += massKg;
    else mass.rowsKg += massKg;
  }
  return mass;
}

/** One line to buy, in the unit in which it is sold. */
export interface ShoppingLine {
  id: string;
  group: "cloth" | "cord" | "hardware" | "board" | "sundries";
  label: string;
  /** What the shade uses, and what must be bought, as text in the job's units: `2 1/2 yd`. */
  needText: string;
  buyText: string;
  /** The same as a number, for lists: quantity in `unit`. */
  quantity: number;
  unit: "yd" | "m" | "ft" | "piece" | "pack" | "length";
  onHand?: number;
  price?: number;
  cost?: number;
}

export interface LabourLine {
  id: string;
  label: string;
  minutes: number;
  cost?: number;
}

export interface Cost {
  currency: string;
  shopping: ShoppingLine[];
  labour: LabourLine[];
  materials: number;
  labourCost: number;
  /** Tax on both, share of one, and what it comes to. */
  taxShare: number;
  tax: number;
  total: number;
  /** Lines without a price: the total leaves them out and says so. */
  unpriced: string[];
}

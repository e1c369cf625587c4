/** Shank of wood screws by gauge, mm (Wood Handbook FPL-GTR-282, Table 8-9). */
export const SCREW_SHANK_MM = { "6": 3.51, "8": 4.17, "10": 4.83, "12": 5.49 } as const;

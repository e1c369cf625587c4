/** Shank of wood screws by gauge, mm (Wood Handbook FPL-GTR-282, Table 8-9). */
export const SCREW_SHANK_MM = { "6": 3.51, "8": 4.17, "10": 4.83, "12": 5.49 } as const;

/** Lead hole as a part of the thread's root: about 70 % in softwood, 90 % in hardwood (same chapter). */
export const LEAD_HOLE_PART = { softwood: 0.7, hardwood: 0.9 } as const;

import { MM_PER_INCH, MM_PER_M } from "./length.ts";

/**
 * 1 lb = 0.453 592 37 kg and 1 oz/yd² = 33.905 75 g/m²: NIST SP 811 (2008), appendix B.8.
 */
export const KG_PER_POUND = 0.45359237;
export const GSM_PER_OZ_YD2 = 33.90575;

/** Standard acceleration of free fall, m/s²: NIST SP 811 (2008), appendix B.8. */
export const GRAVITY = 9.80665;

/** Newtons per pound-force: NIST SP 811 (2008), appendix B.8, "pound-force (lbf)". */
export const N_PER_POUND_FORCE = 4.4482216152605;

/** Newton metres per pound-force inch: NIST SP 811 (2008), appendix B.8, "pound-force inch (lbf · in)". */
export const NM_PER_POUND_FORCE_INCH = (N_PER_POUND_FORCE * MM_PER_INCH) / MM_PER_M;

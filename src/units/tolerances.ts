/**
 * Named tolerances with what they mean on the table. No other tolerance is written inline.
 */

/** Two lengths nearer than this are the same length: a tenth of what a sharp chalk line is wide. */
export const SAME_LENGTH_MM = 1e-3;

/**
 * Slack when counting "how many fit": a cloth cut exactly as wide as the bolt fits it,
 * and 0.1 + 0.2 must not cost the maker a second width.
 */
export const FIT_SLACK = 1e-9;

/** Sums of the same lengths, added up in another order, are the same: more than their last bits, less than any length. */
export const SUM_SLACK_MM = 1e-6;

/**
 * Half a mark is half a mark, whatever the last bits of the sum that led there: in marks of the ruler.
 * Without it the same place would print as 7 3/4 in one figure and 7 7/8 in another.
 */
export const TIE_SLACK = 1e-10;

/** Tolerances of the numerical modules, each with what it means on the table. No other is written inline. */

/** A root is found when its bracket is this narrow against its place: a few units in the last digit of a double. */
export const ROOT_WIDTH = 4e-16;

/** Bisection alone narrows any bracket of doubles to nothing in this many steps, three to one. */
export const ROOT_STEPS = 400;

/**
 * A strip hangs right when no node is further off than this, in radians for its slope and half arcs for its ends:
 * the rounding of its sums, which a moment balance enlarges by a quarter of its nodes squared: 1e-9 at 160 of them.
 */
export const STRIP_RESIDUAL = 1e-13;

/** Newton steps from one shape to a near one. Three to six do it; past this the start was too far off. */
export const STRIP_STEPS = 30;

/** No slope may turn by more than this in one Newton step, rad: half a right angle keeps to the branch begun on. */
export const STRIP_TURN_RAD = 0.8;

/** From one shape to the next of a continuation no slope may turn by more than this, rad: more is another branch. */
export const STRIP_REACH_RAD = 0.3;

/** A continuation gives up when it must take steps smaller than this part of its way. */
export const SHORTEST_STEP = 1 / 4096;

/** How deep a fold sinks into a pane that it leans on, in half arcs: 0.1 mm in a fold of 125 mm, less than a cloth is thick. */
export const PANE_SINK = 1e-3;

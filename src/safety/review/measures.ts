import type { Check, RuleStates } from "../rules/rule.ts";
import { NOTHING_HANGS } from "./quantities/pull-cords.ts";
import type { LeansOn, Reading, Situation, Sweep } from "./quantities/quantity.ts";
import { QUANTITY_TABLE } from "./quantities/table.ts";

/** What a quantity comes to in its worst state. */
export interface Measurement extends Omit<Reading, "why"> {
  /** The sweep that it came from, whose words are asked for only where they are shown. */
  sweep?: Sweep;
  why: string;
  /** Cord slides out, so that the value as it hangs proves nothing. */
  feeds?: boolean;
}

export type Measured = { absent: string } | Measurement;

const HEIGHT_UNKNOWN = "The height of the window above the floor is not known.";

const ALL_HIGHER = "Nothing of the kind hangs as low as this rule asks.";

/** What one check's quantity comes to on one shade, in the worst of its states. */
export function measureCheck(situation: Situation, check: Check): Measured {
  const definition = QUANTITY_TABLE[check.quantity];
  if (definition.kind === "sweep") return swept(definition, situation, check);
  return definition.of(situation, check);
}

/**
 * What the worst pull makes of the quantity, mm, where cord can be drawn out or bent aside. Asked for only where
 * it can decide or is shown.
 */
export function pulledMm({ geometry }: Situation, check: Check, { sweep }: Measurement): number | undefined {
  if (sweep?.pulledAt === undefined) return undefined;
  const worse = sweep.worse === "high" ? Math.max : Math.min;
  let worst: number | undefined;
  for (const at of statesOf(check.states, sweep, geometry, check)) {
    const pulled = sweep.pulledAt(geometry, at, check);
    worst = worst === undefined ? pulled : worse(worst, pulled);
  }
  return worst;
}

function swept(sweep: Sweep, { geometry }: Situation, check: Check): Measured {
  const absent = sweep.absent(geometry);
  if (absent !== undefined) return { absent };
  const leansOn = sweep.leansOn?.(geometry, check);
  const blind = geometry.topAboveFloorMm === undefined && (sweep.needsFloor?.(geometry) ?? false);
  if (blind && check.belowFloorMm === undefined) {
    return { raise: 0, why: HEIGHT_UNKNOWN, over: "not-proven", within: "not-proven" };
  }
  const worst = extremum(sweep, geometry, check);
  const isThere = sweep.worse === "high" ? worst.value !== 0 : worst.value !== NOTHING_HANGS;
  if (leansOn !== undefined && !isThere) {
    return { raise: 0, ...leansOn, over: "not-proven", within: "not-proven" };
  }
  if (check.belowFloorMm !== undefined && !isThere) return { absent: ALL_HIGHER };
  const feeds = sweep.feeds?.(geometry, check) ?? false;
  return {
    sweep,
    ...worst,
    // Without the window's height every cord is taken as hanging that low, which convicts nobody.
    why: blind ? HEIGHT_UNKNOWN : (leansOn?.why ?? ""),
    over: blind ? "not-proven" : "failed",
    within: feeds || leansOn !== undefined ? "not-proven" : "not-shown-to-fail",
    feeds,
    ...(leansOn === undefined ? {} : testsOf(leansOn)),
  };
}

function testsOf({ test, alsoTests }: LeansOn): Pick<Measurement, "test" | "alsoTests"> {
  return { test, ...(alsoTests === undefined ? {} : { alsoTests }) };
}

function extremum(sweep: Sweep, geometry: Situation["geometry"], check: Check) {
  const sign = sweep.worse === "high" ? 1 : -1;
  let raise = 0;
  let value = -sign * Number.POSITIVE_INFINITY;
  for (const at of statesOf(check.states, sweep, geometry, check)) {
    const here = sweep.at(geometry, at, check);
    // Of equals the lowest state is shown, where a child reaches furthest.
    if (sign * (here - value) > 0 || (here === value && at < raise)) {
      value = here;
      raise = at;
    }
  }
  return { raise, value };
}

function statesOf(
  states: RuleStates,
  sweep: Sweep,
  geometry: Situation["geometry"],
  check: Check,
): readonly number[] {
  if (states === "lowered") return LOWERED;
  if (states === "raised") return RAISED;
  return sweep.states(geometry, check);
}

const LOWERED = [0] as const;
const RAISED = [1] as const;

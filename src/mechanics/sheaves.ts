/**
 * Pull that raises a load over a row of pulleys, each of which passes on this share of it: T = load / Π η.
 *
 * @throws on an efficiency that is not above 0 and at most 1
 */
export function pullOverSheaves(loadN: number, efficiencies: readonly number[]): number {
  return efficiencies.reduce((pull, efficiency) => pull / demanded(efficiency), loadN);
}

/**
 * Pull that just lets the load down again, N: friction now helps, T = load · Π η.
 *
 * @throws on an efficiency that is not above 0 and at most 1
 */
export function holdOverSheaves(loadN: number, efficiencies: readonly number[]): number {
  return efficiencies.reduce((pull, efficiency) => pull * demanded(efficiency), loadN);
}

/**
 * Mechanical advantage of a tackle with n parts of rope at the load, η(1 − ηⁿ)/(1 − η) (Pipeline Rules of Thumb
 * Handbook, p. 6: η = 0.917 on plain bearings, 0.962 on rollers). n where there is no friction.
 *
 * @throws on an efficiency that is not above 0 and at most 1
 */
export function tackleAdvantage(efficiency: number, parts: number): number {
  demanded(efficiency);
  let [sum, power] = [0, 1];
  for (let part = 0; part < parts; part++) {
    power *= efficiency;
    sum += power;
  }
  return sum;
}

/** Coefficient of friction from what raises and what lowers one load over one host: μ = ln(T_raise/T_lower) / 2θ. */
export function frictionFromPair(raiseN: number, lowerN: number, wrapRad: number): number {
  return Math.log(raiseN / lowerN) / (2 * wrapRad);
}

function demanded(efficiency: number): number {
  if (!(efficiency > 0 && efficiency <= 1)) throw new Error(`invalid efficiency: ${efficiency}`);
  return efficiency;
}

import { ROOT_STEPS, ROOT_WIDTH } from "../tolerances.ts";

/** What a search for a zero of one function came to. */
export type Root =
  | { kind: "converged"; value: number; iterations: number; residual: number }
  | { kind: "notConverged"; best: number; iterations: number; residual: number }
  | { kind: "noBracket"; atLow: number; atHigh: number };

/**
 * Zero of a continuous function between two places where its sign differs: Dekker's and Brent's safeguard in its short
 * form, regula falsi with the Illinois rule and a bisection wherever that would be slower (Dahlquist & Björck, Numerical
 * Methods, §6.2). The bracket ends narrower than `width` of its larger end.
 */
export function findRoot(f: (x: number) => number, low: number, high: number, width = ROOT_WIDTH): Root {
  // Plain assignments: pairs taken apart cost as much as the function, until the engine has warmed to them.
  let a = low;
  let fa = f(low);
  let b = high;
  let fb = f(high);
  if (fa === 0) return { kind: "converged", value: a, iterations: 0, residual: 0 };
  if (fb === 0) return { kind: "converged", value: b, iterations: 0, residual: 0 };
  if (!(Math.sign(fa) * Math.sign(fb) < 0)) return { kind: "noBracket", atLow: fa, atHigh: fb };
  // A zero at 0 has no size of its own to be near against.
  const floor = width * Math.abs(b - a);
  for (let iterations = 1; iterations <= ROOT_STEPS; iterations++) {
    const x = iterations % 3 === 0 ? (a + b) / 2 : between(a, b, (a * fb - b * fa) / (fb - fa));
    const fx = f(x);
    if (fx === 0) return { kind: "converged", value: x, iterations, residual: 0 };
    if (Math.sign(fx) * Math.sign(fb) < 0) {
      a = b;
      fa = fb;
    } else {
      fa /= 2;
    }
    b = x;
    fb = fx;
    const narrow = width * Math.max(Math.abs(a), Math.abs(b), floor);
    if (Math.abs(b - a) <= narrow) {
      return { kind: "converged", value: b, iterations, residual: Math.abs(fb) };
    }
  }
  return { kind: "notConverged", best: b, iterations: ROOT_STEPS, residual: Math.abs(fb) };
}

/** Keeps a guess inside its bracket, where rounding or a flat function throws it out. */
function between(a: number, b: number, x: number): number {
  return x > Math.min(a, b) && x < Math.max(a, b) ? x : (a + b) / 2;
}

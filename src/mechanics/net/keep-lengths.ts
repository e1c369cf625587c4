/** A chain in space whose links have lengths to keep. Three numbers a point. */
export interface Chain {
  x: Float64Array;
  /** Points from one end to the other, by their place in `x`. */
  points: Int32Array;
  /** Length of the link from each point to the next, mm. */
  restMm: Float64Array;
  /** 1 where a point is held. */
  held: Uint8Array;
  /** Links agree with their lengths to this share; 1e-8 where it is not told. */
  toShare?: number;
}

const MOST_STEPS = 40;
const SHARE = 1e-8;
/** Straight between two held points the links leave nothing to choose: so small a give keeps the matrix sound. */
const GIVE = 1e-10;

/**
 * Moves the free points of a chain as little as it takes for every link to have its length again: Newton's method on the
 * lengths, a tridiagonal system for the pulls in each step (the fast projection of Goldenthal, Harmon, Fattal, Bercovier &
 * Grinspun, “Efficient simulation of inextensible cloth”, ACM Transactions on Graphics 26(3), 2007). Held points must be near
 * enough to each other. Tells the largest share by which a link still differs.
 */
export function keepLengths({ x, points, restMm, held, toShare = SHARE }: Chain): number {
  const n = points.length - 1;
  const way = new Float64Array(3 * n);
  const miss = new Float64Array(n);
  const beside = new Float64Array(n);
  const ties = new Float64Array(n);
  let worst = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    worst = lookAlong();
    if (worst <= toShare) break;
    pullsOf();
    for (let k = 0; k <= n; k++) {
      if (held[k] === 1) continue;
      const at = 3 * (points[k] as number);
      for (let c = 0; c < 3; c++) {
        const above = k > 0 ? (miss[k - 1] as number) * (way[3 * k - 3 + c] as number) : 0;
        const below = k < n ? (miss[k] as number) * (way[3 * k + c] as number) : 0;
        x[at + c] = (x[at + c] as number) - above + below;
      }
    }
  }
  return worst;

  /** Direction of every link and by how much it is too long; the largest share of that. */
  function lookAlong(): number {
    let most = 0;
    for (let k = 0; k < n; k++) {
      const [a, b] = [3 * (points[k] as number), 3 * (points[k + 1] as number)];
      const dx = (x[b] as number) - (x[a] as number);
      const dy = (x[b + 1] as number) - (x[a + 1] as number);
      const dz = (x[b + 2] as number) - (x[a + 2] as number);
      const length = Math.sqrt(dx * dx + dy * dy + dz * dz) || 1e-12;
      way[3 * k] = dx / length;
      way[3 * k + 1] = dy / length;
      way[3 * k + 2] = dz / length;
      const rest = restMm[k] as number;
      miss[k] = length - rest;
      if (held[k] === 0 || held[k + 1] === 0) most = Math.max(most, Math.abs(length - rest) / (rest || 1));
    }
    return most;
  }

  /** Pulls that undo the misses, in their place: Thomas's elimination. */
  function pullsOf(): void {
    for (let k = 0; k < n; k++) {
      ties[k] = k > 0 ? tieTo(k) : 0;
      const free = (held[k] === 1 ? 0 : 1) + (held[k + 1] === 1 ? 0 : 1);
      let pivot = free + GIVE;
      if (free === 0) miss[k] = 0;
      if (k > 0) {
        const tie = ties[k] as number;
        const ratio = tie / (beside[k - 1] as number);
        pivot -= ratio * tie;
        miss[k] = (miss[k] as number) - ratio * (miss[k - 1] as number);
      }
      beside[k] = Math.max(pivot, GIVE);
    }
    for (let k = n - 1; k >= 0; k--) {
      const after = k + 1 < n ? (ties[k + 1] as number) * (miss[k + 1] as number) : 0;
      miss[k] = ((miss[k] as number) - after) / (beside[k] as number);
    }
  }

  /** What a link has to do with the one before it: they share a point, if that can move. */
  function tieTo(k: number): number {
    if (held[k] === 1) return 0;
    const [i, j] = [3 * k, 3 * k - 3];
    return -(
      (way[i] as number) * (way[j] as number) +
      (way[i + 1] as number) * (way[j + 1] as number) +
      (way[i + 2] as number) * (way[j + 2] as number)
    );
  }
}

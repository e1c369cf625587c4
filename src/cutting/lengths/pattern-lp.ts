/** A pattern as a column of the linear programme: how many of each row it holds, and its cost. */
export interface PatternColumn {
  cost: number;
  rows: readonly number[];
  counts: readonly number[];
  /** Row of the stock that it uses up, where that is limited. */
  stockRow?: number;
}

/** Reduced costs and pivots nearer to zero than this are zero. */
const ZERO = 1e-9;
/** The inverse is worked out afresh after so many pivots, before rounding piles up. */
const FRESH_AFTER = 150;
/** Cells of the inverse that are changed between two pauses. */
const BETWEEN_PAUSES = 2e7;
/** Lifts equal ratios apart, so that the simplex cannot walk in a circle. */
const LIFT = 1e-8;

/**
 * Least cost of fractions of patterns that meet a demand: minimise c·x where A·x ≥ demand, at most `supply` of each
 * limited stock, x ≥ 0. Primal simplex with a dense inverse (Dantzig's rule, right side lifted against circling;
 * Chvátal, Linear Programming, ch. 7 and 13); patterns can be added after each solution, and the old one is the start.
 *
 * The values serve to steer a search. No bound is taken from them: see `dual-bound.ts`.
 */
export class PatternLp {
  readonly #order: number;
  readonly #demandRows: number;
  readonly #rightSide: Float64Array;
  readonly #inverse: Float64Array;
  readonly #columns: PatternColumn[] = [];
  /** In each row a column of the list, or -1 − row for the row's own slack. */
  readonly #basis: number[];
  readonly #duals: Float64Array;
  readonly #values: Float64Array;
  readonly #direction: Float64Array;
  readonly #inBasis = new Set<number>();
  #pivots = 0;

  /** @param singles a first column for each demand row, holding that row alone */
  constructor(demand: readonly number[], supply: readonly number[], singles: readonly PatternColumn[]) {
    const order = demand.length + supply.length;
    this.#order = order;
    this.#demandRows = demand.length;
    this.#rightSide = Float64Array.from(
      [...demand, ...supply],
      (b, i) => b + LIFT * (1 + ((i * 7919) % 101)),
    );
    this.#inverse = new Float64Array(order * order);
    this.#duals = new Float64Array(order);
    this.#values = new Float64Array(order);
    this.#direction = new Float64Array(order);
    this.#basis = Array.from({ length: order }, (_, row) => (row < demand.length ? row : -1 - row));
    for (const [row, single] of singles.entries()) {
      this.#columns.push(single);
      this.#inBasis.add(row);
    }
    this.#refresh();
  }

  get columns(): readonly PatternColumn[] {
    return this.#columns;
  }

  add(column: PatternColumn): void {
    this.#columns.push(column);
  }

  /** Duals of the rows: what one more of it would cost. Those of the supply are at most 0. */
  get duals(): Float64Array {
    return this.#duals;
  }

  /** Patterns in use and how much of each. */
  used(): { column: PatternColumn; amount: number }[] {
    const used: { column: PatternColumn; amount: number }[] = [];
    for (let row = 0; row < this.#order; row++) {
      const at = this.#basis[row] as number;
      const amount = this.#values[row] as number;
      if (at >= 0 && amount > 100 * LIFT) used.push({ column: this.#columns[at] as PatternColumn, amount });
    }
    return used;
  }

  /** Pivots until no column of the list would lower the cost; pauses where that takes long. */
  *solve(): Generator<void, void> {
    const most = 50 * this.#order + 1000;
    const pause = Math.ceil(BETWEEN_PAUSES / this.#order ** 2);
    for (let n = 1; n <= most; n++) {
      const entering = this.#entering();
      if (entering === undefined) return;
      const leaving = this.#ratioTest(entering.at);
      if (leaving === undefined) return;
      this.#pivot(entering, leaving);
      if (n % pause === 0) yield;
    }
  }

  /** The column, or -1 − row of a slack, that lowers the cost most for one unit of it. */
  #entering(): { at: number; reduced: number } | undefined {
    let at: number | undefined;
    let reduced = -ZERO;
    for (let row = 0; row < this.#order; row++) {
      const dual = this.#duals[row] as number;
      const one = row < this.#demandRows ? dual : -dual;
      if (one < reduced && !this.#inBasis.has(-1 - row)) [at, reduced] = [-1 - row, one];
    }
    for (let j = 0; j < this.#columns.length; j++) {
      const one = this.reducedCost(this.#columns[j] as PatternColumn);
      if (one < reduced && !this.#inBasis.has(j)) [at, reduced] = [j, one];
    }
    return at === undefined ? undefined : { at, reduced };
  }

  reducedCost({ cost, rows, counts, stockRow }: PatternColumn): number {
    let value = cost;
    for (let k = 0; k < rows.length; k++) {
      value -= (this.#duals[rows[k] as number] as number) * (counts[k] as number);
    }
    return stockRow === undefined ? value : value - (this.#duals[stockRow] as number);
  }

  /** Sets the direction in which the values move, and finds the row that first comes to nothing. */
  #ratioTest(at: number): number | undefined {
    this.#setDirection(at);
    let leaving: number | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < this.#order; row++) {
      const step = this.#direction[row] as number;
      if (step <= ZERO) continue;
      const ratio = (this.#values[row] as number) / step;
      if (ratio < least) [leaving, least] = [row, ratio];
    }
    return leaving;
  }

  #setDirection(at: number): void {
    const [n, inverse, direction] = [this.#order, this.#inverse, this.#direction];
    direction.fill(0);
    const addRow = (row: number, times: number) => {
      for (let i = 0; i < n; i++) {
        direction[i] = (direction[i] as number) + times * (inverse[i * n + row] as number);
      }
    };
    if (at < 0) {
      addRow(-1 - at, -1 - at < this.#demandRows ? -1 : 1);
      return;
    }
    const { rows, counts, stockRow } = this.#columns[at] as PatternColumn;
    for (let k = 0; k < rows.length; k++) addRow(rows[k] as number, counts[k] as number);
    if (stockRow !== undefined) addRow(stockRow, 1);
  }

  #pivot({ at, reduced }: { at: number; reduced: number }, leaving: number): void {
    const [n, inverse, direction, values] = [this.#order, this.#inverse, this.#direction, this.#values];
    const pivot = direction[leaving] as number;
    const start = leaving * n;
    for (let k = 0; k < n; k++) inverse[start + k] = (inverse[start + k] as number) / pivot;
    const amount = (values[leaving] as number) / pivot;
    for (let row = 0; row < n; row++) {
      const step = direction[row] as number;
      if (row === leaving || step === 0) continue;
      const offset = row * n;
      for (let k = 0; k < n; k++) {
        const own = inverse[start + k] as number;
        if (own !== 0) inverse[offset + k] = (inverse[offset + k] as number) - step * own;
      }
      values[row] = (values[row] as number) - step * amount;
    }
    values[leaving] = amount;
    for (let k = 0; k < n; k++) {
      this.#duals[k] = (this.#duals[k] as number) + reduced * (inverse[start + k] as number);
    }
    this.#inBasis.delete(this.#basis[leaving] as number);
    this.#inBasis.add(at);
    this.#basis[leaving] = at;
    if (++this.#pivots % FRESH_AFTER === 0) this.#refresh();
  }

  /** Inverts the basis afresh (Gauss–Jordan with row exchange), and works values and duals out from it. */
  #refresh(): void {
    const n = this.#order;
    const matrix = new Float64Array(n * n);
    for (let k = 0; k < n; k++) this.#writeColumn(matrix, k);
    invert(matrix, this.#inverse, n);
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let k = 0; k < n; k++) {
        sum += (this.#inverse[i * n + k] as number) * (this.#rightSide[k] as number);
      }
      this.#values[i] = Math.max(0, sum);
    }
    this.#duals.fill(0);
    for (let i = 0; i < n; i++) {
      const at = this.#basis[i] as number;
      const cost = at < 0 ? 0 : (this.#columns[at] as PatternColumn).cost;
      if (cost === 0) continue;
      for (let k = 0; k < n; k++) {
        this.#duals[k] = (this.#duals[k] as number) + cost * (this.#inverse[i * n + k] as number);
      }
    }
  }

  #writeColumn(matrix: Float64Array, place: number): void {
    const n = this.#order;
    const at = this.#basis[place] as number;
    if (at < 0) {
      matrix[(-1 - at) * n + place] = -1 - at < this.#demandRows ? -1 : 1;
      return;
    }
    const { rows, counts, stockRow } = this.#columns[at] as PatternColumn;
    rows.forEach((row, k) => {
      matrix[row * n + place] = counts[k] as number;
    });
    if (stockRow !== undefined) matrix[stockRow * n + place] = 1;
  }
}

function invert(matrix: Float64Array, inverse: Float64Array, n: number): void {
  inverse.fill(0);
  for (let i = 0; i < n; i++) inverse[i * n + i] = 1;
  for (let column = 0; column < n; column++) {
    let best = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(matrix[row * n + column] as number) > Math.abs(matrix[best * n + column] as number))
        best = row;
    }
    swapRows(matrix, n, best, column);
    swapRows(inverse, n, best, column);
    const pivot = matrix[column * n + column] as number;
    if (pivot === 0) throw new Error("invalid basis: singular");
    scaleRow(matrix, n, column, 1 / pivot);
    scaleRow(inverse, n, column, 1 / pivot);
    for (let row = 0; row < n; row++) {
      const factor = matrix[row * n + column] as number;
      if (row === column || factor === 0) continue;
      subtractRow(matrix, n, row, column, factor);
      subtractRow(inverse, n, row, column, factor);
    }
  }
}

function swapRows(m: Float64Array, n: number, a: number, b: number): void {
  for (let k = 0; k < n; k++) {
    const kept = m[a * n + k] as number;
    m[a * n + k] = m[b * n + k] as number;
    m[b * n + k] = kept;
  }
}

function scaleRow(m: Float64Array, n: number, row: number, by: number): void {
  for (let k = row * n; k < row * n + n; k++) m[k] = (m[k] as number) * by;
}

function subtractRow(m: Float64Array, n: number, from: number, row: number, times: number): void {
  const [a, b] = [from * n, row * n];
  for (let k = 0; k < n; k++) {
    const own = m[b + k] as number;
    if (own !== 0) m[a + k] = (m[a + k] as number) - times * own;
  }
}

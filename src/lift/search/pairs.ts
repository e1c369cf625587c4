/** Marks against pairs of parts: each pair is judged once, however many sets it stands in. */
export class PairMarks {
  readonly #refused: Uint8Array;
  readonly #columns: number;
  readonly #found: { row: number; column: number; id: string; text: string }[] = [];

  constructor(rows: number, columns: number) {
    this.#refused = new Uint8Array(rows * columns);
    this.#columns = columns;
  }

  refuse(row: number, column: number, id: string, text: string): void {
    this.#refused[row * this.#columns + column] = 1;
    this.#found.push({ row, column, id, text });
  }

  takes(row: number, column: number): boolean {
    return this.#refused[row * this.#columns + column] === 0;
  }

  get found(): readonly { row: number; column: number; id: string; text: string }[] {
    return this.#found;
  }
}

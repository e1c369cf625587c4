/** What the command line reads and writes, handed in so that tests need no process. */
export interface Io {
  stdin: AsyncIterable<Uint8Array>;
  /** The result, for people or machines. */
  out(text: string): void;
  /** Findings and troubles, for people. */
  err(text: string): void;
  /** Columns of the screen. */
  columns: number;
}

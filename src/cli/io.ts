/** What the command line reads and writes, handed in so that tests need no process. */
export interface Io {
  stdin: AsyncIterable<Uint8Array>;
  /** The result, for people or machines. */
  out(text: string): void;
  /** A part of a result that is too large to be held whole; comes back when the next may follow. */
  outPart(bytes: Uint8Array): Promise<void>;
  /** Findings and troubles, for people. */
  err(text: string): void;
  /** Columns of the screen. */
  columns: number;
  /** A line on the screen that the next takes the place of, an empty one for good; absent where nobody watches. */
  progress?(text: string): void;
  /** Calls once when the user asks to stop; gives back how to listen no longer. Absent where nobody can ask. */
  onInterrupt?(stop: () => void): () => void;
}

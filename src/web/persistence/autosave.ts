import { afterPaint } from "../state/after-paint.ts";
import type { Snapshot, Written } from "./job-shelf.ts";

export type SaveTrouble =
  /** The device has no room left. */
  | "full"
  /** Another tab saved a later revision. */
  | "newer"
  /** A newer release keeps the shelf in a way that this one cannot write. */
  | "outdated"
  /** The browser keeps no database for this page, or lost it. */
  | "unavailable";

export type SavingState =
  | { state: "saved" }
  | { state: "saving" }
  | { state: "failed"; trouble: SaveTrouble; detail: string };

/**
 * Writes each edit as soon as it is made; while one write is under way only the latest edit waits.
 * `saved` is said only once the newest edit is on disk.
 */
export class Autosave {
  readonly #write: (snapshot: Snapshot, baseRevision: number) => Promise<Written>;
  readonly #later: (run: () => void) => void;
  readonly #tell: (saving: SavingState, revision: number) => void;
  #revision: number;
  #waiting: Snapshot | undefined;
  #running: Promise<void> | undefined;

  constructor(
    revision: number,
    write: (snapshot: Snapshot, baseRevision: number) => Promise<Written>,
    tell: (saving: SavingState, revision: number) => void,
    // The drawing of the edit goes before its writing.
    later: (run: () => void) => void = afterPaint,
  ) {
    this.#revision = revision;
    this.#write = write;
    this.#tell = tell;
    this.#later = later;
  }

  save(snapshot: Snapshot): void {
    this.#waiting = snapshot;
    if (this.#running) return;
    this.#tell({ state: "saving" }, this.#revision);
    const turn = new Promise<void>((resolve) => this.#later(resolve));
    this.#running = turn
      .then(() => this.#drain())
      .finally(() => {
        this.#running = undefined;
      });
  }

  /** Resolves once nothing is being written. */
  async settled(): Promise<void> {
    while (this.#running) await this.#running;
  }

  async #drain(): Promise<void> {
    while (this.#waiting) {
      const snapshot = this.#waiting;
      this.#waiting = undefined;
      const saving = await this.#attempt(snapshot);
      // A later edit is tried even after a failure: room may have been made meanwhile.
      if (!this.#waiting) this.#tell(saving, this.#revision);
    }
  }

  async #attempt(snapshot: Snapshot): Promise<SavingState> {
    try {
      const written = await this.#write(snapshot, this.#revision);
      if (!written.ok) return { state: "failed", trouble: "newer", detail: "" };
      this.#revision = written.revision;
      return { state: "saved" };
    } catch (error) {
      return { state: "failed", trouble: troubleOf(error), detail: detailOf(error) };
    }
  }
}

/** The database reports a full disk by name, on the request or as the cause of an aborted transaction. */
export function troubleOf(error: unknown): SaveTrouble {
  const name = error instanceof Error ? error.name : "";
  return name === "QuotaExceededError" ? "full" : name === "VersionError" ? "outdated" : "unavailable";
}

function detailOf(error: unknown): string {
  return error instanceof Error ? `${error.name}: ${error.message}` : String(error);
}

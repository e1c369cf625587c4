import { type ProxyMarked, proxy, type Remote, wrap } from "comlink";
import { newId } from "../persistence/new-id.ts";
import { noteReplaced } from "./replaced.ts";
import type { WorkerLife } from "./worker-life.ts";

/** A worker died, and so did those begun in its place. */
export class WorkerDied extends Error {
  constructor(reason: string) {
    super(`the planner's helper stopped: ${reason}`);
  }
}

/** It lived and said nothing for longer than its work can take, and so did those begun in its place. */
export class WorkerHung extends WorkerDied {}

/** It was ended while somebody waited for an answer. */
export class WorkerEnded extends Error {
  constructor() {
    super("ended");
  }
}

/** A question that kills so many workers is not asked again. */
const MOST_DEATHS = 2;

/** One that has not begun by then died before it held its lock, so that nothing tells of it; the next gets longer. */
const BEGIN_MS = 20_000;

/** A function that a worker can call, of one that hears it here; each word gives the work its whole time anew. */
type Hearing = <A extends unknown[]>(tell: (...news: A) => void) => ((...news: A) => void) & ProxyMarked;

interface Life<S> {
  worker: Worker;
  service: Remote<S & WorkerLife>;
  ready: Promise<void>;
  /** Never fulfilled; rejected when the worker dies or is ended. */
  death: Promise<never>;
  die: (error: Error) => void;
}

/** A worker that is begun when it is first needed, and begun anew, with the same question, when it dies. */
export class KeptWorker<S> {
  readonly #start: () => Worker;
  #life: Life<S> | undefined;

  constructor(start: () => Worker) {
    this.#start = start;
  }

  /**
   * Asks the worker's service.
   *
   * @param question makes with its second argument what the worker is to tell of its work with
   * @param withinMs counts a worker that has begun and said nothing for so long as dead, and gives the next one twice as
   * long; without it one waits as long as it lives
   * @throws {WorkerDied} where the question has killed several workers
   * @throws {WorkerEnded} where the worker was ended meanwhile
   */
  async ask<T>(
    question: (service: Remote<S>, hearing: Hearing) => Promise<T>,
    withinMs?: number,
  ): Promise<T> {
    for (let deaths = 1; ; deaths++) {
      this.#life ??= this.#begin(BEGIN_MS * 2 ** (deaths - 1));
      const life = this.#life;
      const wait = withinMs === undefined ? undefined : endLate(life, withinMs * 2 ** (deaths - 1));
      const hearing: Hearing = (tell) =>
        proxy((...news) => {
          wait?.anew();
          tell(...news);
        });
      const answer = life.ready.then(() => question(life.service as Remote<S>, hearing));
      // Whichever comes second has nobody to hear it.
      answer.catch(() => {});
      try {
        return await Promise.race([answer, life.death]);
      } catch (error) {
        if (!(error instanceof WorkerDied) || deaths > MOST_DEATHS) throw error;
        noteReplaced();
      } finally {
        wait?.stop();
      }
    }
  }

  end(): void {
    this.#life?.die(new WorkerEnded());
  }

  #begin(withinMs: number): Life<S> {
    const worker = this.#start();
    const service = wrap<S & WorkerLife>(worker);
    const gone = new AbortController();
    let die: (error: Error) => void = () => {};
    const death = new Promise<never>((_, reject) => {
      die = (error) => {
        gone.abort();
        worker.terminate();
        if (this.#life?.worker === worker) this.#life = undefined;
        reject(error);
      };
    });
    death.catch(() => {});
    worker.addEventListener("error", ({ message }) =>
      die(new WorkerDied(message || "it could not be begun")),
    );
    const name = newId("shadewright-worker");
    const late = setTimeout(() => die(new WorkerDied("it did not begin")), withinMs);
    gone.signal.addEventListener("abort", () => clearTimeout(late));
    const ready = (service as unknown as WorkerLife).holdLock(name).then(() => {
      clearTimeout(late);
      watch(name, gone.signal, die);
    });
    return { worker, service, ready, death, die };
  }
}

/** Ends a worker that has begun and hangs at its work: says nothing for so long. */
function endLate<S>({ ready, die }: Life<S>, withinMs: number): { anew: () => void; stop: () => void } {
  let late: ReturnType<typeof setTimeout> | undefined;
  let isOver = false;
  const anew = () => {
    clearTimeout(late);
    if (!isOver) late = setTimeout(() => die(new WorkerHung("it did not answer")), withinMs);
  };
  ready.then(anew, () => {});
  const stop = () => {
    isOver = true;
    clearTimeout(late);
  };
  return { anew, stop };
}

/** Waits for the lock that the worker holds as long as it lives. */
function watch(name: string, signal: AbortSignal, die: (error: Error) => void): void {
  // Without locks only an error that the browser reports is heard of.
  globalThis.navigator?.locks
    ?.request(name, { signal }, () => die(new WorkerDied("it ran out of memory, or the browser ended it")))
    // Aborted when the worker is ended on purpose.
    .catch(() => {});
}

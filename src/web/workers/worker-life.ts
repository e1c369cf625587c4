/** What every worker answers beside its own work. */
export interface WorkerLife {
  /** Takes a lock for as long as the worker lives, and answers once it is held. */
  holdLock(name: string): Promise<void>;
}

/**
 * A worker's service with a sign of life. A worker that runs out of memory tells nobody; its locks are let go by the
 * browser all the same, and that is how the page learns of it.
 */
export function withLife<S extends object>(service: S): S & WorkerLife {
  return {
    ...service,
    holdLock(name) {
      const { locks } = globalThis.navigator ?? {};
      if (locks === undefined) return Promise.resolve();
      return new Promise((held) => {
        void locks.request(name, () => {
          held();
          return new Promise<never>(() => {});
        });
      });
    },
  };
}

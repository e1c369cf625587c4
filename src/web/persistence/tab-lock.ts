/** Held by the one tab that may write a job. */
export interface JobLock {
  /** Resolves once others can have it. */
  release(): Promise<void>;
}

/** How long another tab has to save and let go before its lock is taken from it, ms. */
const PATIENCE_MS = 1500;

const lockName = (jobId: string) => `shadewright-job-${jobId}`;

/** Where the browser has no locks the revision check alone keeps tabs from overwriting each other. */
const UNLOCKED: JobLock = { release: () => Promise.resolve() };

/** How long a page that was loaded anew waits for what it was before to let go, ms. */
const RELOAD_MS = 3000;

/** The lock of a job where it is free; undefined where another tab holds it. */
export async function holdJob(jobId: string, onLost: () => void): Promise<JobLock | undefined> {
  const lock = await request(jobId, { ifAvailable: true }, onLost);
  if (lock !== undefined || !isJustReloaded()) return lock;
  // A browser that is busy lets go of the locks of a page only after the next one has begun.
  return request(jobId, { signal: AbortSignal.timeout(RELOAD_MS) }, onLost).catch(() => undefined);
}

function isJustReloaded(): boolean {
  const [entry] = performance.getEntriesByType("navigation") as PerformanceNavigationTiming[];
  return entry !== undefined && entry.type !== "navigate" && performance.now() < 2 * RELOAD_MS;
}

/** The lock of a job that another tab holds: waits a moment for it to let go, then takes it. */
export async function takeJob(jobId: string, onLost: () => void): Promise<JobLock> {
  const patience = AbortSignal.timeout(PATIENCE_MS);
  try {
    const lock = await request(jobId, { signal: patience }, onLost);
    return lock ?? UNLOCKED;
  } catch {
    return (await request(jobId, { steal: true }, onLost)) ?? UNLOCKED;
  }
}

function request(jobId: string, options: LockOptions, onLost: () => void): Promise<JobLock | undefined> {
  if (!("locks" in navigator)) return Promise.resolve(UNLOCKED);
  return new Promise((resolve, reject) => {
    let granted = false;
    let letGo = () => {};
    const held = new Promise<void>((done) => {
      letGo = done;
    });
    const release = () => {
      letGo();
      return ended;
    };
    const ended: Promise<void> = navigator.locks
      .request(lockName(jobId), options, (lock) => {
        if (lock === null) return resolve(undefined);
        granted = true;
        resolve({ release });
        return held;
      })
      .catch((error: unknown) => {
        if (granted) onLost();
        else reject(error);
      });
  });
}

import type { Store } from "../store/store.ts";
import type { StoreDoor } from "../store/store-door.ts";
import { makePaper } from "./make-paper.ts";
import type { PaperQueue, PaperTask } from "./paper-queue.ts";

const QUEUE = "papers";
/** A worker that was killed gives its paper back after so long, longer than any paper takes. */
const EXPIRES_S = 15 * 60;
const LOOK_EVERY_S = 60;
/** A paper is begun again so often. */
const MOST_TRIES_AGAIN = 2;

export interface BossQueueOptions {
  /** Papers made at once in this process; 0 only puts them in for others to make. */
  workers: number;
  /** The command line, which makes a paper in a process of its own. */
  command: readonly string[];
  /** After so long a paper is given to another worker, s: the one that had it was killed. */
  expiresS?: number;
  /** How often it is looked whether one was, s. */
  lookEveryS?: number;
}

/** The queue in the workroom's own database: any number of processes put in and take out. */
export function bossQueue(
  door: StoreDoor,
  { workers, command, expiresS = EXPIRES_S, lookEveryS = LOOK_EVERY_S }: BossQueueOptions,
): PaperQueue & { start(): Promise<void> } {
  let starting: Promise<Boss> | undefined;
  const start = () => {
    starting ??= startBoss(door, { workers, command, lookEveryS }).catch((error) => {
      starting = undefined;
      throw error;
    });
    return starting;
  };
  return {
    start: async () => {
      await start();
    },
    send: (task) => {
      start()
        .then((boss) =>
          boss.send(QUEUE, task, {
            singletonKey: task.paperId,
            retryLimit: MOST_TRIES_AGAIN,
            expireInSeconds: expiresS,
          }),
        )
        // The upkeep finds it.
        .catch((error) =>
          console.error(`A paper could not be queued: ${error instanceof Error ? error.message : error}`),
        );
    },
    close: async () => {
      const boss = await starting?.catch(() => undefined);
      await boss?.stop({ graceful: true, wait: true, timeout: 5000 });
    },
  };
}

type Boss = InstanceType<typeof import("pg-boss")>;

async function startBoss(
  door: StoreDoor,
  { workers, command, lookEveryS }: Required<Omit<BossQueueOptions, "expiresS">>,
): Promise<Boss> {
  const { default: PgBoss } = await import("pg-boss");
  const store: Store = await door.open();
  const boss = new PgBoss({
    db: { executeSql: (text: string, values: unknown[]) => store.runSql(text, values ?? []) },
    schedule: false,
    maintenanceIntervalSeconds: lookEveryS,
  });
  boss.on("error", (error) => console.error(`The queue has trouble: ${error.message}`));
  await boss.start();
  await boss.createQueue(QUEUE);
  for (let i = 0; i < workers; i++) {
    await boss.work<PaperTask>(QUEUE, { pollingIntervalSeconds: 1 }, async ([job]) => {
      if (job) await makePaper(store, job.data, command);
    });
  }
  return boss;
}

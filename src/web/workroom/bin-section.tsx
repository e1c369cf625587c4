import { useEffect, useState } from "react";
import { counted } from "../../words/index.ts";
import { JOB_BIN_DAYS, may, type PersonRole, type ShelvedJob } from "../../workroom/protocol/index.ts";
import { askServer } from "./ask-server.ts";
import { readRoomShelf } from "./at-work.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

const DAY_MS = 86_400_000;

/** Jobs that were taken off the workroom's shelf. */
export function BinSection({ role }: { role: PersonRole }) {
  const [jobs, setJobs] = useState<ShelvedJob[]>([]);
  const { trouble, run } = useDeed();
  const read = async () => setJobs((await askServer<{ jobs: ShelvedJob[] }>("bin")).jobs);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read once as the page comes
  useEffect(() => void run(read), []);
  if (jobs.length === 0) return <Trouble words={trouble} />;
  return (
    <section aria-labelledby="room-bin-title" className="room-section">
      <h2 id="room-bin-title">In the bin</h2>
      <Trouble words={trouble} />
      <ul className="room-list">
        {jobs.map((job) => (
          <li key={job.id}>
            <span>
              {job.name}
              <span className="quiet small"> · {counted(daysLeftOf(job), "day")} left</span>
            </span>
            {may(role, "bin-jobs") ? (
              <button
                type="button"
                className="button-plain small"
                onClick={() =>
                  void run(async () => {
                    await askServer("putBackJob", { params: { job: job.id } });
                    await Promise.all([read(), readRoomShelf()]);
                  })
                }
              >
                Put it back<span className="hidden-words">: {job.name}</span>
              </button>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

function daysLeftOf({ binnedAt }: ShelvedJob): number {
  const passedMs = binnedAt === undefined ? 0 : Date.now() - Date.parse(binnedAt);
  return Math.max(1, Math.ceil(JOB_BIN_DAYS - passedMs / DAY_MS));
}

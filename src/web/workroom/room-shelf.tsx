import { type ReactNode, useEffect, useState } from "react";
import { Link } from "wouter";
import { counted } from "../../words/index.ts";
import { may, type ShelvedJob } from "../../workroom/protocol/index.ts";
import type { Card } from "../persistence/database.ts";
import { forgetJob, readStoredJob } from "../persistence/job-shelf.ts";
import { newId, newUuid } from "../persistence/new-id.ts";
import { loadShelf } from "../shelf/shelf-state.ts";
import { askServer } from "./ask-server.ts";
import { catchUp, readRoomShelf } from "./at-work.ts";
import { type MeInside, personName, useRoom } from "./room-state.ts";
import { takeToDevice } from "./take-to-device.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";
import "./workroom.css";

const day = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "long" });

/** The jobs that the workroom shares, and the way of a job from this device to it. */
export function RoomShelf({ me, cards }: { me: MeInside; cards: readonly Card[] }) {
  const { jobs, isOnline } = useRoom();
  useEffect(() => void catchUp(), []);
  const own = cards.filter((card) => !card.inRoom);
  const known = jobs ?? cards.filter((card) => card.inRoom).map(shelvedFrom);
  const mayMake = may(me.person.role, "make-jobs");
  return (
    <section aria-labelledby="room-shelf-title" className="room-section">
      <div className="shelf-heading">
        <h2 id="room-shelf-title">{me.workroom.name}</h2>
        <Link href="/workroom" className="button button-small">
          Workroom
        </Link>
      </div>
      {isOnline ? null : <p className="quiet">No connection. Edits wait on this device.</p>}
      {known.length === 0 ? <p className="quiet">No job is shared yet.</p> : null}
      <ul className="room-list">
        {known.map((job) => (
          <SharedJob key={job.id} job={job} mayBin={may(me.person.role, "bin-jobs")} mayCopy={mayMake} />
        ))}
      </ul>
      {mayMake && own.length > 0 && isOnline ? <ShareOne own={own} room={me.workroom.name} /> : null}
    </section>
  );
}

/** A card of this device as far as the workroom's shelf tells, while its server is away. */
function shelvedFrom({ id, name, client, demo, windows, savedAt }: Card): ShelvedJob {
  const at = new Date(savedAt).toISOString();
  return {
    id,
    name,
    ...(client === undefined ? {} : { client }),
    isDemo: demo,
    windows,
    version: 0,
    openConflicts: 0,
    madeBy: "",
    madeAt: at,
    changedBy: "",
    changedAt: at,
  };
}

function SharedJob({ job, mayBin, mayCopy }: { job: ShelvedJob; mayBin: boolean; mayCopy: boolean }) {
  const { people, here } = useRoom();
  const [isAsked, setAsked] = useState(false);
  const { trouble, run } = useDeed();
  const names = here.filter((one) => one.jobId === job.id).map(({ person }) => personName(people, person));
  const about: ReactNode[] = [
    job.isDemo ? "Demonstration" : "",
    job.client ?? "",
    counted(job.windows, "window"),
    job.changedBy === "" ? "" : personName(people, job.changedBy),
    day.format(new Date(job.changedAt)),
    job.openConflicts > 0 ? `${counted(job.openConflicts, "field")} changed by two` : "",
    names.length > 0 ? `open now: ${[...new Set(names)].join(", ")}` : "",
  ].filter(Boolean);
  return (
    <li>
      <span>
        <Link href={`/job/${job.id}`} className="room-list-name">
          {job.name}
        </Link>
        <span className="quiet small"> · {about.join(" · ")}</span>
        <Trouble words={trouble} />
      </span>
      <span className="room-list-tools">
        {mayCopy ? (
          <button
            type="button"
            className="button-plain small"
            onClick={() =>
              void run(async () => {
                const body = {
                  request: newUuid(),
                  id: newId("job"),
                  name: `${job.name} (copy)`.slice(0, 120),
                };
                await askServer("copyJob", { params: { job: job.id }, body });
                await readRoomShelf();
              })
            }
          >
            Copy<span className="hidden-words"> {job.name}</span>
          </button>
        ) : null}
        {mayBin && !isAsked ? (
          <button type="button" className="button-plain small" onClick={() => setAsked(true)}>
            Delete<span className="hidden-words">: {job.name}</span>
          </button>
        ) : null}
        {isAsked ? (
          <>
            <button
              type="button"
              className="button button-small"
              onClick={() =>
                void run(async () => {
                  await askServer("binJob", { params: { job: job.id } });
                  await forgetJob(job.id);
                  await Promise.all([readRoomShelf(), loadShelf()]);
                })
              }
            >
              Delete it for everyone
            </button>
            <button type="button" className="button button-small" onClick={() => setAsked(false)}>
              Keep it
            </button>
          </>
        ) : null}
      </span>
    </li>
  );
}

/** Nothing of this device goes to the workroom unasked: one job is chosen, and then said yes to. */
function ShareOne({ own, room }: { own: readonly Card[]; room: string }) {
  const [id, setId] = useState("");
  const { isBusy, trouble, run } = useDeed();
  const card = own.find((one) => one.id === id);
  return (
    <div className="room-form">
      <label className="field">
        <span className="field-label">Share a job of this device</span>
        <span className="field-line">
          <select className="field-input" value={id} onChange={(event) => setId(event.target.value)}>
            <option value="">choose</option>
            {own.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </span>
      </label>
      {card === undefined ? null : (
        <button
          type="button"
          className="button button-small button-main"
          disabled={isBusy}
          onClick={() =>
            void run(async () => {
              await shareJob(card.id);
              setId("");
            })
          }
        >
          Everyone in {room} may see it: share
        </button>
      )}
      <Trouble words={trouble} />
    </div>
  );
}

/** Moves a job from this device to the workroom; what was there before under its id stays what it is. */
async function shareJob(id: string): Promise<void> {
  const stored = await readStoredJob(id);
  if (!stored) return;
  const { jobs = [] } = useRoom.getState();
  const isTaken = stored.job.demo === true || jobs.some((job) => job.id === id);
  const job = isTaken ? { ...stored.job, id: newId("job") } : stored.job;
  await askServer("makeJob", { body: { request: newUuid(), job } });
  // The demonstration stays here for the next time.
  if (stored.job.demo !== true) await forgetJob(id);
  await takeToDevice(job.id);
  await Promise.all([readRoomShelf(), loadShelf()]);
}

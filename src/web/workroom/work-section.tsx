import { Link } from "wouter";
import type { ShadeWork } from "../../workroom/protocol/index.ts";
import { LabelField } from "./label-page.tsx";
import { personName, useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { useWindowNames } from "./use-window-names.ts";
import { useWork } from "./use-work.ts";
import { isInHand, stateWords } from "./work-words.ts";

const day = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "short", timeZone: "UTC" });

/** What the workroom has in hand, what is due first before the rest. */
export function WorkSection() {
  const { shades, trouble } = useWork();
  const people = useRoom((room) => room.people);
  const jobs = useRoom((room) => room.jobs) ?? [];
  const open = shades.filter(({ state }) => isInHand(state)).sort(byDue);
  const names = useWindowNames(open);
  return (
    <section aria-labelledby="work-title" className="room-section">
      <h2 id="work-title">Work in hand</h2>
      <Trouble words={trouble} />
      <LabelField />
      {open.length === 0 ? (
        <p className="quiet">Nothing yet. Open a job and say under Workroom how far its shades are.</p>
      ) : (
        <div className="table-room">
          <table className="table">
            <thead>
              <tr>
                <th scope="col">Due</th>
                <th scope="col">Shade</th>
                <th scope="col">Job</th>
                <th scope="col">So far</th>
                <th scope="col">Who has it</th>
              </tr>
            </thead>
            <tbody>
              {open.map(({ jobId, windowId, due, state, holder }) => (
                <tr key={`${jobId} ${windowId}`}>
                  <td>{due === undefined ? "" : day.format(new Date(due))}</td>
                  <td>
                    <Link href={`/job/${jobId}/${windowId}/bench`}>{names.get(windowId) ?? "a shade"}</Link>
                  </td>
                  <td>
                    <Link href={`/workroom/job/${jobId}`}>{jobs.find(({ id }) => id === jobId)?.name}</Link>
                  </td>
                  <td>{stateWords(state)}</td>
                  <td>{holder === undefined ? "" : personName(people, holder)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function byDue(a: ShadeWork, b: ShadeWork): number {
  return (a.due ?? "9").localeCompare(b.due ?? "9") || a.jobId.localeCompare(b.jobId);
}

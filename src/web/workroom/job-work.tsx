import { counted } from "../../words/index.ts";
import type { Person, WorkState } from "../../workroom/protocol/index.ts";
import { useJob } from "../state/fields.ts";
import { PlainChoice } from "./plain-field.tsx";
import { useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { useWork } from "./use-work.ts";
import { STATE_OPTIONS } from "./work-words.ts";

/** How far each shade of the job is, when it is due, and who has it. */
export function JobWork({ mayChange }: { mayChange: boolean }) {
  const job = useJob();
  const people = useRoom((room) => room.people);
  const { shades, trouble, change } = useWork();
  const holders = {
    "": "nobody",
    ...Object.fromEntries(people.filter(isHere).map(({ id, name }) => [id, name])),
  };
  return (
    <section aria-labelledby="job-work-title" className="room-section">
      <h2 id="job-work-title">Work in hand</h2>
      <Trouble words={trouble} />
      <ul className="room-list">
        {job.rooms.flatMap((room) =>
          room.windows.map(({ id: windowId, name, ticks = [] }) => {
            const work = shades.find((one) => one.jobId === job.id && one.windowId === windowId);
            const at = { jobId: job.id, windowId };
            return (
              <li key={windowId} className="work-row">
                <span className="room-list-name">
                  {name}
                  <span className="quiet small"> · {counted(ticks.length, "step")} done</span>
                </span>
                <PlainChoice<WorkState | "">
                  label="So far"
                  of={name}
                  options={STATE_OPTIONS}
                  value={work?.state ?? ""}
                  disabled={!mayChange}
                  onChange={(state) => change({ ...at, state: state === "" ? null : state })}
                />
                <label className="field">
                  <span className="field-label">
                    Due<span className="hidden-words">, {name}</span>
                  </span>
                  <span className="field-line">
                    <input
                      type="date"
                      className="field-input"
                      value={work?.due ?? ""}
                      disabled={!mayChange}
                      onChange={({ target }) =>
                        change({ ...at, due: target.value === "" ? null : target.value })
                      }
                    />
                  </span>
                </label>
                <PlainChoice<string>
                  label="Who has it"
                  of={name}
                  options={holders}
                  value={work?.holder ?? ""}
                  disabled={!mayChange}
                  onChange={(holder) => change({ ...at, holder: holder === "" ? null : holder })}
                />
              </li>
            );
          }),
        )}
      </ul>
    </section>
  );
}

function isHere(person: Person): boolean {
  return person.isHere;
}

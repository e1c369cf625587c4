import { rebase, sameJson, valueAtPath } from "../../workroom/merge/index.ts";
import type { Conflict, Json } from "../../workroom/protocol/index.ts";
import { useCanEdit, useJob } from "../state/fields.ts";
import { layOutShared, usePlanner } from "../state/store.ts";
import { settleOpen } from "./at-work.ts";
import { fieldWords, valueWords } from "./field-words.ts";
import { personName, useRoom } from "./room-state.ts";

/** Fields that two people changed at once, both values side by side: one is pressed. */
export function Conflicts() {
  const conflicts = usePlanner((planner) => planner.room?.conflicts);
  if (conflicts === undefined || conflicts.length === 0) return null;
  return (
    <section className="conflicts" aria-label="Changed by two at once">
      <h2>Changed by two at once</h2>
      <ul>
        {conflicts.map((conflict) => (
          <li key={conflict.id}>
            <OneConflict conflict={conflict} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function OneConflict({ conflict }: { conflict: Conflict }) {
  const job = useJob();
  const mine = useCanEdit();
  const people = useRoom((room) => room.people);
  const me = useRoom((room) => room.me);
  const who = (person: string | undefined) => {
    if (person === undefined) return "Before";
    return me?.state === "signed-in" && me.person.id === person ? "You" : personName(people, person);
  };
  const now = valueAtPath(job, conflict.path);
  const side = (whose: string, value: Json | undefined) => {
    const stands = sameJson(now, value);
    return (
      <button
        type="button"
        className="conflict-side"
        disabled={!mine}
        onClick={() => choose(conflict, value)}
        data-stands={stands || undefined}
      >
        <span className="quiet small">
          {whose}
          {stands ? " · stands now" : ""}
        </span>
        <span>{valueWords(job, conflict.path, value)}</span>
      </button>
    );
  };
  return (
    <>
      <h3>{fieldWords(job, conflict.path)}</h3>
      <div className="conflict-sides">
        {side(who(conflict.person), conflict.mine)}
        {side(who(conflict.theirPerson), conflict.theirs)}
      </div>
    </>
  );
}

/** Puts one of the two into the job, where it does not stand already, and settles the conflict. */
function choose(conflict: Conflict, value: Json | undefined): void {
  const { job, room, history } = usePlanner.getState();
  if (!job || !room) return;
  const from = valueAtPath(job, conflict.path);
  if (!sameJson(from, value)) {
    const change = {
      path: conflict.path,
      ...(from === undefined ? {} : { from }),
      ...(value === undefined ? {} : { to: value }),
    };
    const rebased = rebase(job, { changes: [change] }, []);
    if (!rebased.ok) {
      const why = rebased.issues.map(({ field, wanted }) => `${field} wants ${wanted}`).join("; ");
      useRoom.setState({ turnedDown: why });
      return;
    }
    layOutShared(room, rebased.job, history);
  }
  void settleOpen(conflict.id);
}

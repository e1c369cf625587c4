import { useDeferredValue, useMemo } from "react";
import { LIFT_TRAITS } from "../../job/index.ts";
import { chooseHardware, type HardwareChoice } from "../../plan/index.ts";
import { forceText, lengthText } from "../../units/index.ts";
import { More } from "../frame/more.tsx";
import { MAKING_FIELDS } from "../settings/making-fields.ts";
import { useCanEdit, useJob, useUnits } from "../state/fields.ts";
import { edit, usePlanner } from "../state/store.ts";
import { useShade } from "./shade-context.tsx";

/** Every way to raise this shade with the parts at hand: what goes, ranked, and what does not, with the figures against it. */
export function HardwareChoiceList() {
  const isOpen = usePlanner(({ view }) => view.open.lift === true && view.open["raised-by"] === true);
  return (
    <More id="raised-by" title="What else could raise it?">
      {isOpen ? <Found /> : null}
    </More>
  );
}

function Found() {
  // A search takes longer than a keystroke may: the drawing of the edit goes before it.
  const job = useDeferredValue(useJob());
  const { place } = useShade();
  const { room, window } = place;
  const found = useMemo(() => chooseHardware(job, room, window), [job, room, window]);
  if (found === undefined) return null;
  const { search, choices } = found;
  return (
    <>
      <p className="quiet">
        {search.considered} sets of parts, {search.feasible} of which go together on this shade. The best few
        of each kind, those with the fewest stops first, then the easiest pull.
      </p>
      <div className="table-room">
        <table className="table">
          <caption>Ways to raise it</caption>
          <thead>
            <tr>
              <th scope="col">Pull</th>
              <th scope="col">Raised height</th>
              <th scope="col">Stops, fixes</th>
              <th scope="col">Cord rules failed, not proven</th>
              <th scope="col">
                <span className="hidden-words">Use</span>
              </th>
            </tr>
          </thead>
          {choices.map((choice) => (
            <ChoiceRows key={idOf(choice)} choice={choice} />
          ))}
        </table>
      </div>
      {search.refusals.length > 0 ? (
        <>
          <p className="quiet">What does not go, and why:</p>
          <ul>
            {search.refusals.map(({ text, id }) => (
              <li key={`${id} ${text}`}>{text}</li>
            ))}
          </ul>
        </>
      ) : null}
    </>
  );
}

function idOf({ set }: HardwareChoice): string {
  return [set.kind, set.lock?.id, set.eye?.id, set.tube?.id, set.drive?.id, set.cord.id].join(" ");
}

/** The parts over their figures: their names beside them would leave no room for either on a phone. */
function ChoiceRows({ choice }: { choice: HardwareChoice }) {
  const units = useUnits();
  const mine = useCanEdit();
  const { set, pullN, raisedHeightMm, stops, fixes, safety, chosen, patch } = choice;
  const parts = [set.lock?.name, set.eye?.name, set.tube?.name, set.drive?.name, set.cord.name].filter(
    (name) => name !== undefined,
  );
  return (
    <tbody className="table-group">
      <tr>
        <th scope="rowgroup" colSpan={5}>
          {parts.join(", ")}
        </th>
      </tr>
      <tr>
        <td>{LIFT_TRAITS[set.kind].poweredBy === "motor" ? "none" : forceText(pullN, units)}</td>
        <td>{lengthText(raisedHeightMm, units)}</td>
        <td>
          {stops}, {fixes}
        </td>
        <td>
          {safety.failed}, {safety["not-proven"]}
        </td>
        <td>
          {chosen ? (
            "as it is"
          ) : (
            <button
              type="button"
              className="button button-small"
              disabled={!mine}
              onClick={() =>
                edit({ label: `Raise it by ${MAKING_FIELDS.lift.kind.options[set.kind]}`, patch })
              }
            >
              Use<span className="hidden-words"> {parts.join(", ")}</span>
            </button>
          )}
        </td>
      </tr>
    </tbody>
  );
}

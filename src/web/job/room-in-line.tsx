import {
  IN_LINE_DEFAULTS,
  type LineWishes,
  lineWishes,
  lineWishesSchema,
  type Room,
} from "../../job/index.ts";
import type { AlignedWindow, RoomAlignment } from "../../shade-plan/index.ts";
import { Field } from "../inputs/field.tsx";
import { choice, type FlagSpec, length } from "../inputs/spec.ts";
import { withLimits } from "../settings/limits.ts";
import { editField, useCanEdit } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import "./room-in-line.css";

const FOLDS = choice("Folds share", {
  levels: "their heights above the floor",
  spacing: "their spacing alone",
  own: "nothing",
});
const STACK: FlagSpec = {
  kind: "flag",
  label: "Raised hems",
  yes: "at one height where that costs little",
  no: "wherever they come",
};
const MOTIF: FlagSpec = {
  kind: "flag",
  label: "Patterns",
  yes: "begin at one height above the floor",
  no: "begin on each shade for itself",
};
const LENGTHS = withLimits(lineWishesSchema, {
  spacingMm: length("Spacing for the whole room"),
  mostLowerMm: length("A shade may hang lower by", "at most, for the sake of the line"),
});

interface RoomInLineProps {
  room: Room;
  index: number;
  /** Undefined while it is on its way. */
  alignment: RoomAlignment | undefined;
}

/** Whether the windows of a room have their folds in line, what that came to, and what they share. */
export function RoomInLineFields({ room, index, alignment }: RoomInLineProps) {
  const mine = useCanEdit();
  const pointer = `/rooms/${index}/inLine`;
  const isOn = room.inLine !== undefined;
  // One window has nothing to line up with; what is on can always be taken off.
  if (room.windows.length < 2 && !isOn) return null;
  const turn = () =>
    edit({
      label: isOn ? `Let the folds of ${room.name} be` : `Line up the folds of ${room.name}`,
      patch: isOn ? [{ op: "remove", path: pointer }] : [{ op: "add", path: pointer, value: {} }],
    });
  return (
    <div className="room-line">
      <label className="room-line-switch">
        <input type="checkbox" checked={isOn} disabled={!mine} onChange={turn} />
        <span>
          Line up the folds<span className="hidden-words"> of {room.name}</span>
        </span>
      </label>
      {room.inLine === undefined ? null : (
        <>
          <Outcome room={room} wishes={lineWishes(room.inLine)} pointer={pointer} alignment={alignment} />
          <details className="more-settings">
            <summary>What they share</summary>
            <div className="fields">
              <Field pointer={`${pointer}/folds`} spec={FOLDS} fallback={IN_LINE_DEFAULTS.folds.value} />
              <Field pointer={`${pointer}/stack`} spec={STACK} fallback={IN_LINE_DEFAULTS.stack.value} />
              <Field pointer={`${pointer}/motif`} spec={MOTIF} fallback={IN_LINE_DEFAULTS.motif.value} />
              <Field pointer={`${pointer}/spacingMm`} spec={LENGTHS.spacingMm} unset="worked out" />
              <Field
                pointer={`${pointer}/mostLowerMm`}
                spec={LENGTHS.mostLowerMm}
                fallback={IN_LINE_DEFAULTS.mostLowerMm.value}
              />
            </div>
          </details>
        </>
      )}
    </div>
  );
}

interface OutcomeProps extends Omit<RoomInLineProps, "index"> {
  wishes: LineWishes;
  pointer: string;
}

function Outcome({ room, wishes, pointer, alignment }: OutcomeProps) {
  if (alignment === undefined) return <p className="quiet">Being aligned.</p>;
  return (
    <>
      <p className="room-line-words">{alignment.words}</p>
      <ul className="room-line-windows">
        {room.windows.map(({ id }) => {
          const outcome = alignment.windows.find(({ shadeId }) => shadeId === id);
          return outcome === undefined ? null : (
            <WindowInLine key={id} outcome={outcome} wishes={wishes} pointer={pointer} />
          );
        })}
      </ul>
    </>
  );
}

/** What one window kept and gave, and the way out of the line or back into it. */
function WindowInLine({
  outcome,
  wishes,
  pointer,
}: {
  outcome: AlignedWindow;
  wishes: LineWishes;
  pointer: string;
}) {
  const mine = useCanEdit();
  const { shadeId, windowName, words } = outcome;
  const { without = [] } = wishes;
  const isOut = without.includes(shadeId);
  const next = isOut ? without.filter((id) => id !== shadeId) : [...without, shadeId];
  const label = isOut ? `Take ${windowName} into the line` : `Leave ${windowName} out of the line`;
  return (
    <li data-follows={outcome.follows}>
      <span>
        <b>{windowName}</b> {words}
      </span>
      <button
        type="button"
        className="button-plain small"
        disabled={!mine}
        onClick={() => editField(`${pointer}/without`, next.length === 0 ? undefined : next, label)}
      >
        {isOut ? "Take in" : "Leave out"}
        <span className="hidden-words">: {windowName}</span>
      </button>
    </li>
  );
}

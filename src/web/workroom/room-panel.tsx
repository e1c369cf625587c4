import { Link } from "wouter";
import { counted } from "../../words/index.ts";
import { usePlanner } from "../state/store.ts";
import { Conflicts } from "./conflicts.tsx";
import { personName, useRoom } from "./room-state.ts";
import "./workroom.css";

/** What the workroom has to say about the job on the table; nothing for a job of this device alone. */
export function RoomPanel() {
  const jobId = usePlanner((planner) => planner.job?.id);
  const waiting = usePlanner((planner) => planner.room?.outbox.length);
  const { me, isOnline, here, people, turnedDown, notKept } = useRoom();
  if (waiting === undefined || jobId === undefined) return null;
  const session = me?.state === "signed-in" ? me.session : undefined;
  const others = here.filter((one) => one.jobId === jobId && one.session !== session);
  const names = [...new Set(others.map(({ person }) => personName(people, person)))];
  return (
    <div className="room-panel screen-only">
      <p className="room-line">
        <Link href={`/workroom/job/${jobId}`}>Workroom</Link>
        <span role="status">
          {me?.state !== "signed-in"
            ? " · signed out; edits stay on this device until you sign in"
            : !isOnline
              ? ` · no connection${waiting === 0 ? "" : `; ${counted(waiting, "edit")} to send`}`
              : ""}
          {names.length === 0 ? "" : ` · here too: ${names.join(", ")}`}
        </span>
      </p>
      {notKept === undefined || waiting === 0 ? null : (
        <p className="notice notice-stop" role="alert">
          <strong>Not sent yet.</strong> {notKept} {counted(waiting, "edit")}{" "}
          {waiting === 1 ? "waits" : "wait"} on this device and will be sent again by itself.
        </p>
      )}
      {turnedDown === undefined ? null : (
        <div className="notice notice-stop" role="alert">
          <p>
            <strong>Not taken.</strong> The workroom turned an edit down: {turnedDown}.
          </p>
          <button
            type="button"
            className="button button-small"
            onClick={() => useRoom.setState({ turnedDown: undefined })}
          >
            All right
          </button>
        </div>
      )}
      <Conflicts />
    </div>
  );
}

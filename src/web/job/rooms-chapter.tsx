import { memo, useMemo } from "react";
import { type Finding, isGraver, type Severity } from "../../figures/index.ts";
import type { Room, Window } from "../../job/index.ts";
import { counted } from "../../words/index.ts";
import { Chapter } from "../frame/chapter.tsx";
import { Field } from "../inputs/field.tsx";
import { text } from "../inputs/spec.ts";
import { newId } from "../persistence/new-id.ts";
import { shownByShade } from "../sections/what-is-open.ts";
import { useCanEdit, useJob } from "../state/fields.ts";
import type { JobSummary } from "../state/job-summary.ts";
import { edit } from "../state/store.ts";
import { AddWindow } from "./add-window.tsx";
import { RoomInLineFields } from "./room-in-line.tsx";
import { SeveralWindows } from "./several-windows.tsx";
import { WindowRow } from "./window-row.tsx";

const ROOM_NAME = { ...text("Room", 120), required: true };
const ROOM_NOTE = { ...text("Note", 4000), lines: true };

/** What is gravest of what each shade's page shows, and how much of it. */
function heaviestByShade(findings: readonly Finding[]): ReadonlyMap<string, Heaviest> {
  const found = new Map<string, Heaviest>();
  for (const [shadeId, shown] of shownByShade(findings)) {
    for (const { severity } of shown) {
      const known = found.get(shadeId);
      if (known?.severity === severity) known.count++;
      else if (known === undefined || isGraver(severity, known.severity))
        found.set(shadeId, { severity, count: 1 });
    }
  }
  return found;
}

interface Heaviest {
  severity: Severity;
  count: number;
}

/** Rooms and their windows: names, order, new ones. */
export const RoomsChapter = memo(function RoomsChapter({ summary }: { summary: JobSummary | undefined }) {
  const job = useJob();
  const mine = useCanEdit();
  const findings = summary?.findings;
  const found = useMemo(() => heaviestByShade(findings ?? []), [findings]);
  const windows = job.rooms.reduce((sum, room) => sum + room.windows.length, 0);
  const addRoom = () => {
    const room: Room = { id: newId("room"), name: `Room ${job.rooms.length + 1}`, windows: [] };
    edit({ label: "Add a room", patch: [{ op: "add", path: "/rooms/-", value: room }] });
  };
  return (
    <Chapter id="rooms" sentence={`${counted(windows, "window")} in ${counted(job.rooms.length, "room")}.`}>
      {job.rooms.map((room, r) => (
        <div key={room.id} className="room-block">
          <div className="fields">
            <Field pointer={`/rooms/${r}/name`} spec={ROOM_NAME} needed="a room needs a name" />
            <Field pointer={`/rooms/${r}/note`} spec={ROOM_NOTE} />
          </div>
          <ul className="window-list">
            {room.windows.map((window: Window, w) => (
              <WindowRow
                key={window.id}
                room={r}
                at={w}
                window={window}
                heaviest={found.get(window.id)?.severity}
                heaviestCount={found.get(window.id)?.count}
              />
            ))}
          </ul>
          <AddWindow room={r} />
          <SeveralWindows room={r} />
          <RoomInLineFields
            room={room}
            index={r}
            alignment={summary?.rooms.find(({ roomId }) => roomId === room.id)?.alignment}
          />
          {job.rooms.length > 1 ? (
            <button
              type="button"
              className="button-plain small"
              disabled={!mine}
              onClick={() =>
                edit({ label: `Remove ${room.name}`, patch: [{ op: "remove", path: `/rooms/${r}` }] })
              }
            >
              Remove {room.name}
              {room.windows.length > 0 ? ` with ${counted(room.windows.length, "window")}` : ""}
            </button>
          ) : null}
        </div>
      ))}
      <p>
        <button type="button" className="button button-small" disabled={!mine} onClick={addRoom}>
          Add a room
        </button>
      </p>
    </Chapter>
  );
});

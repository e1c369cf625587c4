import { memo } from "react";
import { Link } from "wouter";
import { type Severity, severityCount } from "../../figures/index.ts";
import type { Window } from "../../job/index.ts";
import { lengthText } from "../../units/index.ts";
import { SeverityIcon } from "../frame/icons.tsx";
import { newId } from "../persistence/new-id.ts";
import { useEnglish } from "../state/english.ts";
import { useCanEdit, useUnits } from "../state/fields.ts";
import { edit, usePlanner } from "../state/store.ts";

interface WindowRowProps {
  room: number;
  at: number;
  window: Window;
  /** The heaviest finding of this window, and how many are as heavy: plain values, so that a row none of them changed stays. */
  heaviest: Severity | undefined;
  heaviestCount: number | undefined;
}

/** One window: its opening, its heaviest finding, and its place in the row. */
export const WindowRow = memo(function WindowRow(props: WindowRowProps) {
  const { room: r, at: w, window, heaviest, heaviestCount } = props;
  useEnglish();
  const jobId = usePlanner(({ job }) => job?.id);
  const units = useUnits();
  const mine = useCanEdit();
  const path = `/rooms/${r}/windows/${w}`;
  const { widthsMm, heightsMm } = window.opening;
  const copy = {
    ...window,
    id: newId("window"),
    name: `${window.name} (copy)`.slice(0, 120),
    ticks: undefined,
  };
  return (
    <li className="window-row">
      <Link href={`/job/${jobId}/${window.id}`}>{window.name}</Link>
      <span className="quiet">
        {lengthText(Math.min(...widthsMm), units)} × {lengthText(Math.min(...heightsMm), units)}
      </span>
      {heaviest === undefined ? null : (
        <span className="small window-severity" data-severity={heaviest}>
          <SeverityIcon severity={heaviest} /> {severityCount(heaviest, heaviestCount ?? 0)}
        </span>
      )}
      <span className="window-row-tools">
        {w > 0 ? (
          <button
            type="button"
            className="button-plain small"
            disabled={!mine}
            onClick={() =>
              edit({
                label: `Move ${window.name}`,
                patch: [
                  { op: "remove", path },
                  { op: "add", path: `/rooms/${r}/windows/${w - 1}`, value: window },
                ],
              })
            }
          >
            Move left<span className="hidden-words">: {window.name}</span>
          </button>
        ) : null}
        <button
          type="button"
          className="button-plain small"
          disabled={!mine}
          onClick={() =>
            edit({
              label: `Copy ${window.name}`,
              patch: [{ op: "add", path: `/rooms/${r}/windows/${w + 1}`, value: withoutUndefined(copy) }],
            })
          }
        >
          Copy<span className="hidden-words"> {window.name}</span>
        </button>
        <button
          type="button"
          className="button-plain small"
          disabled={!mine}
          onClick={() => edit({ label: `Remove ${window.name}`, patch: [{ op: "remove", path }] })}
        >
          Remove<span className="hidden-words"> {window.name}</span>
        </button>
      </span>
    </li>
  );
});

/** A copy as JSON has it: a shade of its own, without what is not there. */
function withoutUndefined<V>(value: V): V {
  return JSON.parse(JSON.stringify(value)) as V;
}

import { type ClipboardEvent, useState } from "react";
import { newWindow } from "../../job/index.ts";
import { spreadsheetCells } from "../../tables/index.ts";
import { counted } from "../../words/index.ts";
import { More } from "../frame/more.tsx";
import { lengthUnit } from "../inputs/read-write.ts";
import { span } from "../inputs/spec.ts";
import { newId } from "../persistence/new-id.ts";
import { useCanEdit, useJob, useUnits } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import {
  EMPTY_ROW,
  isEmptyRow,
  MOST_NEW_WINDOWS,
  readWindowRows,
  WINDOW_COLUMNS,
  type WindowCells,
  withCells,
} from "./window-rows.ts";

const FIRST_ROWS: readonly WindowCells[] = [EMPTY_ROW, EMPTY_ROW, EMPTY_ROW];

/** Windows of a room in a table, typed or pasted from a spreadsheet, and added as one change. */
export function SeveralWindows({ room }: { room: number }) {
  return (
    <More id={`several-windows-${room}`} title="Several windows at once">
      <WindowTable room={room} />
    </More>
  );
}

function WindowTable({ room }: { room: number }) {
  const job = useJob();
  const units = useUnits();
  const mine = useCanEdit();
  const [rows, setRows] = useState(FIRST_ROWS);
  const [tried, setTried] = useState(false);
  const [said, setSaid] = useState("");
  const { sizes, troubles } = readWindowRows(rows, units);
  const unit = lengthUnit(span(""), units);
  const lay = (cells: readonly (readonly string[])[], row: number, column: number) => {
    const next = withCells(rows, cells, { row, column });
    const last = next.at(-1);
    // There is always one more row to type in.
    const isFull = last !== undefined && !isEmptyRow(last) && next.length < MOST_NEW_WINDOWS;
    setRows(isFull ? [...next, EMPTY_ROW] : next);
    setSaid("");
  };
  const paste = (event: ClipboardEvent, row: number, column: number) => {
    const text = event.clipboardData.getData("text/plain");
    if (!/[\t\n;]/.test(text.trimEnd())) return;
    event.preventDefault();
    lay(spreadsheetCells(text), row, column);
  };
  const add = () => {
    setTried(true);
    if (troubles.length > 0) return;
    const before = job.rooms[room]?.windows.length ?? 0;
    const patch = sizes.map((size, at) => ({
      op: "add" as const,
      path: `/rooms/${room}/windows/-`,
      value: newWindow({ ...size, id: newId("window"), name: size.name || `Window ${before + at + 1}` }),
    }));
    edit({ label: `Add ${counted(patch.length, "window")}`, patch });
    setRows(FIRST_ROWS);
    setTried(false);
    setSaid(`${counted(patch.length, "window")} added.`);
  };
  return (
    <div className="several-windows">
      <p className="quiet small">Type, or paste rows from a spreadsheet: name, width, length.</p>
      <table className="table">
        <caption className="hidden-words">New windows</caption>
        <thead>
          <tr>
            {WINDOW_COLUMNS.map((column, at) => (
              <th key={column} scope="col">
                {column}
                {at > 0 ? <span className="quiet small"> {unit}</span> : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, row) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have their order and nothing else
            <tr key={row}>
              {WINDOW_COLUMNS.map((column, at) => (
                <td key={column}>
                  <input
                    className="field-input"
                    aria-label={`${column}, row ${row + 1}`}
                    aria-invalid={
                      tried && troubles.some((one) => one.row === row && one.column === at) ? true : undefined
                    }
                    autoComplete="off"
                    readOnly={!mine}
                    value={cells[at]}
                    onPaste={(event) => paste(event, row, at)}
                    onChange={(event) => lay([[event.target.value]], row, at)}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {tried
        ? troubles.map(({ row, column, reason }) => (
            <p key={`${row} ${column}`} className="field-error" role="alert">
              Row {row + 1}, {WINDOW_COLUMNS[column]?.toLowerCase()}: {reason}
            </p>
          ))
        : null}
      <button
        type="button"
        className="button button-small"
        disabled={!mine || sizes.length === 0}
        onClick={add}
      >
        {sizes.length === 0 ? "Add them" : `Add ${counted(sizes.length, "window")}`}
      </button>
      <p role="status" className="small">
        {said}
      </p>
    </div>
  );
}

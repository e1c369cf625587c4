import { type ChangeEvent, useState } from "react";
import { setPatch } from "../../figures/index.ts";
import { MOST_PARTS, type PartKind } from "../../job/index.ts";
import { useCanEdit, useField } from "../state/fields.ts";
import { edit, usePlanner } from "../state/store.ts";

interface PartIssue {
  line: number;
  column: string;
  given: string;
  wanted: string;
}

/** Parts from a CSV file: its first line names the fields. What cannot be used is outcome line by line, the rest comes in. */
export function PartsFromFile({ kind, pointer }: { kind: PartKind; pointer: string }) {
  const mine = useCanEdit();
  const own = (useField(pointer) as { id: string }[] | undefined) ?? [];
  const [outcome, setOutcome] = useState<{
    taken: number;
    issues: readonly PartIssue[];
    columns: readonly string[];
  }>();
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    event.target.value = "";
    if (!file) return;
    const { partColumns, readPartsCsv } = await import("../../tables/parts-csv/index.ts");
    const { parts, issues } = readPartsCsv(await file.text(), kind);
    const columns = partColumns(kind);
    const ids = new Set(parts.map(({ id }) => id));
    // A part of the same id is replaced: a list that was mended can be read again.
    const list = [...own.filter(({ id }) => !ids.has(id)), ...parts];
    if (list.length > MOST_PARTS) {
      const given = `${list.length} with those of the job`;
      const tooMany = { line: 2, column: "(list)", given, wanted: `at most ${MOST_PARTS}` };
      setOutcome({ taken: 0, issues: [tooMany], columns });
      return;
    }
    setOutcome({ taken: parts.length, issues, columns });
    const { job } = usePlanner.getState();
    if (!job || parts.length === 0) return;
    edit({
      label: `Read ${parts.length} from ${file.name.slice(0, 60)}`,
      patch: setPatch(job, pointer, list),
    });
  };
  return (
    <div className="parts-from-file">
      <label>
        <span className="quiet small">Read a list, as CSV: </span>
        <input type="file" accept=".csv,text/csv" disabled={!mine} onChange={(event) => void take(event)} />
      </label>
      <div role="status">
        {outcome === undefined ? null : (
          <>
            <p className="small">
              {outcome.taken === 0 ? "Nothing was taken." : `${outcome.taken} taken.`}
              {outcome.issues.length > 0 ? " What could not be used:" : ""}
            </p>
            {outcome.issues.length > 0 ? (
              <>
                <ul className="small">
                  {outcome.issues.slice(0, 20).map(({ line, column, given, wanted }) => (
                    <li key={`${line} ${column} ${wanted}`}>
                      Line {line}, {column}: “{given}”. Wanted: {wanted}.
                    </li>
                  ))}
                </ul>
                <p className="quiet small">Columns that a list can have: {outcome.columns.join(", ")}.</p>
              </>
            ) : null}
          </>
        )}
      </div>
    </div>
  );
}

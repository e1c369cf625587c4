import { useState } from "react";
import { cordLengths } from "../../lift/index.ts";
import { cordLengthText, lengthText, SYSTEM_DEFAULT_RULER, type UnitChoice } from "../../units/index.ts";
import { readLength } from "../inputs/read-write.ts";
import { span } from "../inputs/spec.ts";
import { Typed } from "../inputs/typed.tsx";
import { usePreferences } from "../state/preferences.ts";

const EXAMPLES = {
  imperial: { width: "36", length: "60", columns: "5", inset: "2", first: "3 3/4", tail: "30", knots: "6" },
  metric: { width: "900", length: "1500", columns: "5", inset: "50", first: "95", tail: "750", knots: "150" },
} as const;
type Numbers = Record<keyof (typeof EXAMPLES)["metric"], string>;

const LABELS: Record<keyof Numbers, string> = {
  width: "Finished width",
  length: "Finished length",
  columns: "Columns of rings",
  inset: "Edge columns in from the edge",
  first: "Hem to the bottom row",
  tail: "Tail below the lock",
  knots: "For knots, each",
};

/** How long each cord must be, from the sizes of a shade alone. */
export function HowLong() {
  const system = usePreferences((preferences) => preferences.system);
  const units: UnitChoice = { system, ruler: SYSTEM_DEFAULT_RULER[system] };
  const [typed, setTyped] = useState<Partial<Numbers>>({});
  const text = { ...EXAMPLES[system], ...typed };
  const read = (key: keyof Numbers) => readLength(text[key], span(LABELS[key]), units);
  const lengths = (["width", "length", "inset", "first", "tail", "knots"] as const).map(
    (key) => [key, read(key)] as const,
  );
  const value = Object.fromEntries(
    lengths.map(([key, found]) => [key, found.ok ? found.value : undefined]),
  ) as Record<string, number | undefined>;
  const count = Number(text.columns);
  const countOk = Number.isInteger(count) && count >= 2 && count <= 60;
  const { width, length, inset, first, tail, knots } = value;
  const known = [width, length, inset, first, tail, knots].every((one) => one !== undefined) && countOk;
  const columns = known
    ? Array.from(
        { length: count },
        (_, i) => (inset ?? 0) + (i * ((width ?? 0) - 2 * (inset ?? 0))) / (count - 1),
      )
    : [];
  // The lock sits half way between the last two eyes on the right.
  const lockMm = ((columns.at(-1) ?? 0) + (columns.at(-2) ?? 0)) / 2;
  const cords = known
    ? cordLengths({
        columnsMm: columns,
        lockMm,
        riseMm: (length ?? 0) - (first ?? 0),
        tailMm: tail ?? 0,
        knotsMm: knots ?? 0,
      })
    : [];
  return (
    <section className="chapter ask-part" aria-labelledby="how-long">
      <h2 id="how-long">How long are my cords?</h2>
      <div className="fields">
        {(Object.keys(LABELS) as (keyof Numbers)[]).map((key) => {
          const found = key === "columns" ? undefined : read(key);
          const error =
            key === "columns"
              ? countOk
                ? undefined
                : `a whole number from 2 to 60, not “${text.columns}”`
              : found?.ok === false
                ? found.reason
                : undefined;
          return (
            <Typed
              key={key}
              label={LABELS[key]}
              {...(key === "columns" ? {} : { unit: system === "imperial" ? "in" : "mm" })}
              value={text[key]}
              onChange={(next) => setTyped({ ...typed, [key]: next })}
              error={error}
            />
          );
        })}
      </div>
      {cords.length > 0 ? (
        <div aria-live="polite">
          <p>
            Each cord is its rise, hem row to top line, {lengthText((length ?? 0) - (first ?? 0), units)}, its
            run along the board to a lock {lengthText(lockMm, units)} from the left, the tail, and the knots.
          </p>
          <table className="table">
            <caption>From the left, seen from the room</caption>
            <tbody>
              {cords.map((mm, i) => (
                <tr key={columns[i]}>
                  <th scope="row">Cord {i + 1}</th>
                  <td>{lengthText(Math.abs((columns[i] ?? 0) - lockMm), units)} of run</td>
                  <td className="number">{lengthText(mm, units)}</td>
                </tr>
              ))}
            </tbody>
            <tfoot>
              <tr>
                <th scope="row">In all</th>
                <td />
                <td className="number">
                  {cordLengthText(
                    cords.reduce((sum, mm) => sum + mm, 0),
                    units,
                  )}
                </td>
              </tr>
            </tfoot>
          </table>
        </div>
      ) : null}
    </section>
  );
}

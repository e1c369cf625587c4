import { useState } from "react";
import { cordLengths } from "../../lift/index.ts";
import { cordLengthText, lengthText, SYSTEM_DEFAULT_RULER, type UnitChoice } from "../../units/index.ts";
import { lengthUnit, type Read, readLength } from "../inputs/read-write.ts";
import { type LengthSpec, length, span } from "../inputs/spec.ts";
import { Typed } from "../inputs/typed.tsx";
import { usePreferences } from "../state/preferences.ts";
import { readCount, reasonOf } from "./asked-number.ts";

const EXAMPLES = {
  imperial: { width: "36", length: "60", columns: "5", inset: "2", first: "3 3/4", tail: "30", knots: "6" },
  metric: { width: "900", length: "1500", columns: "5", inset: "50", first: "95", tail: "750", knots: "150" },
} as const;
type Key = keyof (typeof EXAMPLES)["metric"];
type Sizes = Record<Key, number>;

const COLUMNS = "Columns of rings";
const SPECS: Record<Exclude<Key, "columns">, LengthSpec> = {
  width: span("Finished width"),
  length: span("Finished length"),
  inset: length("Edge columns in from the edge"),
  first: length("Hem to the bottom row"),
  tail: length("Tail below the lock"),
  knots: length("For knots, each"),
};
const KEYS = ["width", "length", "columns", "inset", "first", "tail", "knots"] as const satisfies Key[];

/** How long each cord must be, from the sizes of a shade alone. */
export function HowLong() {
  const system = usePreferences((preferences) => preferences.system);
  const units: UnitChoice = { system, ruler: SYSTEM_DEFAULT_RULER[system] };
  const [typed, setTyped] = useState<Partial<Record<Key, string>>>({});
  const text = { ...EXAMPLES[system], ...typed };
  const read = readAll(text, units);
  const sizes = sizesOf(read);
  return (
    <section className="chapter ask-part" aria-labelledby="how-long">
      <h2 id="how-long">How long are my cords?</h2>
      <div className="fields">
        {KEYS.map((key) => (
          <Typed
            key={key}
            label={key === "columns" ? COLUMNS : SPECS[key].label}
            {...(key === "columns" ? {} : { unit: lengthUnit(SPECS[key], units) })}
            value={text[key]}
            onChange={(next) => setTyped({ ...typed, [key]: next })}
            error={reasonOf(read[key])}
          />
        ))}
      </div>
      {sizes === undefined ? null : <Cords sizes={sizes} units={units} />}
    </section>
  );
}

/** Each size as it was typed; the two that lie within the shade are no longer than it is. */
function readAll(text: Record<Key, string>, units: UnitChoice): Record<Key, Read<number>> {
  const read = (key: keyof typeof SPECS, mostMm?: number) =>
    readLength(text[key], mostMm === undefined ? SPECS[key] : { ...SPECS[key], maxMm: mostMm }, units);
  const [width, long] = [read("width"), read("length")];
  return {
    width,
    length: long,
    columns: readCount(text.columns, 2, 60),
    inset: read("inset", width.ok ? width.value / 2 : undefined),
    first: read("first", long.ok ? long.value : undefined),
    tail: read("tail"),
    knots: read("knots"),
  };
}

function sizesOf(read: Record<Key, Read<number>>): Sizes | undefined {
  const sizes: Partial<Sizes> = {};
  for (const key of KEYS) {
    const one = read[key];
    if (!one.ok) return undefined;
    sizes[key] = one.value;
  }
  return sizes as Sizes;
}

function Cords({ sizes, units }: { sizes: Sizes; units: UnitChoice }) {
  const { width, length, columns: count, inset, first, tail, knots } = sizes;
  const columns = Array.from({ length: count }, (_, i) => inset + (i * (width - 2 * inset)) / (count - 1));
  // The lock sits half way between the last two eyes on the right.
  const lockMm = ((columns.at(-1) ?? 0) + (columns.at(-2) ?? 0)) / 2;
  const riseMm = length - first;
  const cords = cordLengths({ columnsMm: columns, lockMm, riseMm, tailMm: tail, knotsMm: knots });
  return (
    <div aria-live="polite">
      <p>
        Each cord is its rise, hem row to top line, {lengthText(riseMm, units)}, its run along the board to a
        lock {lengthText(lockMm, units)} from the left, the tail, and the knots.
      </p>
      <table className="table">
        <caption>From the left, seen from the room</caption>
        <tbody>
          {cords.map((mm, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a cord's number is its place
            <tr key={i}>
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
  );
}

import { useState } from "react";
import { levelHem } from "../../diagnose/index.ts";
import { lengthText } from "../../units/index.ts";
import { lengthUnit, readLength } from "../inputs/read-write.ts";
import { length } from "../inputs/spec.ts";
import { Typed } from "../inputs/typed.tsx";
import { useShade } from "../shade/shade-context.tsx";
import { useUnits } from "../state/fields.ts";
import { reasonOf } from "./asked-number.ts";

/** Hem heights as measured at each column, and which knot to move by how much. */
export function Level() {
  const { grid } = useShade().plan;
  const units = useUnits();
  const [typed, setTyped] = useState<Record<number, string>>({});
  const spec = length("Height of the hem");
  const read = grid.columns.map(({ number, xMm }) => {
    const text = typed[number]?.trim() ?? "";
    return { number, xMm, text, found: text === "" ? undefined : readLength(text, spec, units) };
  });
  const measured = read.flatMap(({ number, xMm, found }) =>
    found?.ok ? [{ column: number, xMm, heightMm: found.value }] : [],
  );
  const answer = measured.length > 1 ? levelHem(measured, units.ruler) : undefined;
  return (
    <div className="ask-level">
      <p>
        Raise the shade by a hand’s breadth, so that the cords carry it. At each column measure from the sill,
        or from a line that is level, up to the hem.
      </p>
      <div className="fields">
        {read.map(({ number, text, found }) => (
          <Typed
            key={number}
            label={`Column ${number}`}
            unit={lengthUnit(spec, units)}
            value={text}
            onChange={(next) => setTyped({ ...typed, [number]: next })}
            error={reasonOf(found)}
          />
        ))}
      </div>
      <div aria-live="polite">
        {answer === undefined ? null : answer.moves.length === 0 ? (
          <p>It hangs level to one mark of the ruler: no knot moves.</p>
        ) : (
          <>
            {answer.straight ? (
              <p>
                The heights lie on a straight line that rises {lengthText(Math.abs(answer.slopeMm), units)}{" "}
                towards the {answer.slopeMm > 0 ? "right" : "left"}. That is the board, not the knots: pack
                its {answer.slopeMm > 0 ? "left" : "right"} end, and measure again.
              </p>
            ) : null}
            <ul>
              {answer.moves.map(({ column, upMm }) => (
                <li key={column}>
                  Column {column}: {upMm > 0 ? "shorten" : "let out"} its cord by{" "}
                  {lengthText(Math.abs(upMm), units)}, at the knot of the bottom ring.
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </div>
  );
}

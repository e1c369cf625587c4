import { FIT_WORDS, type OwnFit } from "../../shade-plan/index.ts";
import { fineText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import "./parts.css";

/** Locks by cords: one word a pair, and why under it. */
export function FitTable({ fit: { cordCount, cords, rows } }: { fit: OwnFit }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard
    <section className="table-room" aria-label="Locks by cords" tabIndex={0}>
      <table className="table fit-table">
        <caption>Locks by cords, for {counted(cordCount, "cord")}</caption>
        <thead>
          <tr>
            <th scope="col">Lock</th>
            {cords.map(({ id, name, diameterMm }) => (
              <th scope="col" key={id}>
                {name}, {fineText(diameterMm)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ lock, cells }) => (
            <tr key={lock.id}>
              <th scope="row">{lock.name}</th>
              {cells.map(({ cordId, verdict, reasons }) => (
                <td key={cordId} data-verdict={verdict}>
                  <b>{FIT_WORDS[verdict]}</b>
                  {reasons.map((reason) => (
                    <span key={reason} className="fit-reason">
                      It {reason}.
                    </span>
                  ))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

import { FIT_WORDS, type OwnFit } from "../../shade-plan/index.ts";
import { fineText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import "./parts.css";

/** Locks by cords: one word a pair, and why under it. Cords stand under their lock: side by side they would not fit a phone. */
export function FitTable({ fit: { cordCount, cords, rows } }: { fit: OwnFit }) {
  return (
    <table className="table fit-table">
      <caption>Locks by cords, for {counted(cordCount, "cord")}</caption>
      {rows.map(({ lock, cells }) => (
        <tbody className="table-group" key={lock.id}>
          <tr>
            <th scope="rowgroup" colSpan={2}>
              {lock.name}
            </th>
          </tr>
          {cords.map(({ id, name, diameterMm }, at) => {
            const cell = cells[at];
            return cell === undefined ? null : (
              <tr key={id}>
                <th scope="row">{withDiameter(name, fineText(diameterMm))}</th>
                <td data-verdict={cell.verdict}>
                  <b>{FIT_WORDS[cell.verdict]}</b>
                  {cell.reasons.map((reason) => (
                    <span key={reason} className="fit-reason">
                      It {reason}.
                    </span>
                  ))}
                </td>
              </tr>
            );
          })}
        </tbody>
      ))}
    </table>
  );
}

/** Many a cord has its diameter in its name. */
const withDiameter = (name: string, diameter: string) =>
  name.includes(diameter) ? name : `${name}, ${diameter}`;

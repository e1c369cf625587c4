import { useState } from "react";
import type { BoltPlan } from "../../cutting/index.ts";
import { boltName, type ClothCutting, cuttingTicket } from "../../plan/index.ts";
import { useCanEdit, useUnits } from "../state/fields.ts";
import { CutsMadeForm } from "./cuts-made-form.tsx";

/** The cuts of a bolt in their order, and the way to say that some are made. */
export function Ticket({ cloth, bolt }: { cloth: ClothCutting; bolt: BoltPlan }) {
  const units = useUnits();
  const mine = useCanEdit();
  const [upTo, setUpTo] = useState<number>();
  const lines = cuttingTicket(cloth, bolt, units);
  if (lines.length === 0) return null;
  const name = boltName(cloth, bolt.boltId);
  return (
    <details className="more-settings">
      <summary>Cuts in their order: {name}</summary>
      <div className="table-room">
        <table className="table table-folds ticket">
          <caption className="hidden-words">Cuts in their order</caption>
          <thead>
            <tr>
              <th scope="col">Cut</th>
              <th scope="col">How</th>
              <th scope="col">Sets free</th>
              <th scope="col">Check</th>
              <th scope="col">Within</th>
              <th scope="col" className="screen-only">
                Made
              </th>
            </tr>
          </thead>
          <tbody>
            {lines.map(({ number, numbers, how, frees, check, within }, at) => (
              <tr key={number} data-made={upTo !== undefined && number <= upTo ? true : undefined}>
                <th scope="row">{numbers}</th>
                <td>{how}</td>
                <td data-head="Sets free">{frees}</td>
                <td data-head="Check">{check}</td>
                <td data-head="Within">{within}</td>
                <td className="screen-only" data-head="Made">
                  <input
                    type="checkbox"
                    aria-label={`${name}: cut ${numbers} is made, and all before it`}
                    disabled={!mine}
                    checked={upTo !== undefined && number <= upTo}
                    onChange={(event) => setUpTo(event.target.checked ? number : lines[at - 1]?.number)}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {upTo === undefined ? null : (
        <CutsMadeForm
          // A cut more leaves another length on the bolt.
          key={upTo}
          cloth={cloth}
          bolt={bolt}
          upTo={upTo}
          onDone={() => setUpTo(undefined)}
        />
      )}
    </details>
  );
}

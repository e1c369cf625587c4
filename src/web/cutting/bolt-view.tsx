import { useState } from "react";
import type { BoltPlan, ClothCutPlan } from "../../cutting/index.ts";
import { boltName, type ClothCutting, cuttingTicket } from "../../plan/index.ts";
import { clothLengthText } from "../../units/index.ts";
import { useUnits } from "../state/fields.ts";
import { BoltSheet } from "./bolt-sheet.tsx";
import { type HandTry, tryByHand } from "./try-by-hand.ts";

/** The bolts of one cloth as they are cut, with pieces to be moved by hand. */
export function BoltView({ cloth, plan }: { cloth: ClothCutting; plan: ClothCutPlan }) {
  const [hand, setHand] = useState<{ plan: ClothCutPlan; made: HandTry }>();
  // A better plan takes the place of what was tried by hand on the last one.
  const made = hand?.plan === plan ? hand.made : undefined;
  const bolts = made?.bolts ?? plan.bolts;
  return (
    <>
      {bolts.map((bolt) => (
        <BoltSheet
          key={bolt.boltId}
          cloth={cloth}
          bolt={bolt}
          onMove={(placement) =>
            setHand({ plan, made: tryByHand(cloth, plan, bolts, bolt.boltId, placement) })
          }
        />
      ))}
      {made === undefined ? (
        <p className="quiet small screen-only">
          Drag a piece, or move it with the arrow keys, to try another place.
        </p>
      ) : (
        <HandWords made={made} onBack={() => setHand(undefined)} />
      )}
      {made === undefined
        ? plan.bolts.map((bolt) => <Ticket key={bolt.boltId} cloth={cloth} bolt={bolt} />)
        : null}
    </>
  );
}

function HandWords({ made, onBack }: { made: HandTry; onBack: () => void }) {
  const units = useUnits();
  const { faults, moreMm, usedMm } = made;
  const change =
    Math.abs(moreMm) < 0.05
      ? "as much as the plan"
      : `${clothLengthText(Math.abs(moreMm), units)} ${moreMm > 0 ? "more" : "less"} than the plan`;
  return (
    <div className="cutting-hand screen-only" role="status" data-fits={faults.length === 0}>
      <p>
        <b>{faults.length === 0 ? "By hand: it fits." : "By hand: it does not fit."}</b>{" "}
        {clothLengthText(usedMm, units)} of new cloth, {change}.
      </p>
      {faults.length > 0 ? (
        <ul>
          {faults.slice(0, 4).map((fault) => (
            <li key={fault}>{fault}.</li>
          ))}
        </ul>
      ) : null}
      <button type="button" className="button button-small" onClick={onBack}>
        Put everything back
      </button>
    </div>
  );
}

function Ticket({ cloth, bolt }: { cloth: ClothCutting; bolt: BoltPlan }) {
  const units = useUnits();
  const lines = cuttingTicket(cloth, bolt, units);
  if (lines.length === 0) return null;
  return (
    <details className="more-settings">
      <summary>Cuts in their order: {boltName(cloth, bolt.boltId)}</summary>
      <div className="table-room">
        <table className="table">
          <caption className="hidden-words">Cuts in their order</caption>
          <thead>
            <tr>
              <th scope="col">Cut</th>
              <th scope="col">How</th>
              <th scope="col">Sets free</th>
              <th scope="col">Check</th>
            </tr>
          </thead>
          <tbody>
            {lines.map(({ number, how, frees, check }) => (
              <tr key={number}>
                <th scope="row">{number}</th>
                <td>{how}</td>
                <td>{frees}</td>
                <td>{check}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

import { useState } from "react";
import type { ClothCutPlan } from "../../cutting/index.ts";
import { type ClothCutting, snappedToRepeat } from "../../plan/index.ts";
import { clothLengthText } from "../../units/index.ts";
import { useUnits } from "../state/fields.ts";
import { BoltSheet } from "./bolt-sheet.tsx";
import { KeepButton, LaidByHand } from "./laid-by-hand.tsx";
import { Ticket } from "./ticket.tsx";
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
            setHand({
              plan,
              made: tryByHand(
                cloth,
                plan,
                bolts,
                bolt.boltId,
                snappedToRepeat(cloth, bolt.boltId, placement),
              ),
            })
          }
        />
      ))}
      {made === undefined ? (
        <p className="quiet small screen-only">
          Drag a piece, or move it with the arrow keys, to try another place.
        </p>
      ) : (
        <HandWords cloth={cloth} plan={plan} made={made} onBack={() => setHand(undefined)} />
      )}
      {made === undefined ? (
        <>
          <LaidByHand cloth={cloth} plan={plan} />
          {plan.bolts.map((bolt) => (
            <Ticket key={bolt.boltId} cloth={cloth} bolt={bolt} />
          ))}
        </>
      ) : null}
    </>
  );
}

interface HandWordsProps {
  cloth: ClothCutting;
  plan: ClothCutPlan;
  made: HandTry;
  onBack: () => void;
}

function HandWords({ cloth, plan, made, onBack }: HandWordsProps) {
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
      <p className="buttons">
        {faults.length === 0 ? <KeepButton cloth={cloth} plan={plan} made={made} /> : null}
        <button type="button" className="button button-small" onClick={onBack}>
          Put everything back
        </button>
      </p>
    </div>
  );
}

import type { ClothCutPlan } from "../../cutting/index.ts";
import { type ClothCutting, heldPatch, letGoPatch, pieceNames } from "../../plan/index.ts";
import { counted } from "../../words/index.ts";
import { useCanEdit, useJob } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import type { HandTry } from "./try-by-hand.ts";

interface KeepProps {
  cloth: ClothCutting;
  plan: ClothCutPlan;
  made: HandTry;
}

/** What was moved becomes part of the job; the rest is cut round it. */
export function KeepButton({ cloth, plan, made }: KeepProps) {
  const job = useJob();
  const mine = useCanEdit();
  const before = new Set(laidOf(plan.bolts).map(placeOf));
  const moved = laidOf(made.bolts).filter((laid) => !before.has(placeOf(laid)));
  return (
    <button
      type="button"
      className="button button-small"
      disabled={!mine}
      onClick={() => edit({ label: "Keep pieces where I laid them", patch: heldPatch(job, cloth, moved) })}
    >
      Keep it there
    </button>
  );
}

function laidOf(bolts: ClothCutPlan["bolts"]) {
  return bolts.flatMap(({ boltId, placements }) => placements.map((placement) => ({ boltId, placement })));
}

/** A piece with where it lies, as one word. */
function placeOf({ boltId, placement }: ReturnType<typeof laidOf>[number]): string {
  return JSON.stringify([boltId, placement.pieceId, placement.xMm, placement.yMm]);
}

/** So many names are listed; more are a whole plan that was kept. */
const MOST_NAMED = 8;

/** Pieces that stay where they were laid, each to be let go; and the way to keep a whole plan. */
export function LaidByHand({ cloth, plan }: { cloth: ClothCutting; plan: ClothCutPlan }) {
  const job = useJob();
  const mine = useCanEdit();
  const names = pieceNames(cloth);
  const laid = (job.laidPieces ?? []).filter((one) => one.cloth === cloth.clothId && names.has(one.piece));
  const all = laidOf(plan.bolts);
  const letGo = (pieceId?: string) =>
    edit({ label: "Let pieces go that I laid", patch: letGoPatch(job, cloth.clothId, pieceId) });
  return (
    <div className="cutting-laid screen-only">
      {laid.length === 0 ? null : (
        <>
          <p>
            {counted(laid.length, "piece")} of {counted(all.length, "piece")}{" "}
            {laid.length === 1 ? "lies" : "lie"} where you laid {laid.length === 1 ? "it" : "them"}.
          </p>
          {laid.length <= MOST_NAMED ? (
            <ul>
              {laid.map(({ piece }) => (
                <li key={piece}>
                  {names.get(piece)}{" "}
                  <button
                    type="button"
                    className="button-plain small"
                    disabled={!mine}
                    onClick={() => letGo(piece)}
                  >
                    Let it go<span className="hidden-words">: {names.get(piece)}</span>
                  </button>
                </li>
              ))}
            </ul>
          ) : null}
        </>
      )}
      <p className="buttons">
        {laid.length < all.length ? (
          <button
            type="button"
            className="button-plain small"
            disabled={!mine}
            onClick={() => edit({ label: "Keep this cutting plan", patch: heldPatch(job, cloth, all) })}
          >
            Keep this plan as it is<span className="hidden-words">: {cloth.clothName}</span>
          </button>
        ) : null}
        {laid.length > 1 ? (
          <button type="button" className="button-plain small" disabled={!mine} onClick={() => letGo()}>
            Let all go<span className="hidden-words">: {cloth.clothName}</span>
          </button>
        ) : null}
      </p>
    </div>
  );
}

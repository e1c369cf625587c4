import type { Saving } from "../../plan/index.ts";
import { useCanEdit, useJob } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import { findSavings, useCuttingStore } from "./cutting-store.ts";

const WORDS = {
  looking: "Each way is planned and cut anew.",
  failed: "The search failed; not every way was tried.",
};

/** What would save cloth: every change was planned and cut anew before it is reported. */
export function SavingsList() {
  const job = useJob();
  const { state, found } = useCuttingStore((cutting) => cutting.savings);
  return (
    <section className="cutting-cloth screen-only">
      <h3>What would save cloth</h3>
      {state === "idle" ? (
        <p>
          <button type="button" className="button button-small" onClick={() => void findSavings(job)}>
            Try the usual ways
          </button>{" "}
          <span className="quiet small">
            Turning the lining, moving joins, narrower hems, another width, a remnant.
          </span>
        </p>
      ) : (
        <p role="status">
          {state === "looking" || state === "failed"
            ? WORDS[state]
            : found.length === 0
              ? "None of the usual ways takes less cloth."
              : "Each was planned and cut anew before it was put here."}
        </p>
      )}
      {found.length > 0 ? (
        <ul className="savings">
          {found.map((saving) => (
            <SavingRow key={saving.id} saving={saving} />
          ))}
        </ul>
      ) : null}
    </section>
  );
}

function SavingRow({ saving: { label, text, patch } }: { saving: Saving }) {
  const mine = useCanEdit();
  return (
    <li>
      <span>
        <b>{label}</b>: {text}.
      </span>
      {patch === undefined ? null : (
        <button
          type="button"
          className="button-plain small"
          disabled={!mine}
          onClick={() => edit({ label, patch })}
        >
          Do it<span className="hidden-words">: {label}</span>
        </button>
      )}
    </li>
  );
}

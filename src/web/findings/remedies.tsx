import type { Remedy } from "../../figures/index.ts";
import { useCanEdit } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import "./finding-list.css";

/** What would answer a problem, ready to press; nothing where nothing is known. */
export function Remedies({ remedies }: { remedies: readonly Remedy[] }) {
  const mine = useCanEdit();
  if (remedies.length === 0) return null;
  return (
    <div className="finding-remedies">
      {remedies.map((remedy) => (
        <p key={remedy.label}>
          <button
            type="button"
            className="button button-small"
            disabled={!mine}
            onClick={() => edit({ label: remedy.label, patch: remedy.patch })}
          >
            {remedy.label}
          </button>
          {remedy.changes ? <span className="finding-changes">{remedy.changes}</span> : null}
        </p>
      ))}
    </div>
  );
}

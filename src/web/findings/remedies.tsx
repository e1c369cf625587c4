import type { Remedy } from "../../figures/index.ts";
import { useCanEdit } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import { type ProveRemedy, useCuring } from "./use-curing.ts";
import "./finding-list.css";

interface RemediesProps {
  remedies: readonly Remedy[];
  /** Tries one against what it stands beside; the same function while nothing changes. */
  prove: ProveRemedy;
}

/** What would answer a problem, ready to press; nothing where nothing is known. */
export function Remedies({ remedies, prove }: RemediesProps) {
  const mine = useCanEdit();
  const curing = useCuring(remedies, prove);
  if (curing.length === 0) return null;
  return (
    <div className="finding-remedies">
      {curing.map((remedy) => (
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

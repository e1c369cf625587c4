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
  return <RemedyButtons remedies={useCuring(remedies, prove)} />;
}

interface RemedyButtonsProps {
  remedies: readonly Remedy[];
  /** So many shades at once. */
  of?: number;
  /** Found for an earlier state of the job: to be seen, not to be pressed. */
  stale?: boolean;
}

/** Remedies that cure, ready to press. */
export function RemedyButtons({ remedies, of = 1, stale = false }: RemedyButtonsProps) {
  const mine = useCanEdit();
  if (remedies.length === 0) return null;
  return (
    <div className="finding-remedies">
      {remedies.map(({ label, changes, patch }) => {
        const said =
          of > 1 ? `Do it for all ${of}: ${label.charAt(0).toLowerCase()}${label.slice(1)}` : label;
        return (
          <p key={label}>
            <button
              type="button"
              className="button button-small"
              disabled={!mine || stale}
              onClick={() => edit({ label: of > 1 ? `${label}, ${of} shades` : label, patch })}
            >
              {said}
            </button>
            {changes ? <span className="finding-changes">{changes}</span> : null}
          </p>
        );
      })}
    </div>
  );
}

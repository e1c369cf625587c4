import { type ReactNode, useState } from "react";
import { FieldsOutOfSight } from "../findings/claims.tsx";
import { Still } from "../shade/still.tsx";
import { openSection, usePlanner } from "../state/store.ts";

interface MoreProps {
  /** Name under which the planner remembers whether it is open. */
  id: string;
  title: ReactNode;
  children: ReactNode;
}

/** What is not wanted at every window, folded away until it is; found again as it was left. */
export function More({ id, title, children }: MoreProps) {
  const open = usePlanner((planner) => planner.view.open[id] === true);
  // What was typed in it outlives its folding away.
  const [everOpen, setEverOpen] = useState(open);
  if (open && !everOpen) setEverOpen(true);
  return (
    <details
      className="more-settings"
      open={open}
      onToggle={(event) => {
        if (event.currentTarget.open !== open) openSection(id, event.currentTarget.open);
      }}
    >
      <summary>{title}</summary>
      {everOpen ? (
        <Still still={!open}>
          <FieldsOutOfSight hidden={!open}>{children}</FieldsOutOfSight>
        </Still>
      ) : null}
    </details>
  );
}

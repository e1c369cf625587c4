import type { ReactNode } from "react";
import { lengthText } from "../../units/index.ts";
import { useShade } from "../shade/shade-context.tsx";
import { useUnits } from "../state/fields.ts";
import { pick, usePlanner } from "../state/store.ts";
import "./fig.css";

interface FigProps {
  /** Id of the working behind the figure. */
  id: string;
  children: ReactNode;
}

/** A figure in a sentence: press it for its working. Plain words where the plan has no working for it. */
export function Fig({ id, children }: FigProps) {
  const working = useShade().workings.get(id);
  const picked = usePlanner((planner) => planner.view.picked?.figure === id);
  if (!working) return <span className="fig-plain">{children}</span>;
  return (
    <button
      type="button"
      className="fig"
      aria-expanded={picked}
      data-figure={id}
      onClick={() => pick(picked ? undefined : { figure: id })}
    >
      {children}
      <span className="hidden-words">, {working.label}: show the working</span>
    </button>
  );
}

/** A length of the plan on the maker's ruler, with its working behind it. */
export function LengthFig({ id, mm }: { id: string; mm: number }) {
  const units = useUnits();
  return <Fig id={id}>{lengthText(mm, units)}</Fig>;
}

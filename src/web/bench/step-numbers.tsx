import { figureText } from "../../figures/index.ts";
import type { Step } from "../../shade-plan/index.ts";
import { useShade } from "../shade/shade-context.tsx";
import { useUnits } from "../state/fields.ts";
import { useCurrency } from "../state/parts.ts";

/** The numbers of one step and no others. */
export function StepNumbers({ step }: { step: Step }) {
  const { workings } = useShade();
  const units = useUnits();
  const currency = useCurrency();
  const own = (step.figures ?? []).flatMap((id) => workings.get(id) ?? []);
  if (own.length === 0) return null;
  return (
    <dl className="bench-numbers">
      {own.map((working) => (
        <div key={working.id}>
          <dt>{working.label}</dt>
          <dd>{figureText(working.value, working.unit, units, currency)}</dd>
        </div>
      ))}
    </dl>
  );
}

import type { ShoppingLine } from "../../shade-plan/index.ts";
import { Field } from "../inputs/field.tsx";
import { CURRENCY, type NumberSpec } from "../inputs/spec.ts";

/** Metres in one of what is sold by the length; what is counted has a price of its own. */
const METRES: Partial<Record<ShoppingLine["unit"], number>> = { yd: 0.9144, ft: 0.3048, m: 1 };
const UNIT_NAMES: Record<ShoppingLine["unit"], string> = {
  yd: "a yard",
  ft: "a foot",
  m: "a metre",
  piece: "each",
  pack: "a pack",
  length: "a length",
};

/** The price of one line of the shopping list, typed where it is read. The job holds it by the metre or by the piece. */
export function PriceField({ line }: { line: ShoppingLine }) {
  const factor = METRES[line.unit] ?? 1;
  const scale = { factor, unit: `${CURRENCY} ${UNIT_NAMES[line.unit]}` };
  const spec: NumberSpec = {
    kind: "number",
    label: `Price of ${line.label}`,
    quiet: true,
    min: 0,
    max: 1e7,
    metric: scale,
    imperial: scale,
  };
  const fallback = line.price === undefined ? undefined : line.price / factor;
  return (
    <div className="price-field">
      <Field pointer={`/rates/prices/${line.id}`} spec={spec} fallback={fallback} />
    </div>
  );
}

import { GOODS, GOODS_NAMES, PLACE_NAMES, PLACES, PURPOSE_NAMES, PURPOSES } from "../../job/index.ts";
import { FieldGroup } from "../findings/field-findings.tsx";
import { Field } from "../inputs/field.tsx";
import { choice } from "../inputs/spec.ts";

const NOT_SAID = "not said";
const PLACE_SPEC = choice(
  "Where it will hang",
  Object.fromEntries(PLACES.map((key) => [key, PLACE_NAMES[key]])),
);
const PURPOSE_SPEC = choice("Use", Object.fromEntries(PURPOSES.map((key) => [key, PURPOSE_NAMES[key]])));

const GOODS_SPEC = choice("Goods", Object.fromEntries(GOODS.map((key) => [key, GOODS_NAMES[key]])));

/** Asked once for the whole job: they decide which rules are read. */
export function PlaceAndPurpose() {
  return (
    <FieldGroup>
      <Field pointer="/place" spec={PLACE_SPEC} unset={NOT_SAID} />
      <Field pointer="/purpose" spec={PURPOSE_SPEC} unset={NOT_SAID} />
      <Field pointer="/goods" spec={GOODS_SPEC} unset={NOT_SAID} />
    </FieldGroup>
  );
}

import { PLACE_NAMES, PLACES, PURPOSE_NAMES, PURPOSES } from "../../../job/index.ts";
import { countText } from "../../frame/count-text.ts";
import { Field } from "../../inputs/field.tsx";
import { choice } from "../../inputs/spec.ts";
import { useJob } from "../../state/fields.ts";
import { Section } from "../section.tsx";
import { Settings } from "../setting-group.tsx";
import { useShade } from "../shade-context.tsx";

const NOT_SAID = "not said";
export const PLACE_SPEC = choice(
  "Where it will hang",
  Object.fromEntries(PLACES.map((key) => [key, PLACE_NAMES[key]])),
);
export const PURPOSE_SPEC = choice(
  "Made for",
  Object.fromEntries(PURPOSES.map((key) => [key, PURPOSE_NAMES[key]])),
);

export function SafetySection() {
  const { cautions } = useShade().plan;
  return (
    <Section number={6} id="safety" title="Safety" stages={["safety"]} sentence={<SafetySentence />}>
      <PlaceAndPurpose />
      <dl className="cautions">
        {cautions.map((caution) => (
          <div key={caution.id}>
            <dt>{caution.title}</dt>
            <dd>{caution.text}</dd>
          </div>
        ))}
      </dl>
      <div className="fields">
        <Settings group="lift" names={["cleatAboveFloorMm"]} />
      </div>
    </Section>
  );
}

/** Asked once for the whole job: they decide which rules are read. */
export function PlaceAndPurpose() {
  return (
    <div className="fields">
      <Field pointer="/place" spec={PLACE_SPEC} unset={NOT_SAID} />
      <Field pointer="/purpose" spec={PURPOSE_SPEC} unset={NOT_SAID} />
    </div>
  );
}

function SafetySentence() {
  const { findings, cautions } = useShade().plan;
  const { place, purpose } = useJob();
  const failed = findings.filter((finding) => finding.stage === "safety" && finding.weight === "stop").length;
  return (
    <>
      {place ? `${PLACE_NAMES[place]}` : "Place not said"},{" "}
      {purpose ? PURPOSE_NAMES[purpose].toLowerCase() : "purpose not said"}.{" "}
      {countText(cautions.length, "caution")}
      {failed > 0 ? `, ${countText(failed, "rule")} failed` : ""}. Cords can strangle a child: keep every cord
      out of reach.
    </>
  );
}

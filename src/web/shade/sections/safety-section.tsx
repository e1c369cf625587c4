import { FieldGroup } from "../../findings/field-findings.tsx";
import { PlaceAndPurpose } from "../place-and-purpose.tsx";
import { Review } from "../review/review.tsx";
import { Section } from "../section.tsx";
import { Settings } from "../setting-group.tsx";
import { useShade } from "../shade-context.tsx";

/** Every cord at every height against the rules of the place; its standing line is always in sight. */
export function SafetySection() {
  const { cautions, safety, lift } = useShade().plan;
  return (
    <Section
      id="safety"
      findingsFirst
      sentence={<>{safety.line} Cords can strangle a child: keep every cord out of reach.</>}
    >
      <PlaceAndPurpose />
      {lift.takeUp !== "tube" ? (
        <FieldGroup>
          <Settings group="lift" names={["cleatAboveFloorMm"]} />
        </FieldGroup>
      ) : null}
      <Review review={safety} />
      <dl className="cautions">
        {cautions.map((caution) => (
          <div key={caution.id}>
            <dt>{caution.title}</dt>
            <dd>{caution.text}</dd>
          </div>
        ))}
      </dl>
    </Section>
  );
}

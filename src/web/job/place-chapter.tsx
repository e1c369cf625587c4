import { PLACE_NAMES, PURPOSE_NAMES } from "../../job/index.ts";
import { RULERS } from "../../units/index.ts";
import { Chapter } from "../frame/chapter.tsx";
import { UnitsSwitch } from "../frame/units-switch.tsx";
import { Field } from "../inputs/field.tsx";
import { choice } from "../inputs/spec.ts";
import { PlaceAndPurpose } from "../shade/place-and-purpose.tsx";
import { useJob } from "../state/fields.ts";

const RULER = choice("Finest mark of the ruler", Object.fromEntries(RULERS.map((ruler) => [ruler, ruler])));

export function PlaceChapter() {
  const { place, purpose, units } = useJob();
  return (
    <Chapter
      id="place"
      sentence={
        <>
          {place ? PLACE_NAMES[place] : "Where the shades will hang is not said"};{" "}
          {purpose ? PURPOSE_NAMES[purpose].toLowerCase() : "nor what they are made for"}. Measured to{" "}
          {units.ruler}.
        </>
      }
    >
      <PlaceAndPurpose />
      <p className="quiet small">
        They decide which rules on cords and children are read, and how strict they are.
      </p>
      <div className="fields">
        <div>
          <span className="segments-label" aria-hidden="true">
            Units
          </span>
          <UnitsSwitch />
        </div>
        <Field pointer="/units/ruler" spec={RULER} needed="choose one" />
      </div>
    </Chapter>
  );
}

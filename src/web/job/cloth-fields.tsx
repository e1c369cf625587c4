import { Field } from "../inputs/field.tsx";
import { CLOTH_FIELDS, REPEAT_FIELDS } from "../settings/part-fields.ts";
import { editField, useCanEdit, useField } from "../state/fields.ts";
import { ClothPhotoFields } from "./cloth-photo.tsx";

/** A repeat to begin from, mm. */
const FIRST_REPEAT = { verticalMm: 320, match: "straight" };

/** All that is known of one cloth of the maker’s own. */
export function ClothFields({ pointer }: { pointer: string }) {
  return (
    <div className="fields">
      {Object.entries(CLOTH_FIELDS).map(([name, spec]) => (
        <Field key={name} pointer={`${pointer}/${name}`} spec={spec} unset="not known" />
      ))}
      <RepeatFields pointer={`${pointer}/repeat`} />
    </div>
  );
}

/** Its pattern, or that it has none. */
export function RepeatFields({ pointer }: { pointer: string }) {
  const repeat = useField(pointer);
  const mine = useCanEdit();
  if (repeat === undefined) {
    return (
      <p className="field-wide">
        Plain.{" "}
        <button
          type="button"
          className="button-plain"
          disabled={!mine}
          onClick={() => editField(pointer, FIRST_REPEAT, "Pattern repeat")}
        >
          It has a pattern that repeats
        </button>
      </p>
    );
  }
  return (
    <>
      <Field
        pointer={`${pointer}/verticalMm`}
        spec={REPEAT_FIELDS.verticalMm}
        needed="a repeat has a length"
      />
      <Field pointer={`${pointer}/horizontalMm`} spec={REPEAT_FIELDS.horizontalMm} />
      <Field pointer={`${pointer}/startXMm`} spec={REPEAT_FIELDS.startXMm} unset="whole repeats centred" />
      <Field pointer={`${pointer}/match`} spec={REPEAT_FIELDS.match} needed="choose one" />
      <ClothPhotoFields pointer={`${pointer.slice(0, -"/repeat".length)}/photo`} />
      <p className="field-wide">
        <button
          type="button"
          className="button-plain small"
          disabled={!mine}
          onClick={() => editField(pointer, undefined, "No pattern")}
        >
          It is plain after all
        </button>
      </p>
    </>
  );
}

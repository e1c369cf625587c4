import { MOST_SOLD_LENGTHS } from "../../job/index.ts";
import { Field } from "../inputs/field.tsx";
import { SOLD_FIELDS } from "../settings/part-fields.ts";
import { addToList, removeFromList, useCanEdit, useField } from "../state/fields.ts";

const FIRST = { lengthMm: 3000 };

/** Other lengths in which a part is sold, each with its price: the cutting plan chooses among them. */
export function AlsoSold({ pointer }: { pointer: string }) {
  const mine = useCanEdit();
  const list = (useField(pointer) as unknown[] | undefined) ?? [];
  return (
    <>
      {list.map((_, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lengths have no names
        <div key={at} className="fields field-wide">
          <Field
            pointer={`${pointer}/${at}/lengthMm`}
            spec={SOLD_FIELDS.lengthMm}
            needed="a length is needed"
          />
          <Field pointer={`${pointer}/${at}/price`} spec={SOLD_FIELDS.price} unset="not said" />
          <p>
            <button
              type="button"
              className="button-plain small"
              disabled={!mine}
              onClick={() => removeFromList(pointer, at, "Not sold so")}
            >
              Not sold in this length
            </button>
          </p>
        </div>
      ))}
      <p className="field-wide">
        <button
          type="button"
          className="button-plain small"
          disabled={!mine || list.length >= MOST_SOLD_LENGTHS}
          onClick={() => addToList(pointer, FIRST, "Another length")}
        >
          Also sold in another length
        </button>
      </p>
    </>
  );
}

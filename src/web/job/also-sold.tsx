import { Field } from "../inputs/field.tsx";
import { SOLD_FIELDS } from "../settings/part-fields.ts";
import { editField, useCanEdit, useField } from "../state/fields.ts";
import { edit } from "../state/store.ts";

const FIRST = { lengthMm: 3000 };

/** Other lengths in which a part is sold, each with its price: the cutting plan chooses among them. */
export function AlsoSold({ pointer }: { pointer: string }) {
  const mine = useCanEdit();
  const list = (useField(pointer) as unknown[] | undefined) ?? [];
  const add = () => {
    if (list.length === 0) editField(pointer, [FIRST], "Another length");
    else edit({ label: "Another length", patch: [{ op: "add", path: `${pointer}/-`, value: FIRST }] });
  };
  const remove = (at: number) => {
    if (list.length === 1) editField(pointer, undefined, "Not sold so");
    else edit({ label: "Not sold so", patch: [{ op: "remove", path: `${pointer}/${at}` }] });
  };
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
            <button type="button" className="button-plain small" disabled={!mine} onClick={() => remove(at)}>
              Not sold in this length
            </button>
          </p>
        </div>
      ))}
      <p className="field-wide">
        <button type="button" className="button-plain small" disabled={!mine} onClick={add}>
          Also sold in another length
        </button>
      </p>
    </>
  );
}

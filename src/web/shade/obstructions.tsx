import { Field } from "../inputs/field.tsx";
import { choice, length, text } from "../inputs/spec.ts";
import { addToList, removeFromList, useCanEdit, useField } from "../state/fields.ts";

const KIND = choice("What is in the way", {
  handle: "a handle",
  crank: "a crank",
  sill: "a sill",
  tiles: "tiles",
  other: "something else",
});
const PROJECTION = length("Stands out by");
const NOTE = text("Note", 4000);

/** Handles and the like that the shade must clear. */
export function Obstructions({ pointer }: { pointer: string }) {
  const held = useField(pointer);
  const mine = useCanEdit();
  const list = Array.isArray(held) ? held : [];
  const add = () => addToList(pointer, { kind: "handle", projectionMm: 50 }, "Add an obstruction");
  const remove = (at: number) => removeFromList(pointer, at, "Remove an obstruction");
  return (
    <div>
      {list.map((_, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: obstructions have no name of their own; their place is it
        <div className="fields obstruction" key={at}>
          <Field pointer={`${pointer}/${at}/kind`} spec={KIND} needed="choose one" />
          <Field
            pointer={`${pointer}/${at}/projectionMm`}
            spec={PROJECTION}
            needed="a length is needed here"
          />
          <Field pointer={`${pointer}/${at}/note`} spec={NOTE} />
          <button type="button" className="button-plain small" disabled={!mine} onClick={() => remove(at)}>
            Remove this
          </button>
        </div>
      ))}
      <button type="button" className="button-plain" disabled={!mine || list.length >= 20} onClick={add}>
        Add a handle, crank or sill that is in the way
      </button>
    </div>
  );
}

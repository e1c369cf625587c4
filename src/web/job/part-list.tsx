import type { ReactNode } from "react";
import { Field } from "../inputs/field.tsx";
import type { FieldSpec } from "../inputs/spec.ts";
import { newId } from "../persistence/new-id.ts";
import { addToList, useCanEdit, useField } from "../state/fields.ts";
import { edit } from "../state/store.ts";

interface Named {
  id: string;
  name: string;
}

interface PartListProps {
  /** What one of them is called: “cord”. */
  kind: string;
  /** Pointer of the maker's own list. */
  pointer: string;
  /** Stand-ins of the catalogue; a copy of one can be changed. */
  catalogue: readonly Named[];
  fields: Readonly<Record<string, FieldSpec>>;
  /** Fields without which such a thing cannot be. */
  needed: readonly string[];
  more?: (pointer: string) => ReactNode;
}

/** The maker's own cloths or parts of one kind, and the stand-ins to begin from. */
export function PartList(props: PartListProps) {
  const { kind, pointer, catalogue, fields, needed, more } = props;
  const mine = useCanEdit();
  const own = (useField(pointer) as Named[] | undefined) ?? [];
  const ids = new Set(own.map((part) => part.id));
  const standIns = catalogue.filter((part) => !ids.has(part.id));
  const copyable = catalogue[0];
  return (
    <div>
      {own.map((part, at) => (
        <div key={part.id} className="part-card">
          <h3>
            {part.name}
            <span className="part-card-tools">
              <button
                type="button"
                className="button-plain small"
                disabled={!mine}
                onClick={() =>
                  edit({ label: `Remove ${part.name}`, patch: [{ op: "remove", path: `${pointer}/${at}` }] })
                }
              >
                Remove<span className="hidden-words"> {part.name}</span>
              </button>
            </span>
          </h3>
          <div className="fields">
            {Object.entries(fields).map(([name, spec]) => (
              <Field
                key={name}
                pointer={`${pointer}/${at}/${name}`}
                spec={spec}
                {...(needed.includes(name) ? { needed: "this must be known" } : { unset: "not said" })}
              />
            ))}
            {more?.(`${pointer}/${at}`)}
          </div>
        </div>
      ))}
      <p>
        {copyable ? (
          <button
            type="button"
            className="button button-small"
            disabled={!mine}
            onClick={() => addPart(pointer, { ...copyable, id: newId(kind), name: `My ${kind}` })}
          >
            Add a {kind} of your own
          </button>
        ) : null}
      </p>
      {standIns.length > 0 ? (
        <>
          <p className="quiet small">
            Stand-ins, invented for demonstration. Measure your own part and change it:
          </p>
          <ul className="catalogue">
            {standIns.map((part) => (
              <li key={part.id}>
                {part.name}
                <button
                  type="button"
                  className="button-plain small"
                  disabled={!mine}
                  onClick={() => addPart(pointer, part)}
                >
                  Change it to yours<span className="hidden-words">: {part.name}</span>
                </button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </div>
  );
}

/** Adds a part to the maker's own; it is no demonstration any more. */
function addPart(pointer: string, part: Named & { demo?: boolean }): void {
  const { demo: _, ...own } = part;
  addToList(pointer, own, `Add ${part.name}`);
}

import type { ReactNode } from "react";
import { CATALOGUE, notYetKnown, PART_SCHEMAS, type PartEntry, type PartKind } from "../../job/index.ts";
import { listed } from "../../words/index.ts";
import { More } from "../frame/more.tsx";
import { Field } from "../inputs/field.tsx";
import type { FieldSpec } from "../inputs/spec.ts";
import { newId } from "../persistence/new-id.ts";
import { screenSpelling } from "../spelt/screen-english.ts";
import { addToList, useCanEdit, useField } from "../state/fields.ts";
import { edit, openSection } from "../state/store.ts";

interface Named {
  id: string;
  name: string;
  colour?: string;
}

interface PartListProps {
  of: PartKind;
  /** What one of them is called: “cord”. */
  kind: string;
  /** Pointer of the maker's own list. */
  pointer: string;
  fields: Readonly<Record<string, FieldSpec>>;
  more?: (pointer: string) => ReactNode;
}

/** The maker's own cloths or parts of one kind. One begins empty: nothing of an example is ever taken for the maker's. */
export function PartList(props: PartListProps) {
  const { of, kind, pointer, fields, more } = props;
  const mine = useCanEdit();
  const own = (useField(pointer) as Named[] | undefined) ?? [];
  const ids = new Set(own.map((part) => part.id));
  const standIns = CATALOGUE[of].filter((part) => !ids.has(part.id));
  return (
    <div>
      {own.map((part, at) => (
        <div key={part.id} className="part-card part-folded">
          <NotYet of={of} part={part} fields={fields} />
          <More id={`part-${part.id}`} title={<PartTitle part={part} />}>
            <div className="fields">
              {Object.entries(fields).map(([name, spec]) => (
                <Field key={name} pointer={`${pointer}/${at}/${name}`} spec={spec} unset="not known" />
              ))}
              {more?.(`${pointer}/${at}`)}
            </div>
            <p>
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
            </p>
          </More>
        </div>
      ))}
      <p>
        <button
          type="button"
          className="button button-small"
          disabled={!mine}
          onClick={() => {
            const part = PART_SCHEMAS[of].parse({ id: newId(kind), name: screenSpelling()(`My ${kind}`) });
            addToList(pointer, part, `Add ${part.name}`);
            openSection(`part-${part.id}`, true);
          }}
        >
          Add a {kind} of your own
        </button>
      </p>
      {standIns.length > 0 ? (
        <p className="quiet small">
          Examples, invented for demonstration, until you enter your own:{" "}
          {listed(standIns.map(({ name }) => name))}.
        </p>
      ) : null}
    </div>
  );
}

/** A cloth with its colour, where that was given. */
function PartTitle({ part }: { part: Named }) {
  return (
    <h3>
      {part.colour === undefined ? null : (
        <span className="part-colour" aria-hidden="true" style={{ background: part.colour }} />
      )}
      {part.name}
    </h3>
  );
}

/** What must be known of a part before it is planned with. */
function NotYet({ of, part, fields }: { of: PartKind; part: Named; fields: PartListProps["fields"] }) {
  const unknown = notYetKnown(of, part as PartEntry);
  if (unknown.length === 0) return null;
  return (
    <p className="small" role="note">
      Not planned with yet. Not known:{" "}
      {listed(unknown.map((name) => fields[name]?.label.toLowerCase() ?? name))}.
    </p>
  );
}

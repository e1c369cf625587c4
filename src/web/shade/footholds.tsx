import { type Foothold, footholdsOf } from "../../job/index.ts";
import { inches, lengthText } from "../../units/index.ts";
import { Field } from "../inputs/field.tsx";
import { choice, length, text } from "../inputs/spec.ts";
import { editField, removeFromList, useCanEdit, useField, useUnits } from "../state/fields.ts";

const KIND_WORDS = {
  bed: "a bed",
  cot: "a cot",
  chair: "a chair or sofa",
  "window-seat": "a window seat",
  stairs: "stairs",
  landing: "a landing",
  furniture: "other furniture",
} as const;
const KIND = choice("A child can stand on", KIND_WORDS);
const HEIGHT = length("Its height", "where a child stands, above the floor");
const NOTE = text("Note", 4000);

/** Beds, seats, stairs and furniture from which a child reaches higher: heights of cords are counted from there too. */
export function Footholds({ pointer }: { pointer: string }) {
  const list = `${pointer}/footholds`;
  const held = useField(list);
  const earlier = useField(`${pointer}/footholdMm`);
  const mine = useCanEdit();
  const units = useUnits();
  const seatMm = units.system === "imperial" ? inches(18) : 450;
  const footholds = Array.isArray(held) ? held : [];
  const older = held === undefined && typeof earlier === "number" ? footholdsOf({ footholdMm: earlier }) : [];
  const isAsked = held === undefined && earlier === undefined;
  // What an older file says becomes one of the list with the first change.
  const add = (...more: Foothold[]) =>
    editField(list, [...(older ?? []), ...footholds, ...more], "Something to stand on");
  const remove = (at: number) => removeFromList(list, at, "Remove something to stand on");
  return (
    <div data-pointer={list}>
      {older?.map(({ kind, heightMm }) => (
        <p className="obstruction" key={kind}>
          {KIND_WORDS[kind]}, {lengthText(heightMm, units)} high.{" "}
          <button type="button" className="button-plain small" disabled={!mine} onClick={() => add()}>
            Change it
          </button>
        </p>
      ))}
      {footholds.map((_, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: footholds have no name of their own; their place is it
        <div className="fields obstruction" key={at}>
          <Field pointer={`${list}/${at}/kind`} spec={KIND} needed="choose one" />
          <Field pointer={`${list}/${at}/heightMm`} spec={HEIGHT} needed="a height is needed here" />
          <Field pointer={`${list}/${at}/note`} spec={NOTE} />
          <button type="button" className="button-plain small" disabled={!mine} onClick={() => remove(at)}>
            Remove this
          </button>
        </div>
      ))}
      <button
        type="button"
        className="button-plain"
        disabled={!mine || footholds.length >= 12}
        onClick={() => add({ kind: "chair", heightMm: seatMm })}
      >
        Add a bed, seat, stairs or furniture that a child can stand on
      </button>
      {isAsked ? (
        <>
          {" "}
          <button
            type="button"
            className="button-plain"
            disabled={!mine}
            onClick={() => editField(list, [], "There is nothing to stand on")}
          >
            There is nothing to stand on
          </button>
        </>
      ) : null}
    </div>
  );
}

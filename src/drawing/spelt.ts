import { asWritten, type Spell } from "../words/index.ts";
import type { Drawing, Primitive } from "./model.ts";

/** The drawing with its words in the English of the reader: before it is laid out, since they take room. */
export function speltDrawing(drawing: Drawing, spell: Spell): Drawing {
  if (spell === asWritten) return drawing;
  return {
    ...drawing,
    title: spell(drawing.title),
    caption: spell(drawing.caption),
    primitives: drawing.primitives.map((one) => speltPrimitive(one, spell)),
    facts: drawing.facts.map(({ label, text }) => ({ label: spell(label), text: spell(text) })),
  };
}

function speltPrimitive(one: Primitive, spell: Spell): Primitive {
  switch (one.kind) {
    case "text":
    case "callout":
      return { ...one, text: spell(one.text) };
    case "dimension":
      return one.label === undefined ? one : { ...one, label: spell(one.label) };
    case "marker":
    case "polyline":
    case "circle":
    case "facets":
      return one;
  }
}

import { asWritten, type Spell } from "../../words/index.ts";
import { screenSpelling } from "./screen-english.ts";

/** Properties that are read or heard, of elements and of components that hand them on. */
const SAID = [
  ..."alt aria-description aria-label aria-placeholder aria-roledescription aria-valuetext".split(" "),
  ..."label placeholder title".split(" "),
];

function speltChild(child: unknown, spell: Spell): unknown {
  if (typeof child === "string") return spell(child);
  return Array.isArray(child) ? child.map((one) => (typeof one === "string" ? spell(one) : one)) : child;
}

/** The properties of an element with its words in the English of the screen. What is typed into fields stays. */
export function speltProps<Props>(props: Props): Props {
  const spell = screenSpelling();
  if (spell === asWritten || typeof props !== "object" || props === null) return props;
  const spelt = { ...props } as Record<string, unknown>;
  for (const name of SAID) {
    const value = spelt[name];
    if (typeof value === "string") spelt[name] = spell(value);
  }
  if ("children" in spelt) spelt.children = speltChild(spelt.children, spell);
  return spelt as Props;
}

import type { Figure } from "./figure-rule.ts";

const OF_FIGURE = "figure:";

/**
 * The fields that a figure rests on, as its rule and those of the figures behind it name them (`fold/rows`,
 * `opening/widthsMm`, `shade/face`), the nearest first; empty for a figure that is not there. `given` names the fields
 * that stand where a figure would, had it been worked out.
 */
export function fieldsBehind(
  all: ReadonlyMap<string, Figure>,
  id: string,
  given: Readonly<Record<string, readonly string[]>> = {},
): string[] {
  const fields = new Set<string>();
  const seen = new Set<string>();
  let next = idsLike(all, id);
  while (next.length > 0) {
    const behind: string[] = [];
    for (const one of next) {
      const figure = all.get(one);
      if (figure === undefined || seen.has(one)) continue;
      seen.add(one);
      for (const on of figure.rule.restsOn(figure.of)) {
        if (!on.startsWith(OF_FIGURE)) fields.add(on);
        else {
          const name = on.slice(OF_FIGURE.length);
          behind.push(...idsLike(all, name));
          if (!all.has(name)) for (const field of given[name] ?? []) fields.add(field);
        }
      }
    }
    next = behind;
  }
  return [...fields];
}

/** Ids that a name stands for; a `*` in it for any characters of one part between dots. */
function idsLike(all: ReadonlyMap<string, Figure>, name: string): string[] {
  if (!name.includes("*")) return all.has(name) ? [name] : [];
  const [before = "", after = ""] = name.split("*");
  return [...all.keys()].filter(
    (id) =>
      id.length >= before.length + after.length &&
      id.startsWith(before) &&
      id.endsWith(after) &&
      !id.slice(before.length, id.length - after.length).includes("."),
  );
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? "";
  return items.length < 2 ? last : `${items.slice(0, -1).join(", ")} and ${last}`;
}

/** `1 ring`, `35 rings`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Sentences that apply, as one text. */
export function sentences(...parts: (string | undefined | false)[]): string {
  return parts.filter((part) => typeof part === "string" && part !== "").join(" ");
}

/** `column 1 at 2 in, 2 at 10 in and 3 at 18 in`: the thing is named once. */
export function placed(
  name: string,
  items: readonly { number: number; at: string }[],
  preposition: "at" | "to" = "at",
): string {
  return listed(
    items.map(({ number, at }, i) => `${i === 0 ? `${name} ` : ""}${number} ${preposition} ${at}`),
  );
}

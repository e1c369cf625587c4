import { listed } from "../words/index.ts";
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

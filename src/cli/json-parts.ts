import { writeInParts } from "./write-in-parts.ts";

/** Lists longer than this are written some of their entries at a time. */
const MANY = 500;
const INDENT = "  ";

/**
 * The same text as `JSON.stringify(value, null, 2)`, part by part: that of a contract at once would fill the memory.
 *
 * @param value data alone: nothing with a form of its own for JSON
 */
export function* jsonParts(value: unknown, indent = ""): Generator<string> {
  if (Array.isArray(value) && value.length > MANY) {
    for (let from = 0; from < value.length; from += MANY) {
      const some = value.slice(from, from + MANY).map((one) => whole(one, indent + INDENT));
      yield `${from === 0 ? "[" : ","}\n${some.map((text) => indent + INDENT + text).join(`,\n`)}`;
    }
    yield `\n${indent}]`;
  } else if (typeof value === "object" && value !== null && !isFlat(value)) {
    const [open, close] = Array.isArray(value) ? "[]" : "{}";
    const entries = Object.entries(value).filter(([, one]) => one !== undefined || Array.isArray(value));
    for (const [n, [key, one]] of entries.entries()) {
      const name = Array.isArray(value) ? "" : `${JSON.stringify(key)}: `;
      yield `${n === 0 ? open : ","}\n${indent}${INDENT}${name}`;
      yield* jsonParts(one ?? null, indent + INDENT);
    }
    yield `\n${indent}${close}`;
  } else yield whole(value, indent);
}

/** Nothing in it is a list or a group: none of it is long. */
function isFlat(value: object): boolean {
  return Object.values(value).every((one) => typeof one !== "object" || one === null);
}

function whole(value: unknown, indent: string): string {
  return (JSON.stringify(value, null, INDENT.length) ?? "null").replaceAll("\n", `\n${indent}`);
}

/** The whole text with a line's end behind it, as bytes, into whatever takes it. */
export async function writeJson(value: unknown, write: (chunk: Uint8Array) => Promise<void>): Promise<void> {
  await writeInParts(jsonLines(value), write);
}

function* jsonLines(value: unknown): Generator<string> {
  yield* jsonParts(value);
  yield "\n";
}

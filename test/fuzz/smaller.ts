import { type JsonPlace, type JsonValue, placesIn, put, takeOut } from "./places.ts";

/**
 * A smaller text that goes wrong in the same way: parts of a document are left out and numbers made plain, or, of what is
 * no document, stretches of characters left out, the largest first.
 * @param isAlike whether a text goes wrong as the first one does
 * @param mostTries texts looked at before one is content
 */
export async function smaller(
  text: string,
  isAlike: (text: string) => Promise<boolean>,
  mostTries: number,
): Promise<string> {
  let tries = mostTries;
  const fails = async (one: string) => tries-- > 0 && (await isAlike(one));
  const document = documentIn(text);
  return document !== undefined && (await fails(JSON.stringify(document)))
    ? smallerDocument(document, fails)
    : fewerCharacters(text, fails);
}

function documentIn(text: string): JsonValue | undefined {
  try {
    const value = JSON.parse(text) as JsonValue;
    return typeof value === "object" && value !== null ? value : undefined;
  } catch {
    return undefined;
  }
}

type Fails = (text: string) => Promise<boolean>;

async function smallerDocument(document: JsonValue, fails: Fails): Promise<string> {
  let best = JSON.stringify(document);
  for (let changed = true; changed; ) {
    changed = false;
    for (const change of [takeOutAt, makePlainAt]) {
      // From the outside in: what holds much goes first. Places behind one that went move up to where it stood.
      for (let at = 0; at < placesIn(JSON.parse(best)).length; ) {
        const tried = change(JSON.parse(best), at);
        if (tried !== undefined && tried.length < best.length && (await fails(tried))) {
          best = tried;
          changed = true;
        } else at++;
      }
    }
  }
  return best;
}

function takeOutAt(document: JsonValue, at: number): string {
  const { holder, key } = placesIn(document)[at] as JsonPlace;
  takeOut(holder, key);
  return JSON.stringify(document);
}

function makePlainAt(document: JsonValue, at: number): string | undefined {
  const { holder, key } = placesIn(document)[at] as JsonPlace;
  const value = (holder as Record<string, JsonValue>)[key];
  if (typeof value === "number" && !Number.isInteger(value))
    put(holder, key, Number(value.toPrecision(value > 10 ? 2 : 1)));
  else if (typeof value === "string" && value.length > 1) put(holder, key, value.slice(0, value.length >> 1));
  else return undefined;
  return JSON.stringify(document);
}

async function fewerCharacters(text: string, fails: Fails): Promise<string> {
  let best = text;
  for (let size = best.length >> 1; size >= 1; size >>= 1) {
    for (let from = 0; from < best.length; ) {
      const tried = best.slice(0, from) + best.slice(from + size);
      if (await fails(tried)) best = tried;
      else from += size;
    }
  }
  return best;
}

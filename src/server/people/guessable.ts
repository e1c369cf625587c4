import type { ZxcvbnFactory } from "@zxcvbn-ts/core";
import { Refused } from "../refused.ts";

/**
 * Guesses that a new password must outlast, as a power of ten: 10^8 is where the estimate calls a password safely
 * unguessable for whoever has to ask the server each time (D. Wheeler, “zxcvbn: low-budget password strength
 * estimation”, USENIX Security 2016).
 */
const LEAST_GUESSES_LOG10 = 8;

/** A longer text is judged by its beginning: the estimate takes its time. */
const JUDGED_LENGTH = 100;

let estimate: Promise<ZxcvbnFactory> | undefined;

/** The lists are large: only a new password waits for them. */
async function loadEstimate(): Promise<ZxcvbnFactory> {
  const [{ ZxcvbnFactory }, { adjacencyGraphs, dictionary }] = await Promise.all([
    import("@zxcvbn-ts/core"),
    import("@zxcvbn-ts/language-common"),
  ]);
  return new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs });
}

/**
 * Refuses a new password that is on lists of known ones, or made of them, of rows of keys, repeats, days and the words
 * of the person's own that come with it (NIST SP 800-63B-4, 3.1.1.2: a blocklist, without rules on kinds of letters).
 * @throws {Refused}
 */
export async function refuseGuessable(password: string, own: readonly (string | undefined)[]): Promise<void> {
  estimate ??= loadEstimate();
  const words = own.flatMap((text = "") => [text, ...text.split(/\s+/)]);
  const { guessesLog10 } = (await estimate).check(password.slice(0, JUDGED_LENGTH), words);
  if (guessesLog10 >= LEAST_GUESSES_LOG10) return;
  throw new Refused(400, "That password is too easy to guess.", [
    {
      field: "password",
      given: "one that is known, or made of known words, names, days or rows of keys",
      wanted: "a few words that have nothing to do with each other",
    },
  ]);
}

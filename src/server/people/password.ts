import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from "node:crypto";

/**
 * Cost of one guess: N = 2^17, r = 8, p = 1, as OWASP's Password Storage Cheat Sheet sets for scrypt (recalled, read again
 * when it changes). It takes 128 MB, so only a few at a time.
 */
const USUAL_COST = 17;
const BLOCK = 8;
const MOST_AT_ONCE = 2;
const KEY_BYTES = 32;

let working = 0;
const waiting: (() => void)[] = [];

async function derived(password: string, salt: Uint8Array, cost: number): Promise<Buffer> {
  if (working >= MOST_AT_ONCE) await new Promise<void>((go) => waiting.push(go));
  working++;
  try {
    const options: ScryptOptions = { N: 2 ** cost, r: BLOCK, p: 1, maxmem: 2 ** cost * BLOCK * 256 };
    return await new Promise((done, fail) => {
      scrypt(password.normalize("NFKC"), salt, KEY_BYTES, options, (error, key) =>
        error ? fail(error) : done(key),
      );
    });
  } finally {
    working--;
    waiting.shift()?.();
  }
}

/** What is kept of a password. */
export async function passwordHash(password: string, cost = USUAL_COST): Promise<string> {
  const salt = randomBytes(16);
  const key = await derived(password, salt, cost);
  return `scrypt$${cost}$${salt.toString("base64url")}$${key.toString("base64url")}`;
}

/** Stands in for the password of someone who is not there, so that the answer takes as long. */
const NOBODY = `scrypt$${USUAL_COST}$${"A".repeat(22)}$${"A".repeat(43)}`;

export async function isPassword(password: string, kept: string | null | undefined): Promise<boolean> {
  const [, cost = "", salt = "", key = ""] = (kept ?? NOBODY).split("$");
  const wanted = Buffer.from(key, "base64url");
  const given = await derived(password, Buffer.from(salt, "base64url"), Number(cost));
  return timingSafeEqual(given, wanted) && typeof kept === "string";
}

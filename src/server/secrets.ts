import { createHash, randomBytes, timingSafeEqual } from "node:crypto";

/** Of 192 bits: nobody guesses it, so a plain hash of it is enough to keep. */
export function newSecret(): string {
  return randomBytes(24).toString("base64url");
}

/** What is kept of a secret. */
export function hashOf(secret: string): Uint8Array {
  return createHash("sha256").update(secret).digest();
}

/** A secret as it is handed over: whose workroom it belongs to, then itself. */
export function tokenOf(workroomId: string, secret: string): string {
  return `${workroomId}.${secret}`;
}

const TOKEN = /^([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})\.([A-Za-z0-9_-]{20,64})$/;

/** Both parts of a token; undefined where it is none. */
export function readToken(token: string): { workroomId: string; secret: string } | undefined {
  const [, workroomId, secret] = TOKEN.exec(token) ?? [];
  return workroomId === undefined || secret === undefined ? undefined : { workroomId, secret };
}

/** Whether two secrets are alike, in a time that does not tell how far they are. */
export function isSameSecret(one: string, other: string): boolean {
  return timingSafeEqual(hashOf(one), hashOf(other));
}

/** Letters and digits that are not taken for each other when they are copied by hand. */
const PLAIN = "23456789abcdefghjkmnpqrstuvwxyz";

/** A code for paper: four groups of five, about 99 bits. */
export function newCode(): string {
  const letters = [...randomBytes(20)].map((byte) => PLAIN[byte % PLAIN.length]);
  return [0, 5, 10, 15].map((at) => letters.slice(at, at + 5).join("")).join("-");
}

/** A code as it is kept, however it was typed. */
export function hashOfCode(typed: string): Uint8Array {
  return hashOf(typed.toLowerCase().replace(/[^a-z0-9]/g, ""));
}

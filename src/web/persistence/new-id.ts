/** An id for what is sent to a workroom, so that what is sent twice is done once: a UUID. */
export function newUuid(): string {
  return crypto.randomUUID();
}

/** An id that no other thing has: letters and digits only, as the schema asks. */
export function newId(kind: string): string {
  const random = crypto.getRandomValues(new Uint32Array(2));
  return `${kind}-${[...random].map((part) => part.toString(36)).join("")}`;
}

/** An id that no other thing has: letters and digits only, as the schema asks. */
export function newId(kind: string): string {
  const random = crypto.getRandomValues(new Uint32Array(2));
  return `${kind}-${[...random].map((part) => part.toString(36)).join("")}`;
}

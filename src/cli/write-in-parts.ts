/** Text in parts as bytes, into whatever takes it, some parts at a time. */
export async function writeInParts(
  parts: Iterable<string>,
  write: (chunk: Uint8Array) => Promise<void>,
): Promise<void> {
  const encoder = new TextEncoder();
  let held = "";
  for (const part of parts) {
    held += part;
    if (held.length < LEAST_WRITTEN) continue;
    await write(encoder.encode(held));
    held = "";
  }
  if (held !== "") await write(encoder.encode(held));
}

/** Letters or bytes that are worth a write of their own. */
export const LEAST_WRITTEN = 65_536;

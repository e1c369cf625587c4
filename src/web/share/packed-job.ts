import { type Job, type OpenedJob, openJobText } from "../../job/index.ts";

/** A link that is longer is cut off by too many programs that pass it on, characters. */
export const LONGEST_PACKED = 6000;
/** A few thousand characters can swell to any size: no job that fits a link is larger, characters. */
const LARGEST_UNPACKED = 2_000_000;

/**
 * A job as text for the end of a link: its JSON, deflated, in the alphabet of addresses (RFC 1951, RFC 4648 section 5).
 * Pictures of cloth are left out. Undefined where it is too long for a link.
 */
export async function packJob(job: Job): Promise<string | undefined> {
  const cloths = job.cloths.map(({ photo: _, ...cloth }) => cloth);
  const bytes = new TextEncoder().encode(JSON.stringify({ ...job, cloths }));
  const packed = await new Response(
    new Blob([bytes]).stream().pipeThrough(new CompressionStream("deflate-raw")),
  ).arrayBuffer();
  const text = toBase64Url(new Uint8Array(packed));
  return text.length <= LONGEST_PACKED ? text : undefined;
}

/** Reads what `packJob` wrote. Never throws: whatever is wrong comes back as issues. */
export async function unpackJob(packed: string): Promise<OpenedJob> {
  try {
    return openJobText(await inflated(fromBase64Url(packed)));
  } catch (error) {
    const given = error instanceof RangeError ? error.message : "a link that was cut short or changed";
    return { ok: false, issues: [{ field: "(link)", given, wanted: "the whole link as it was made" }] };
  }
}

async function inflated(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const reader = new Blob([bytes])
    .stream()
    .pipeThrough(new DecompressionStream("deflate-raw"))
    .pipeThrough(new TextDecoderStream())
    .getReader();
  let text = "";
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    text += part.value;
    if (text.length > LARGEST_UNPACKED) {
      await reader.cancel();
      throw new RangeError(`more than ${LARGEST_UNPACKED / 1e6} million characters`);
    }
  }
  return text;
}

function toBase64Url(bytes: Uint8Array): string {
  let binary = "";
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> {
  const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}

import { createHash } from "node:crypto";
import { LARGEST_PHOTO_CHARS } from "../../job/index.ts";
import { openCodecs, type Pixels } from "./codecs.ts";
import { pictureHead } from "./picture-size.ts";

/** The planner makes pictures of 900 px; what has more than this is no picture of ours, or a trap. */
const MOST_PIXELS = 4_194_304;
const MOST_SIDE_PX = 8192;
const QUALITIES = [88, 75, 60, 40];
/** Pictures of which is remembered what became of them, and hashes of pictures that were made here. */
const MOST_REMEMBERED = 60;
const MOST_OWN = 10_000;

/** Why a picture is not taken. */
export class PictureUnfit extends Error {}

const became = new Map<string, string>();
/** Made here: they need not be made again, and lose nothing on their way through undo and copies. */
const own = new Set<string>();

/**
 * A picture of ours from one that anyone sent: its head is read before it is unpacked, what it shows is written anew as
 * JPEG, and nothing else of it stays, neither place nor device nor what hides behind its end.
 * @param url as a job holds it, a data URL
 * @throws {PictureUnfit} where it is none, or too large
 */
export async function encodeAgain(url: string): Promise<string> {
  const hash = hashOf(url);
  if (own.has(hash)) return url;
  const known = became.get(hash);
  if (known !== undefined) return known;
  const bytes = Buffer.from(url.slice(url.indexOf(",") + 1), "base64");
  const head = pictureHead(bytes);
  if (head === undefined) throw new PictureUnfit("a picture: PNG, JPEG or WebP");
  const { kind, widthPx, heightPx } = head;
  const isFit = widthPx > 0 && heightPx > 0 && Math.max(widthPx, heightPx) <= MOST_SIDE_PX;
  if (!isFit || widthPx * heightPx > MOST_PIXELS) {
    throw new PictureUnfit(`a picture of at most ${MOST_PIXELS.toLocaleString("en")} pixels`);
  }
  const { decode, encodeJpeg } = await openCodecs();
  const pixels = await unpacked(() => decode[kind](new Uint8Array(bytes).buffer));
  if (pixels.width * pixels.height !== widthPx * heightPx) throw new PictureUnfit("a picture that is whole");
  onWhite(pixels);
  for (const quality of QUALITIES) {
    const made = Buffer.from(await encodeJpeg(pixels, quality)).toString("base64");
    const ours = `data:image/jpeg;base64,${made}`;
    if (ours.length > LARGEST_PHOTO_CHARS) continue;
    remember(hash, ours);
    return ours;
  }
  throw new PictureUnfit("a picture with less detail, or smaller");
}

/** What became of a picture lately; itself where that is not known. */
export function ownPicture(url: string): string {
  return became.get(hashOf(url)) ?? url;
}

async function unpacked(decode: () => Promise<Pixels>): Promise<Pixels> {
  try {
    return await decode();
  } catch {
    throw new PictureUnfit("a picture that can be opened");
  }
}

function remember(hash: string, made: string): void {
  if (became.size >= MOST_REMEMBERED) became.delete(became.keys().next().value ?? "");
  became.set(hash, made);
  if (own.size >= MOST_OWN) own.clear();
  own.add(hashOf(made));
}

function hashOf(url: string): string {
  return createHash("sha256").update(url).digest("base64");
}

/** JPEG has no alpha: what shines through becomes white. */
function onWhite({ data }: Pixels): void {
  for (let at = 0; at < data.length; at += 4) {
    const alpha = (data[at + 3] ?? 255) / 255;
    if (alpha === 1) continue;
    for (const one of [at, at + 1, at + 2]) data[one] = (data[one] ?? 0) * alpha + 255 * (1 - alpha);
    data[at + 3] = 255;
  }
}

/** What the first bytes of a picture tell of it. */
export interface ImageHead {
  kind: "png" | "jpeg" | "webp";
  widthPx: number;
  heightPx: number;
}

/** Larger files and pictures are not unpacked: a small file can hold a picture that fills all memory. */
export const LARGEST_FILE_BYTES = 40e6;
const LARGEST_PX = 16_000;
const MOST_PIXELS = 80e6;

/**
 * Kind and size of a picture by its own head: PNG (ISO/IEC 15948, §11.2.2), JPEG (ITU-T T.81, §B.2.2), WebP (RFC 9649).
 * Undefined where the bytes are none of these.
 */
export function imageHead(bytes: Uint8Array): ImageHead | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (hasText(bytes, 1, "PNG\r\n") && hasText(bytes, 12, "IHDR") && bytes.length >= 24)
    return { kind: "png", widthPx: view.getUint32(16), heightPx: view.getUint32(20) };
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return jpegHead(view);
  if (hasText(bytes, 0, "RIFF") && hasText(bytes, 8, "WEBP")) return webpHead(bytes, view);
  return undefined;
}

/** Why a file is refused as a picture by its first bytes and its size, and what would do; undefined where it may be opened. */
export function refusedImage(name: string, bytes: Uint8Array, fileBytes = bytes.length): string | undefined {
  const will = "A photo as JPEG, PNG or WebP will do.";
  if (fileBytes > LARGEST_FILE_BYTES)
    return `“${name}” has ${Math.round(fileBytes / 1e6)} MB: at most ${LARGEST_FILE_BYTES / 1e6} MB. ${will}`;
  const head = imageHead(bytes);
  if (head === undefined) return `“${name}” cannot be read as a picture. ${will}`;
  const { widthPx, heightPx } = head;
  if (widthPx < 16 || heightPx < 16)
    return `“${name}” is ${widthPx} × ${heightPx} pixels: too small to show anything. ${will}`;
  if (Math.max(widthPx, heightPx) > LARGEST_PX || widthPx * heightPx > MOST_PIXELS)
    return `“${name}” is ${widthPx} × ${heightPx} pixels: at most ${LARGEST_PX} to a side and ${MOST_PIXELS / 1e6} million in all. Make it smaller first.`;
  return undefined;
}

/** From marker to marker to the frame that has the size. */
function jpegHead(view: DataView): ImageHead | undefined {
  let at = 2;
  while (at + 9 < view.byteLength) {
    if (view.getUint8(at) !== 0xff) return undefined;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at++;
      continue;
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { kind: "jpeg", heightPx: view.getUint16(at + 5), widthPx: view.getUint16(at + 7) };
    const length = view.getUint16(at + 2);
    if (length < 2) return undefined;
    at += 2 + length;
  }
  return undefined;
}

function webpHead(bytes: Uint8Array, view: DataView): ImageHead | undefined {
  if (bytes.length < 30) return undefined;
  if (hasText(bytes, 12, "VP8X")) {
    const three = (at: number) => view.getUint16(at, true) + 65_536 * view.getUint8(at + 2);
    return { kind: "webp", widthPx: three(24) + 1, heightPx: three(27) + 1 };
  }
  if (hasText(bytes, 12, "VP8L") && bytes[20] === 0x2f) {
    const bits = view.getUint32(21, true);
    return { kind: "webp", widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1 };
  }
  if (hasText(bytes, 12, "VP8 "))
    return {
      kind: "webp",
      widthPx: view.getUint16(26, true) & 0x3fff,
      heightPx: view.getUint16(28, true) & 0x3fff,
    };
  return undefined;
}

function hasText(bytes: Uint8Array, at: number, text: string): boolean {
  return [...text].every((letter, k) => bytes[at + k] === letter.charCodeAt(0));
}

export interface PictureHead {
  kind: "jpeg" | "png" | "webp";
  widthPx: number;
  heightPx: number;
}

/**
 * What a picture says of itself in its first bytes, read before anything is unpacked; undefined where it is none of the
 * three. PNG: ISO/IEC 15948, 11.2.2 IHDR. JPEG: ITU-T T.81, B.2.2 frame header. WebP: RFC 9649, 2.5 to 2.7.
 */
export function pictureHead(bytes: Buffer): PictureHead | undefined {
  if (bytes.length >= 24 && bytes.toString("latin1", 0, 8) === "\x89PNG\r\n\x1a\n") {
    if (bytes.toString("latin1", 12, 16) !== "IHDR") return undefined;
    return { kind: "png", widthPx: bytes.readUInt32BE(16), heightPx: bytes.readUInt32BE(20) };
  }
  if (bytes.length >= 4 && bytes.readUInt16BE(0) === 0xff_d8) return jpegHead(bytes);
  const isWebp = bytes.toString("latin1", 0, 4) === "RIFF" && bytes.toString("latin1", 8, 12) === "WEBP";
  return bytes.length >= 30 && isWebp ? webpHead(bytes) : undefined;
}

/** Frame headers are C0 to CF but for C4, C8 and CC, which are tables and reserved. */
const NO_FRAME = new Set([0xc4, 0xc8, 0xcc]);

function jpegHead(bytes: Buffer): PictureHead | undefined {
  for (let at = 2; at + 9 <= bytes.length; ) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = bytes[at + 1] ?? 0;
    // Bytes that only fill up.
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker >= 0xc0 && marker <= 0xcf && !NO_FRAME.has(marker)) {
      return { kind: "jpeg", heightPx: bytes.readUInt16BE(at + 5), widthPx: bytes.readUInt16BE(at + 7) };
    }
    // Nothing but tables and notes stands before the frame.
    if (marker < 0xc0 || marker === 0xd9 || marker === 0xda) return undefined;
    at += 2 + bytes.readUInt16BE(at + 2);
  }
  return undefined;
}

function webpHead(bytes: Buffer): PictureHead | undefined {
  const chunk = bytes.toString("latin1", 12, 16);
  if (chunk === "VP8X") {
    return { kind: "webp", widthPx: 1 + bytes.readUIntLE(24, 3), heightPx: 1 + bytes.readUIntLE(27, 3) };
  }
  if (chunk === "VP8L") {
    const bits = bytes.readUInt32LE(21);
    return { kind: "webp", widthPx: 1 + (bits & 0x3f_ff), heightPx: 1 + ((bits >>> 14) & 0x3f_ff) };
  }
  if (chunk !== "VP8 ") return undefined;
  return {
    kind: "webp",
    widthPx: bytes.readUInt16LE(26) & 0x3f_ff,
    heightPx: bytes.readUInt16LE(28) & 0x3f_ff,
  };
}

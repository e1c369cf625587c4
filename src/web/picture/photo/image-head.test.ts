import fc from "fast-check";
import { expect, test } from "vitest";
import { imageHead, LARGEST_FILE_BYTES, refusedImage } from "./image-head.ts";

const bytes = (...parts: (string | number[])[]) =>
  Uint8Array.from(
    parts.flatMap((part) => (typeof part === "string" ? [...part].map((c) => c.charCodeAt(0)) : part)),
  );

// Heads as the standards lay them out, written by hand.
const PNG = bytes(
  [0x89],
  "PNG\r\n",
  [0x1a, 0x0a],
  [0, 0, 0, 13],
  "IHDR",
  [0, 0, 4, 0],
  [0, 0, 3, 0],
  [8, 2, 0, 0, 0],
);
const JPEG = bytes(
  [0xff, 0xd8],
  [0xff, 0xe0, 0, 16],
  "JFIF\0",
  [1, 1, 0, 0, 1, 0, 1, 0, 0],
  [0xff, 0xc2, 0, 17, 8, 0x02, 0x58, 0x03, 0x20, 3],
  new Array(9).fill(0),
);
const LOSSY = bytes(
  "RIFF",
  [30, 0, 0, 0],
  "WEBPVP8 ",
  [0, 0, 0, 0],
  [0, 0, 0, 0x9d, 0x01, 0x2a],
  [0x40, 0x01, 0xf0, 0x00],
);
const LOSSLESS = bytes(
  "RIFF",
  [30, 0, 0, 0],
  "WEBPVP8L",
  [0, 0, 0, 0],
  [0x2f],
  [0x3f, 0xc0, 0x3b, 0x00],
  [0, 0, 0, 0, 0],
);
const EXTENDED = bytes(
  "RIFF",
  [30, 0, 0, 0],
  "WEBPVP8X",
  [10, 0, 0, 0],
  [0, 0, 0, 0],
  [0x7f, 0x02, 0x00],
  [0xdf, 0x01, 0x00],
);

test.each([
  ["png", PNG, 1024, 768],
  ["jpeg", JPEG, 800, 600],
  ["webp", LOSSY, 320, 240],
  ["webp", LOSSLESS, 64, 240],
  ["webp", EXTENDED, 640, 480],
] as const)("%s: size from its head", (kind, head, widthPx, heightPx) => {
  expect(imageHead(head)).toEqual({ kind, widthPx, heightPx });
  expect(refusedImage("photo", head)).toBeUndefined();
});

test("what is no picture, or would fill all memory, is refused with what would do", () => {
  expect(refusedImage("notes.svg", bytes("<svg xmlns='http://www.w3.org/2000/svg'/>"))).toMatch(
    /notes\.svg.*cannot be read.*JPEG/,
  );
  const bomb = PNG.slice();
  bomb.set([0, 0, 0xf0, 0], 16);
  bomb.set([0, 0, 0xf0, 0], 20);
  expect(refusedImage("bomb.png", bomb)).toMatch(/61440 × 61440 pixels: at most/);
  expect(refusedImage("vast.png", PNG, LARGEST_FILE_BYTES + 1)).toMatch(/40 MB/);
  const speck = PNG.slice();
  speck.set([0, 0, 0, 1], 16);
  expect(refusedImage("speck.png", speck)).toMatch(/too small/);
});

test("whatever bytes come, it answers", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(PNG, JPEG, LOSSY, LOSSLESS, EXTENDED),
      fc.uint8Array({ maxLength: 40 }),
      fc.nat(40),
      (head, noise, at) => {
        const one = head.slice(0, Math.max(1, at));
        const mixed = Uint8Array.from([...one, ...noise]);
        const found = imageHead(mixed);
        if (found) expect(Number.isInteger(found.widthPx) && Number.isInteger(found.heightPx)).toBe(true);
        refusedImage("x", mixed);
      },
    ),
  );
});

import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";

/** Colours row by row, red, green, blue and alpha, a byte each. */
export interface Pixels {
  data: Uint8ClampedArray;
  width: number;
  height: number;
}

export interface Codecs {
  decode: Record<"jpeg" | "png" | "webp", (bytes: ArrayBuffer) => Promise<Pixels>>;
  encodeJpeg(pixels: Pixels, quality: number): Promise<ArrayBuffer>;
}

const require = createRequire(import.meta.url);

/** Node has it; the types of the core, which know no browser, do not name it. */
const { WebAssembly } = globalThis as unknown as {
  WebAssembly: { compile(bytes: Uint8Array): Promise<object> };
};

async function moduleAt(path: string): Promise<object> {
  return await WebAssembly.compile(await readFile(require.resolve(`@jsquash/${path}`)));
}

/** What the codecs make their results of; browsers have it, Node has not. */
class PlainPixels implements Pixels {
  data: Uint8ClampedArray;
  width: number;
  height: number;

  constructor(data: Uint8ClampedArray, width: number, height: number) {
    this.data = data;
    this.width = width;
    this.height = height;
  }
}

type Init = (module: object) => Promise<unknown>;

let opened: Promise<Codecs> | undefined;

/** The codecs, in WebAssembly: what a picture does to them stays within their own memory. Read once, when one comes. */
export function openCodecs(): Promise<Codecs> {
  opened ??= open();
  return opened;
}

async function open(): Promise<Codecs> {
  const known = globalThis as { ImageData?: unknown };
  known.ImageData ??= PlainPixels;
  const [jpeg, png, webp, encoder] = await Promise.all([
    import("@jsquash/jpeg/decode.js"),
    import("@jsquash/png/decode.js"),
    import("@jsquash/webp/decode.js"),
    import("@jsquash/jpeg/encode.js"),
  ]);
  await (jpeg.init as Init)(await moduleAt("jpeg/codec/dec/mozjpeg_dec.wasm"));
  await (png.init as Init)(await moduleAt("png/codec/pkg/squoosh_png_bg.wasm"));
  await (webp.init as Init)(await moduleAt("webp/codec/dec/webp_dec.wasm"));
  await (encoder.init as Init)(await moduleAt("jpeg/codec/enc/mozjpeg_enc.wasm"));
  return {
    decode: {
      // Turned as the camera noted: the note does not stay.
      jpeg: (bytes) => jpeg.default(bytes, { preserveOrientation: true }) as Promise<Pixels>,
      png: (bytes) => png.decode(bytes) as Promise<Pixels>,
      webp: (bytes) => webp.default(bytes) as Promise<Pixels>,
    },
    encodeJpeg: (pixels, quality) =>
      (encoder.default as (of: Pixels, options: { quality: number }) => Promise<ArrayBuffer>)(pixels, {
        quality,
      }),
  };
}

import { refusedImage } from "./image-head.ts";

/** A photo that was opened, or why it was not. */
export type OpenedPhoto = { kind: "opened"; bitmap: ImageBitmap } | { kind: "refused"; why: string };

/** Opens a file as a picture, upright as it was taken and no larger than `longestPx`; looks at its head before it is unpacked. */
export async function openPhoto(file: File, longestPx: number): Promise<OpenedPhoto> {
  const bytes = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
  const why = refusedImage(file.name, bytes, file.size);
  if (why !== undefined) return { kind: "refused", why };
  try {
    const whole = await createImageBitmap(file);
    const share = Math.min(1, longestPx / Math.max(whole.width, whole.height));
    if (share === 1) return { kind: "opened", bitmap: whole };
    const bitmap = await createImageBitmap(whole, {
      resizeWidth: Math.max(1, Math.round(whole.width * share)),
      resizeHeight: Math.max(1, Math.round(whole.height * share)),
      resizeQuality: "high",
    });
    whole.close();
    return { kind: "opened", bitmap };
  } catch {
    return {
      kind: "refused",
      why: `“${file.name}” cannot be read as a picture. A photo as JPEG, PNG or WebP will do.`,
    };
  }
}

/** Before the size of a JPEG other things may stand: a preview, a colour profile. */
const HEAD_BYTES = 1_000_000;

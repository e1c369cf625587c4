import { download } from "../persistence/job-file.ts";

/** A canvas as PNG; undefined where it is too large for the browser. */
export async function pngOfCanvas(canvas: HTMLCanvasElement): Promise<Blob | undefined> {
  const blob = await new Promise<Blob | null>((resolve) => {
    canvas.toBlob(resolve, "image/png");
  });
  return blob ?? undefined;
}

/** Hands a canvas to the one at the screen as a file. */
export async function savePng(canvas: HTMLCanvasElement, name: string): Promise<void> {
  const blob = await pngOfCanvas(canvas);
  if (blob) download(blob, `${name}.png`);
}

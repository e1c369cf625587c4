/** A clip may run so long, ms, with so many pictures a second. */
const CLIP_MS = 4000;
const PICTURES_A_SECOND = 25;
const BITS_A_SECOND = 6_000_000;
const KINDS = [
  "video/mp4;codecs=avc1",
  "video/webm;codecs=vp9",
  "video/webm;codecs=vp8",
  "video/webm",
] as const;

/** The kind of clip that this browser can write; undefined where it can write none. */
export function clipKind(): string | undefined {
  if (typeof MediaRecorder === "undefined" || !("captureStream" in HTMLCanvasElement.prototype))
    return undefined;
  return KINDS.find((kind) => MediaRecorder.isTypeSupported(kind));
}

/** Records a canvas while `show` is called with a share from 0 to 1, and gives the clip with its file ending. */
export async function recordClip(
  canvas: HTMLCanvasElement,
  show: (share: number) => void,
): Promise<{ blob: Blob; ending: string } | undefined> {
  const mimeType = clipKind();
  if (mimeType === undefined) return undefined;
  const stream = canvas.captureStream(PICTURES_A_SECOND);
  const recorder = new MediaRecorder(stream, { mimeType, videoBitsPerSecond: BITS_A_SECOND });
  const parts: Blob[] = [];
  recorder.ondataavailable = ({ data }) => parts.push(data);
  const ended = new Promise<void>((resolve) => {
    recorder.onstop = () => resolve();
  });
  recorder.start();
  const startMs = performance.now();
  for (let share = 0; share < 1; ) {
    share = Math.min(1, (performance.now() - startMs) / CLIP_MS);
    show(share);
    await new Promise(requestAnimationFrame);
  }
  recorder.stop();
  await ended;
  for (const track of stream.getTracks()) track.stop();
  const [type = mimeType] = mimeType.split(";");
  return { blob: new Blob(parts, { type }), ending: type === "video/mp4" ? "mp4" : "webm" };
}

import { type ChangeEvent, type DragEvent, useMemo, useRef, useState } from "react";
import { windowBehind } from "../../drawing/index.ts";
import { type FourPoints, type PlanarPose, planarPose } from "../../mechanics/index.ts";
import { useShadeNow } from "../shade/shade-context.tsx";
import { type ElementSize, useBox } from "../sheets/use-box.ts";
import { type CornerShares, FourCorners } from "./photo/four-corners.tsx";
import { openPhoto } from "./photo/open-photo.ts";
import { savePng } from "./save-picture.ts";
import { type LiveChoice, useLiveScene } from "./use-live-scene.ts";

/** Longest side of a photo of the room, px: as much as a client's screen shows. */
const LONGEST_PX = 2048;
const FIRST_CORNERS: CornerShares = [
  [0.3, 0.2],
  [0.7, 0.2],
  [0.7, 0.8],
  [0.3, 0.8],
];

/** The shade in a photo of its own window: four corners of the opening are dragged to their places. */
export function InWindow({ choice, onFail }: { choice: LiveChoice; onFail: () => void }) {
  const [photo, setPhoto] = useState<ImageBitmap>();
  const [trouble, setTrouble] = useState<string>();
  const take = async (file: File | undefined) => {
    if (!file) return;
    const opened = await openPhoto(file, LONGEST_PX);
    setTrouble(opened.kind === "refused" ? opened.why : undefined);
    if (opened.kind === "opened") setPhoto(opened.bitmap);
  };
  const { plan } = useShadeNow();
  const opening = windowBehind(plan).opening;
  if (opening === undefined)
    return <p className="in-window-words">The opening was not measured: give its width and height first.</p>;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a photo can be dropped here, or chosen by the button
    <div
      className="in-window"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event: DragEvent) => {
        event.preventDefault();
        void take(event.dataTransfer.files[0]);
      }}
    >
      {photo === undefined ? (
        <p className="in-window-words">
          Take a photo of the window from where it will be looked at, and drop it here. It stays on this
          device.
        </p>
      ) : (
        <InPhoto photo={photo} choice={choice} onFail={onFail} opening={opening} />
      )}
      <p className="in-window-take small">
        <label>
          <span>{photo === undefined ? "Photo of the window" : "Another photo"}</span>{" "}
          <input
            type="file"
            accept="image/png,image/jpeg,image/webp"
            onChange={(event: ChangeEvent<HTMLInputElement>) => {
              void take(event.target.files?.[0]);
              event.target.value = "";
            }}
          />
        </label>
      </p>
      {trouble === undefined ? null : (
        <p className="field-error" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

interface InPhotoProps {
  photo: ImageBitmap;
  choice: LiveChoice;
  onFail: () => void;
  opening: { x: number; y: number; width: number; height: number };
}

function InPhoto({ photo, choice, onFail, opening }: InPhotoProps) {
  const [corners, setCorners] = useState(FIRST_CORNERS);
  const [marks, setMarks] = useState(true);
  const room = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const box = useBox(room);
  const shown = box && fitted(photo, box);
  const pose = useMemo(() => {
    const at = corners.map(([x, y]) => [x * photo.width, y * photo.height]) as unknown as FourPoints;
    return planarPose(
      at,
      { widthMm: opening.width, heightMm: opening.height },
      { widthPx: photo.width, heightPx: photo.height },
    );
  }, [corners, photo, opening.width, opening.height]);
  const { scene } = useLiveScene(
    canvas,
    choice,
    (live) => {
      if (pose && shown) live.drawInPhoto({ pose, opening, photo }, shown.widthPx, shown.heightPx);
      else live.clear();
    },
    onFail,
    // What asks for another picture beside the shade itself.
    [pose, shown?.widthPx, shown?.heightPx],
  );
  const save = async () => {
    if (!scene.current || !pose) return;
    const whole = document.createElement("canvas");
    whole.width = photo.width;
    whole.height = photo.height;
    const draw = whole.getContext("2d");
    draw?.drawImage(photo, 0, 0);
    scene.current.drawInPhoto({ pose, opening, photo }, photo.width, photo.height, 1);
    if (canvas.current) draw?.drawImage(canvas.current, 0, 0, photo.width, photo.height);
    if (shown) scene.current.drawInPhoto({ pose, opening, photo }, shown.widthPx, shown.heightPx);
    await savePng(whole, "in-the-window");
  };
  return (
    <>
      <div className="in-photo-room" ref={room}>
        <div className="in-photo" style={shown && { width: shown.widthPx, height: shown.heightPx }}>
          <PhotoCanvas photo={photo} />
          <canvas ref={canvas} className="in-photo-shade" role="img" aria-label="The shade in the photo" />
          {marks ? <FourCorners of="of the opening" corners={corners} onMove={setCorners} /> : null}
        </div>
      </div>
      <p className="in-window-words small" role="status">
        {poseWords(pose)}
      </p>
      <p className="in-window-take">
        <button
          type="button"
          className="button-plain small"
          aria-pressed={marks}
          onClick={() => setMarks(!marks)}
        >
          {marks ? "Hide the corners" : "Show the corners"}
        </button>
        <button type="button" className="button small" disabled={!pose} onClick={() => void save()}>
          Save the picture
        </button>
      </p>
    </>
  );
}

function PhotoCanvas({ photo }: { photo: ImageBitmap }) {
  return (
    <canvas
      className="in-photo-ground"
      role="img"
      aria-label="Your photo"
      ref={(canvas) => {
        if (!canvas) return;
        canvas.width = photo.width;
        canvas.height = photo.height;
        canvas.getContext("2d")?.drawImage(photo, 0, 0);
      }}
    />
  );
}

function fitted(
  photo: ImageBitmap,
  { widthPx, heightPx }: ElementSize,
): { widthPx: number; heightPx: number } {
  const scale = Math.min(widthPx / photo.width, heightPx / photo.height);
  return { widthPx: Math.floor(photo.width * scale), heightPx: Math.floor(photo.height * scale) };
}

/** Corners that fit worse than this were marked wrongly, or the measured opening is another, px. */
const MOST_MISS_PX = 6;

function poseWords(pose: PlanarPose | undefined): string {
  if (pose === undefined)
    return "The four corners do not go round an opening: put each on its own corner, in order.";
  const lens =
    pose.focalBy === "perspective"
      ? "The lens is told by the photo itself."
      : "Seen squarely, a photo does not tell its lens: a usual one is taken.";
  const off = Math.max(0.1, pose.missPx).toFixed(1);
  return pose.missPx > MOST_MISS_PX
    ? `The corners miss an opening of the measured size by ${off} pixels on the mean: mark them again, or measure again. ${lens}`
    : `Drag the rings onto the corners of the opening. They agree with its measured size within ${off} pixels. ${lens}`;
}

import { type RefObject, useState } from "react";
import { playedAt } from "../../drape/index.ts";
import { sceneColours } from "../../drawing/index.ts";
import { download } from "../persistence/job-file.ts";
import { useShadeNow } from "../shade/shade-context.tsx";
import { useJob } from "../state/fields.ts";
import { setRaise, useRaise } from "../state/raise.ts";
import { clipKind, recordClip } from "./export/clip.ts";
import { patternTile } from "./pattern-tile.ts";
import { pngOfCanvas, savePng } from "./save-picture.ts";
import { sewnCloth } from "./sewn-cloth.ts";
import type { KnownHeights } from "./use-heights.ts";

interface SaveShadeProps {
  canvas: RefObject<HTMLCanvasElement | null>;
  heights: KnownHeights | undefined;
  /** Shows the shade from there, at once. */
  turn: (aroundRad: number) => void;
  /** Keeps the picture fine while it is saved; let go of, it is as it was again. */
  hold: (isHeld: boolean) => void;
}

/** What is seen as a picture or a clip, and the cloth itself as a model. */
export function SaveShade({ canvas, heights, turn, hold }: SaveShadeProps) {
  const { plan, window } = useShadeNow();
  const { cloths } = useJob();
  const [busy, setBusy] = useState(false);
  const whileBusy = (work: () => Promise<void>) => () => {
    setBusy(true);
    hold(true);
    void work().finally(() => {
      setBusy(false);
      hold(false);
    });
  };
  const savePicture = whileBusy(async () => {
    if (canvas.current) await savePng(canvas.current, window.id);
  });
  const saveModel = whileBusy(async () => {
    if (heights === undefined) return;
    const { clothGlb } = await import("./export/glb.ts");
    const face = plan.cloth.layers.find(({ layer }) => layer === "face");
    const photo = cloths.find(({ id }) => id === face?.clothId)?.photo;
    const printed = face === undefined ? undefined : await patternTile(face, photo).catch(() => undefined);
    const tile = sewnCloth(printed, plan, heights.net.alongMm.at(-1) ?? 0);
    const png = tile && (await pngOfCanvas(tile.canvas));
    const pattern = tile && png ? { pattern: { ...tile, png: new Uint8Array(await png.arrayBuffer()) } } : {};
    const cloth = playedAt(heights.net, heights.frames, useRaise.getState());
    const { face: faceHex, back } = sceneColours(plan);
    const bytes = await clothGlb(heights.net, cloth, { face: faceHex, back, ...pattern }, window.name);
    download(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "model/gltf-binary" }), `${window.id}.glb`);
  });
  const saveClip = (name: string, show: (share: number) => void) =>
    whileBusy(async () => {
      const clip = canvas.current && (await recordClip(canvas.current, show));
      if (clip) download(clip.blob, `${window.id}-${name}.${clip.ending}`);
    });
  const saveRaise = () => {
    const was = useRaise.getState();
    // Up, and down again.
    saveClip("raised", (share) => setRaise(share < 1 ? 1 - Math.abs(1 - 2 * share) : was))();
  };
  const canRecord = clipKind() !== undefined;
  return (
    <p className="live-saves small">
      <span>Save</span>
      <button type="button" className="button-plain" disabled={busy} onClick={savePicture}>
        picture
      </button>
      <button
        type="button"
        className="button-plain"
        disabled={busy || heights === undefined}
        onClick={saveModel}
      >
        model
      </button>
      {canRecord ? (
        <>
          <button
            type="button"
            className="button-plain"
            disabled={busy}
            onClick={saveClip("turned", (share) => turn(2 * Math.PI * share))}
          >
            clip of a turn
          </button>
          <button type="button" className="button-plain" disabled={busy} onClick={saveRaise}>
            clip of raising
          </button>
        </>
      ) : null}
    </p>
  );
}

import { type RefObject, useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { type CommonNet, type PlayedCloth, playedAt } from "../../drape/index.ts";
import { bareBattens, pictureRig, sceneColours, sewnMarks, windowBehind } from "../../drawing/index.ts";
import type { Cloth } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { useShadeNow } from "../shade/shade-context.tsx";
import { useJob, useUnits } from "../state/fields.ts";
import { useRaise } from "../state/raise.ts";
import { lightThrough } from "./light-through.ts";
import { type PatternTile, patternTile } from "./pattern-tile.ts";
import { type LightFrom, LiveScene } from "./scene/live-scene.ts";
import { sewnCloth } from "./sewn-cloth.ts";
import type { KnownHeights } from "./use-heights.ts";

/** What was not moved for so long rests, ms. */
const RESTS_MS = 250;

/** What is chosen of a live picture. */
export interface LiveChoice {
  heights: KnownHeights | undefined;
  lightFrom: LightFrom;
  lined: boolean;
}

/**
 * The scene of a canvas, with the shade on the page in it; `draw` is called in the next frame after anything changed, and
 * again, finer, once nothing moves any more; `also` is where it is seen from. Held, it stays fine, moving or not.
 */
export function useLiveScene(
  canvas: RefObject<HTMLCanvasElement | null>,
  { heights, lightFrom, lined }: LiveChoice,
  draw: (scene: LiveScene) => void,
  onFail: () => void,
  also: readonly unknown[] = [],
) {
  const { plan } = useShadeNow();
  const units = useUnits();
  const { cloths } = useJob();
  const pattern = usePattern(plan, cloths, heights?.net.alongMm.at(-1));
  const scene = useRef<LiveScene | undefined>(undefined);
  const frame = useRef(0);
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined);
  const latest = useRef({ draw, onFail, heights, plan, units });
  latest.current = { draw, onFail, heights, plan, units };
  // One and the same for all of their life, so that effects may name them.
  const [{ redraw, change, rehang, hold }] = useState(() => {
    let isHeld = false;
    let isMoving = false;
    let isHung = false;
    let played: { net: CommonNet; cloth: PlayedCloth } | undefined;
    const hangNow = (live: LiveScene) => {
      const { heights, plan, units } = latest.current;
      if (heights === undefined) return;
      const { net, frames } = heights;
      const raise = useRaise.getState();
      const cloth = playedAt(net, frames, raise, played?.net === net ? played.cloth : undefined);
      played = { net, cloth };
      live.hang(net, cloth, pictureRig(plan, units, raise), bareBattens(plan, units, raise));
      isHung = true;
    };
    const drawNow = () => {
      cancelAnimationFrame(frame.current);
      frame.current = 0;
      if (!scene.current) return;
      if (!isHung) hangNow(scene.current);
      scene.current.isMoving = isMoving && !isHeld;
      latest.current.draw(scene.current);
      say(isMoving ? "moving" : "rest");
    };
    // Who waits for the picture as it stays looks here.
    const say = (drawn: "moving" | "rest") => {
      if (canvas.current && canvas.current.dataset.drawn !== drawn) canvas.current.dataset.drawn = drawn;
    };
    const drawNext = () => {
      say("moving");
      if (frame.current === 0) frame.current = requestAnimationFrame(drawNow);
    };
    const redraw = () => {
      isMoving = true;
      clearTimeout(rest.current);
      rest.current = setTimeout(() => {
        isMoving = false;
        drawNow();
      }, RESTS_MS);
      drawNext();
    };
    return {
      redraw,
      /** What is seen is another, and did not move: it is fine at once. */
      change(to: (live: LiveScene) => void) {
        if (scene.current) to(scene.current);
        drawNext();
      },
      rehang(moves: boolean) {
        isHung = false;
        if (moves) redraw();
        else drawNext();
      },
      hold(held: boolean) {
        isHeld = held;
        drawNow();
      },
    };
  });

  // Before the effects that fill it.
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element) return;
    try {
      scene.current = new LiveScene(element);
    } catch {
      latest.current.onFail();
      return;
    }
    const lost = (event: Event) => {
      event.preventDefault();
      latest.current.onFail();
    };
    element.addEventListener("webglcontextlost", lost);
    return () => {
      element.removeEventListener("webglcontextlost", lost);
      cancelAnimationFrame(frame.current);
      clearTimeout(rest.current);
      frame.current = 0;
      scene.current?.dispose();
      scene.current = undefined;
    };
  }, [canvas]);
  useEffect(() => change((live) => live.stand(windowBehind(plan))), [plan, change]);
  useEffect(() => {
    const { face, back } = sceneColours(plan);
    const look = { face, back: lined ? back : face, through: lightThrough(plan.cloth.layers, cloths, lined) };
    change((live) => live.look(pattern === undefined ? look : { ...look, pattern }));
  }, [plan, cloths, lined, pattern, change]);
  useEffect(() => change((live) => live.light(lightFrom)), [lightFrom, change]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the cloth hangs by
  useEffect(() => rehang(false), [heights, plan, units, rehang]);
  // Nothing of the page but its slider is made anew as the shade goes up.
  useEffect(() => useRaise.subscribe(() => rehang(true)), [rehang]);
  useEffect(redraw, [...also, redraw]);
  return { scene, redraw, hold };
}

/** What the face shows, once it is there: its pattern, and what is sewn onto it. */
function usePattern(
  plan: ShadePlan,
  cloths: readonly Pick<Cloth, "id" | "photo">[],
  lengthMm: number | undefined,
): PatternTile | undefined {
  const [tile, setTile] = useState<PatternTile>();
  const face = plan.cloth.layers.find(({ layer }) => layer === "face");
  const photo = cloths.find(({ id }) => id === face?.clothId)?.photo;
  // The height changes many times a second, the plan seldom.
  const sewn = useMemo(() => JSON.stringify(sewnMarks(plan)), [plan]);
  const key = JSON.stringify([face?.colour, face?.motif, sewn, lengthMm]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key tells when the tile is another
  useEffect(() => {
    let isLate = false;
    const found = face === undefined ? Promise.resolve(undefined) : patternTile(face, photo);
    // A photo that cannot be opened leaves the cloth plain.
    found
      .catch(() => undefined)
      .then((next) => {
        if (!isLate) setTile(lengthMm === undefined ? next : sewnCloth(next, plan, lengthMm));
      });
    return () => {
      isLate = true;
    };
  }, [key, photo]);
  return tile;
}

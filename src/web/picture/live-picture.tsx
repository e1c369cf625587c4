import { type KeyboardEvent, type PointerEvent, useEffect, useLayoutEffect, useRef, useState } from "react";
import { playedAt } from "../../drape/index.ts";
import { clothColours, methodWords, pictureRig, windowBehind } from "../../drawing/index.ts";
import type { Cloth } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { Segments } from "../inputs/segments.tsx";
import { useShade } from "../shade/shade-context.tsx";
import { useBox } from "../sheets/use-box.ts";
import { useJob, useUnits } from "../state/fields.ts";
import { usePlanner } from "../state/store.ts";
import { lightThrough } from "./light-through.ts";
import { type PatternTile, patternTile } from "./pattern-tile.ts";
import { type LightFrom, LiveScene } from "./scene/live-scene.ts";
import { BACK, between, FRONT, type Orbit, turned, turnedByKey } from "./scene/orbit.ts";
import { type KnownHeights, useHeights } from "./use-heights.ts";
import "./live-picture.css";

const LIGHTS = { room: "Room light", window: "Daylight" } as const satisfies Record<LightFrom, string>;
/** One turn of the view takes so long, ms; none where the device asks for less motion. */
const TURN_MS = 500;
const RAD_PER_PX = 0.008;
const NEAR_PER_PX = 0.0015;

/** The shade in space: turned by hand or keys, raised by the slider beside it. `onFail`: this browser cannot draw it. */
export function LivePicture({ onFail }: { onFail: () => void }) {
  const { plan } = useShade();
  const units = useUnits();
  const { cloths } = useJob();
  const raise = usePlanner((planner) => planner.view.raise);
  const heights = useHeights(plan, raise);
  const [lightFrom, setLightFrom] = useState<LightFrom>("room");
  const [lined, setLined] = useState(true);
  const room = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const box = useBox(room);
  const view = useView(canvas, box, onFail);
  const { scene, redraw } = view;
  const isLined = plan.cloth.layers.length > 1;

  useEffect(() => {
    scene.current?.stand(windowBehind(plan));
    redraw();
  }, [plan, scene, redraw]);
  const pattern = usePattern(plan, cloths);
  useEffect(() => {
    const { face, back } = clothColours(plan);
    const through = lightThrough(plan.cloth.layers, cloths, lined);
    const look = { face, back: lined ? back : face, through };
    scene.current?.look(pattern === undefined ? look : { ...look, pattern });
    redraw();
  }, [plan, cloths, lined, pattern, scene, redraw]);
  useEffect(() => {
    scene.current?.light(lightFrom);
    redraw();
  }, [lightFrom, scene, redraw]);
  useEffect(() => {
    if (heights === undefined) return;
    const cloth = playedAt(heights.net, heights.frames, raise);
    scene.current?.hang(heights.net, cloth, pictureRig(plan, units, raise));
    redraw();
  }, [heights, raise, plan, units, scene, redraw]);

  return (
    <div className="live">
      <div
        ref={room}
        className="live-room"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: its keys turn it
        tabIndex={0}
        role="application"
        data-state={heights?.state ?? "working"}
        data-heights={heights?.frames.length ?? 0}
        aria-label="The shade in space. Arrow keys turn it, plus and minus bring it nearer and away, Home shows the front, End the back."
        {...view.handlers}
      >
        <canvas ref={canvas} className="live-canvas" />
      </div>
      <div className="live-choices">
        <Segments
          label="Light"
          quiet
          options={LIGHTS}
          value={lightFrom}
          onChange={(from) => setLightFrom(from)}
        />
        {isLined ? (
          <Segments
            label="Lining"
            quiet
            options={{ lined: "As lined", bare: "Face alone" }}
            value={lined ? "lined" : "bare"}
            onChange={(value) => setLined(value === "lined")}
          />
        ) : null}
        <button type="button" className="button-plain small" onClick={() => view.turnTo(FRONT)}>
          Front
        </button>
        <button type="button" className="button-plain small" onClick={() => view.turnTo(BACK)}>
          Back
        </button>
        <p className="live-words small quiet" role="status">
          {wordsOf(heights, raise)}
        </p>
      </div>
    </div>
  );
}

/** The tile of the face's pattern, once it is there. */
function usePattern(plan: ShadePlan, cloths: readonly Cloth[]): PatternTile | undefined {
  const [tile, setTile] = useState<PatternTile>();
  const face = plan.cloth.layers.find(({ layer }) => layer === "face");
  const photo = cloths.find(({ id }) => id === face?.clothId)?.photo;
  const key = JSON.stringify([face?.colour, face?.motif]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key tells when the tile is another
  useEffect(() => {
    let isLate = false;
    const found = face === undefined ? Promise.resolve(undefined) : patternTile(face, photo);
    // A photo that cannot be opened leaves the cloth plain.
    found
      .catch(() => undefined)
      .then((next) => {
        if (!isLate) setTile(next);
      });
    return () => {
      isLate = true;
    };
  }, [key, photo]);
  return tile;
}

function wordsOf(heights: KnownHeights | undefined, raise: number): string {
  if (heights === undefined) return "The cloth is being hung …";
  const { frames, state } = heights;
  if (state === "failed") return "Some heights could not be worked out: what is known is shown.";
  const nearest = frames.reduce((best, one) =>
    Math.abs(one.raise - raise) < Math.abs(best.raise - raise) ? one : best,
  );
  if (nearest.coarse) return "Coarse as yet: the cloth is still coming to rest.";
  return methodWords(nearest.method);
}

/** The scene of a canvas, the view on it, and what hands and keys do to that. */
function useView(
  canvas: { current: HTMLCanvasElement | null },
  box: { widthPx: number; heightPx: number } | undefined,
  onFail: () => void,
) {
  const scene = useRef<LiveScene | undefined>(undefined);
  const orbit = useRef<Orbit>(FRONT);
  const size = useRef(box);
  size.current = box;
  const frame = useRef(0);
  const moving = useRef(0);
  const fail = useRef(onFail);
  fail.current = onFail;

  // One and the same for all of its life, so that effects may name it.
  const [redraw] = useState(() => () => {
    if (frame.current !== 0) return;
    frame.current = requestAnimationFrame(() => {
      frame.current = 0;
      const now = size.current;
      if (now) scene.current?.draw(orbit.current, now.widthPx, now.heightPx);
    });
  });

  // Before the effects that fill it.
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element) return;
    try {
      scene.current = new LiveScene(element);
    } catch {
      fail.current();
      return;
    }
    const lost = (event: Event) => {
      event.preventDefault();
      fail.current();
    };
    // React listens to the wheel without being able to keep the page from scrolling.
    const nearer = (event: WheelEvent) => {
      event.preventDefault();
      orbit.current = turned(orbit.current, { near: Math.exp(-event.deltaY * NEAR_PER_PX) });
      redraw();
    };
    element.addEventListener("webglcontextlost", lost);
    element.addEventListener("wheel", nearer, { passive: false });
    return () => {
      element.removeEventListener("webglcontextlost", lost);
      element.removeEventListener("wheel", nearer);
      cancelAnimationFrame(frame.current);
      frame.current = 0;
      cancelAnimationFrame(moving.current);
      scene.current?.dispose();
      scene.current = undefined;
    };
  }, [canvas, redraw]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new size asks for a new picture
  useEffect(redraw, [box?.widthPx, box?.heightPx, redraw]);

  const set = (next: Orbit) => {
    cancelAnimationFrame(moving.current);
    orbit.current = next;
    redraw();
  };
  const turnTo = (to: Orbit) => {
    cancelAnimationFrame(moving.current);
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) return set(to);
    const from = orbit.current;
    let startMs: number | undefined;
    const step = (nowMs: number) => {
      startMs ??= nowMs;
      const share = Math.min(1, (nowMs - startMs) / TURN_MS);
      orbit.current = between(from, to, share);
      redraw();
      if (share < 1) moving.current = requestAnimationFrame(step);
    };
    moving.current = requestAnimationFrame(step);
  };
  return { scene, redraw, turnTo, handlers: useHandlers(orbit, set) };
}

type At = readonly [x: number, y: number];

/** One finger or the mouse turns, two fingers or the wheel bring nearer. */
function useHandlers(orbit: { current: Orbit }, set: (next: Orbit) => void) {
  const [down] = useState(() => new Map<number, At>());
  const apart = () => {
    const [a, b] = [...down.values()];
    return a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) : 0;
  };
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      event.currentTarget.setPointerCapture(event.pointerId);
      down.set(event.pointerId, [event.clientX, event.clientY]);
    },
    onPointerMove: (event: PointerEvent) => {
      const was = down.get(event.pointerId);
      if (!was) return;
      const wasApart = apart();
      const at: At = [event.clientX, event.clientY];
      down.set(event.pointerId, at);
      if (down.size > 1) set(turned(orbit.current, { near: apart() / (wasApart || 1) }));
      else
        set(
          turned(orbit.current, {
            aroundRad: (was[0] - at[0]) * RAD_PER_PX,
            aboveRad: (at[1] - was[1]) * RAD_PER_PX,
          }),
        );
    },
    onPointerUp: (event: PointerEvent) => down.delete(event.pointerId),
    onPointerCancel: (event: PointerEvent) => down.delete(event.pointerId),
    onKeyDown: (event: KeyboardEvent) => {
      const next = turnedByKey(orbit.current, event.key);
      if (next === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      set(next);
    },
  };
}

import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import { COARSE_WORDS, methodWords } from "../../drawing/index.ts";
import { Segments } from "../inputs/segments.tsx";
import { useShadeNow } from "../shade/shade-context.tsx";
import { useBox } from "../sheets/use-box.ts";
import { useRaise } from "../state/raise.ts";
import { InWindow } from "./in-window.tsx";
import { SaveShade } from "./save-shade.tsx";
import type { LightFrom } from "./scene/live-scene.ts";
import { BACK, between, FRONT, type Orbit, turned, turnedByKey } from "./scene/orbit.ts";
import { type KnownHeights, useHeights } from "./use-heights.ts";
import { type LiveChoice, useLiveScene } from "./use-live-scene.ts";
import "./live-picture.css";

const LIGHTS = { room: "Room light", window: "Daylight" } as const satisfies Record<LightFrom, string>;
const PLACES = { turned: "In space", window: "In your window" } as const;
/** One turn of the view takes so long, ms; none where the device asks for less motion. */
const TURN_MS = 500;
const RAD_PER_PX = 0.008;
const NEAR_PER_PX = 0.0015;

/** The shade in space, or in a photo of its window; raised by the slider beside it. `onFail`: this browser cannot draw it. */
export function LivePicture({ onFail }: { onFail: () => void }) {
  const { plan } = useShadeNow();
  const { heights, failed } = useHeights(plan);
  const words = useRaise((raise) => (failed ? FAILED : wordsOf(heights, raise)));
  const [place, setPlace] = useState<keyof typeof PLACES>("turned");
  const [lightFrom, setLightFrom] = useState<LightFrom>("room");
  const [lined, setLined] = useState(true);
  const turn = useRef<(to: Orbit) => void>(() => undefined);
  const choice: LiveChoice = { heights, lightFrom, lined };
  return (
    <div className="live">
      {place === "turned" ? (
        <Turned choice={choice} onFail={onFail} turn={turn} />
      ) : (
        <InWindow choice={choice} onFail={onFail} />
      )}
      <div className="live-choices">
        <Segments label="Where" quiet options={PLACES} value={place} onChange={(next) => setPlace(next)} />
        <Segments
          label="Light"
          quiet
          options={LIGHTS}
          value={lightFrom}
          onChange={(from) => setLightFrom(from)}
        />
        {plan.cloth.layers.length > 1 ? (
          <Segments
            label="Lining"
            quiet
            options={{ lined: "As lined", bare: "Face alone" }}
            value={lined ? "lined" : "bare"}
            onChange={(value) => setLined(value === "lined")}
          />
        ) : null}
        {place === "turned" ? (
          <>
            <button type="button" className="button-plain small" onClick={() => turn.current(FRONT)}>
              Front
            </button>
            <button type="button" className="button-plain small" onClick={() => turn.current(BACK)}>
              Back
            </button>
          </>
        ) : null}
        <p className="live-words small quiet" role="status">
          {words}
        </p>
      </div>
    </div>
  );
}

const FAILED = "How the cloth hangs could not be worked out to the end: the still picture shows it.";

function wordsOf(heights: KnownHeights | undefined, raise: number): string {
  if (heights === undefined) return "The cloth is being hung …";
  const { frames } = heights;
  const nearest = frames.reduce((best, one) =>
    Math.abs(one.raise - raise) < Math.abs(best.raise - raise) ? one : best,
  );
  if (nearest.coarse) return COARSE_WORDS;
  return methodWords(nearest.method);
}

interface TurnedProps {
  choice: LiveChoice;
  onFail: () => void;
  /** Takes what turns the view from outside. */
  turn: { current: (to: Orbit) => void };
}

/** The scene seen from any side, and what hands and keys do to the view. */
function Turned({ choice, onFail, turn }: TurnedProps) {
  const room = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const box = useBox(room);
  const orbit = useRef<Orbit>(FRONT);
  const moving = useRef(0);
  const { scene, redraw, hold } = useLiveScene(
    canvas,
    choice,
    (scene) => {
      if (box) scene.draw(orbit.current, box.widthPx, box.heightPx);
    },
    onFail,
    [box?.widthPx, box?.heightPx],
  );
  const [set] = useState(() => (next: Orbit) => {
    cancelAnimationFrame(moving.current);
    orbit.current = next;
    redraw();
  });
  useEffect(() => {
    turn.current = (to) => {
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
    return () => cancelAnimationFrame(moving.current);
  }, [turn, set, redraw]);
  useEffect(() => {
    const element = room.current;
    // React listens to the wheel without being able to keep the page from scrolling.
    const nearer = (event: WheelEvent) => {
      event.preventDefault();
      set(turned(orbit.current, { near: Math.exp(-event.deltaY * NEAR_PER_PX) }));
    };
    element?.addEventListener("wheel", nearer, { passive: false });
    return () => element?.removeEventListener("wheel", nearer);
  }, [set]);
  const { heights } = choice;
  return (
    <>
      <div
        ref={room}
        className="live-room"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: its keys turn it
        tabIndex={0}
        role="application"
        data-state={heights?.state ?? "working"}
        data-heights={heights?.frames.length ?? 0}
        aria-label="The shade in space. Arrow keys turn it, plus and minus bring it nearer and away, Home shows the front, End the back."
        {...useHandlers(orbit, set)}
      >
        <canvas ref={canvas} className="live-canvas" />
      </div>
      <SaveShade
        canvas={canvas}
        heights={heights}
        turn={(aroundRad) => {
          if (box) scene.current?.draw({ ...orbit.current, aroundRad }, box.widthPx, box.heightPx);
        }}
        hold={hold}
      />
    </>
  );
}

type At = readonly [x: number, y: number];

/** One finger or the mouse turns, two fingers bring nearer. */
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

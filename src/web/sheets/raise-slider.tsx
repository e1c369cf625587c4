import { useId, useLayoutEffect, useRef } from "react";
import { setRaise, useRaise } from "../state/raise.ts";

/** One press of an arrow key, as a share of the way up. */
const STEP = 0.01;

/**
 * Pulls the shade up and lets it down, like the cord itself. It moves many times a second, so it heeds hand and planner by
 * itself: nothing of the page is made anew for it.
 */
export function RaiseSlider() {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const fill = useRef<HTMLDivElement>(null);
  const cord = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const slider = input.current;
    if (!slider || !fill.current || !cord.current) return;
    const { style: filled } = fill.current;
    const { style: hung } = cord.current;
    const show = (raise: number) => {
      slider.value = String(raise);
      slider.ariaValueText = `${Math.round(100 * raise)}%`;
      filled.transform = `scaleY(${raise})`;
      hung.transform = `translateY(${-100 * raise}%)`;
    };
    const heed = (event: Event) => {
      // Nobody else heeds it: the page is not asked at each step.
      event.stopPropagation();
      setRaise(slider.valueAsNumber);
    };
    show(useRaise.getState());
    slider.addEventListener("input", heed);
    const forget = useRaise.subscribe(show);
    return () => {
      slider.removeEventListener("input", heed);
      forget();
    };
  }, []);
  return (
    <div className="raise screen-only">
      <label className="raise-label" htmlFor={id}>
        Raise
      </label>
      <div className="raise-track">
        <div className="raise-fill" ref={fill} />
        <input
          ref={input}
          id={id}
          className="raise-input"
          type="range"
          min={0}
          max={1}
          step={STEP}
          aria-orientation="vertical"
        />
        <div className="raise-cord" ref={cord}>
          <div className="raise-thumb" />
        </div>
      </div>
    </div>
  );
}

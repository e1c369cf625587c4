import { type RefObject, useLayoutEffect, useState } from "react";

export interface ElementSize {
  widthPx: number;
  heightPx: number;
  /** Pixels of the root's letter size, so that drawings grow with the text. */
  remPx: number;
}

/** Size of an element as it changes, in whole steps so that a scrollbar does not redraw everything. */
export function useBox(ref: RefObject<HTMLElement | null>): ElementSize | undefined {
  const [box, setBox] = useState<ElementSize>();
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => {
      const { clientWidth, clientHeight } = element;
      const remPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      setBox((before) =>
        before?.widthPx === clientWidth && before.heightPx === clientHeight && before.remPx === remPx
          ? before
          : { widthPx: clientWidth, heightPx: clientHeight, remPx },
      );
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return box;
}

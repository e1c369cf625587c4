import { newWindow, type Window } from "../../src/job/index.ts";
import { inches } from "../../src/units/index.ts";
import { type Case, planOne, windowOf } from "./windows.ts";

function onSill(shade: Window["shade"]): Window {
  const window = windowOf(inches(32), inches(48), shade);
  return { ...window, opening: { ...window.opening, sillAboveFloorMm: inches(32) } };
}

/** Shirred voile over a sill, worked on the right. */
export function austrian(): Case {
  const cloths = [{ id: "voile", name: "Voile, 59 in", usableWidthMm: 1500, massGsm: 70, demo: true }];
  return planOne("imperial", onSill({ style: "austrian", mount: "outside", face: "voile", lining: null }), {
    cloths,
  });
}

/** Lined, inside its opening, in millimetres, worked on the left. */
export function gatheredBalloon(): Case {
  const window = windowOf(1000, 1400, {
    style: "gathered-balloon",
    mount: "inside",
    making: { lift: { controlSide: "left" } },
  });
  window.opening.recessDepthMm = 140;
  return planOne("metric", window);
}

/** Straight while it is down: nothing is drawn up at the hem. */
export function looseBalloon(): Case {
  const making = { gather: { hemExtraMm: 0 } };
  return planOne("imperial", onSill({ style: "gathered-balloon", mount: "outside", lining: null, making }));
}

/** With a frill, and a tube that a loop turns. */
export function festoon(): Case {
  const making = { gather: { frillMm: 70 }, lift: { kind: "tube-loop" as const } };
  const window = newWindow({ id: "window", name: "Window", widthMm: 1300, heightMm: 1300 });
  return planOne("metric", {
    ...window,
    shade: { style: "festoon", mount: "outside", lining: null, making },
  });
}

import type { Window } from "../../src/job/index.ts";
import { inches } from "../../src/units/index.ts";
import { type Case, planOne, windowOf } from "./windows.ts";

type Making = NonNullable<Window["shade"]["making"]>;

const MOUNT = { mount: "outside" } as const;

function onSill(shade: Window["shade"]): Window {
  const window = windowOf(inches(32), inches(39), shade);
  return { ...window, opening: { ...window.opening, sillAboveFloorMm: inches(36) } };
}

/** Battens of wood on the face, a rib at every row. */
export function battens(): Case {
  return planOne("imperial", onSill({ ...MOUNT, style: "ribbed", making: { ribs: BARE } }));
}

const BARE: Making["ribs"] = { kind: "bare", face: "front", rib: "rib-dowel-8" };

/** Pockets through all layers at the front, a rib at every half fold, in millimetres. */
export function halfFoldRibs(): Case {
  const ribs: Making["ribs"] = { kind: "through-pocket", face: "front", at: "half-folds" };
  return planOne("metric", windowOf(1000, 1300, { mount: "inside", style: "ribbed", making: { ribs } }));
}

/** Soft folds by tape and fullness, left-handed. */
export function hobbled(): Case {
  return planOne(
    "imperial",
    onSill({ ...MOUNT, style: "hobbled", making: { lift: { controlSide: "left" } } }),
  );
}

/** The published rule to the letter: twice as many folds of half the size. */
export function hobbledSmall(): Case {
  const making: Making = { hobble: { rule: "folds-of-three" } };
  return planOne("metric", windowOf(1000, 1300, { mount: "inside", style: "hobbled", making }));
}

export function tucked(): Case {
  return planOne("imperial", onSill({ ...MOUNT, style: "tucked" }));
}

/** Folds that show one below the other, raised. */
export function cascade(): Case {
  const making: Making = { fold: { cascadeMm: inches(0.5), rows: 5, largestSpacingMm: inches(10) } };
  return planOne("imperial", onSill({ ...MOUNT, style: "flat", making }));
}

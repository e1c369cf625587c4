import { type Job, newJob, newWindow, type Window } from "../../src/job/index.ts";
import { type Plan, plan, type ShadePlan } from "../../src/plan/index.ts";
import { inches, type UnitSystem } from "../../src/units/index.ts";
import { CORD_LOCK } from "../job-with.ts";

/** Invented windows that between them show what every sheet can draw. */

export interface Case {
  job: Job;
  plan: Plan;
  shade: ShadePlan;
}

export function planOne(system: UnitSystem, window: Window, rest: Partial<Job> = {}): Case {
  const rooms = [{ id: "room", name: "Room", windows: [window] }];
  const job = { ...newJob({ id: "gallery", name: "Gallery", system }), workshop: CORD_LOCK, ...rest, rooms };
  const planned = plan(job);
  const shade = planned.shades[0];
  if (shade === undefined) throw new Error("invalid gallery job: no shade");
  return { job, plan: planned, shade };
}

export function windowOf(widthMm: number, heightMm: number, shade: Window["shade"]): Window {
  const window = newWindow({ id: "window", name: "Window", widthMm, heightMm });
  return { ...window, shade };
}

const flat = { style: "flat" } as const;

/** Outside mount above a sill, worked on the right: 36 × 60 in finished. */
export function outside(): Case {
  const window = windowOf(inches(32), inches(54), { ...flat, mount: "outside" });
  window.opening.sillAboveFloorMm = inches(30);
  return planOne("imperial", window);
}

/** The same on the left. */
export function leftHanded(): Case {
  const window = windowOf(inches(32), inches(54), {
    ...flat,
    mount: "outside",
    making: { lift: { controlSide: "left" } },
  });
  window.opening.sillAboveFloorMm = inches(30);
  return planOne("imperial", window);
}

/** Inside mount in millimetres, with ribs in pockets of the lining, a skirt and three layers. */
export function ribbed(): Case {
  const window = windowOf(1100, 1450, {
    ...flat,
    mount: "inside",
    interlining: "domett",
    making: { ribs: { kind: "lining-pocket" }, fold: { skirtMm: 50 }, lift: { controlSide: "left" } },
  });
  window.opening.recessDepthMm = 120;
  return planOne("metric", window);
}

/** Wider than its cloth, with a half drop: joins, many columns, a lock with six slots. */
export function wide(): Case {
  const window = windowOf(2150, 1700, {
    ...flat,
    mount: "inside",
    face: "vine",
    making: { columns: { largestSpacingMm: 260 } },
  });
  return planOne("metric", window, {
    cloths: [
      {
        id: "vine",
        name: "Vine linen, 140 cm",
        usableWidthMm: 1370,
        massGsm: 210,
        repeat: { verticalMm: 640, match: "half-drop" },
        demo: true,
      },
    ],
  });
}

/** Banded in stripe on three sides with mitred corners, its own corners mitred too; returns and a dust strip. */
export function banded(): Case {
  const window = windowOf(inches(40), inches(58), {
    ...flat,
    mount: "outside",
    banding: "stripe",
    making: {
      hems: { corner: "mitred" },
      banding: { where: "sides-and-bottom", widthMm: inches(2), insetMm: inches(1.5) },
      board: { section: "board-1x4", returns: "pieces", dustStripMm: inches(1.5) },
    },
  });
  return planOne("imperial", window, {
    cloths: [{ id: "stripe", name: "Stripe, 54 in", usableWidthMm: inches(54), massGsm: 240, demo: true }],
  });
}

/** A plain cloth as wide as the shade is long, turned sideways on the bolt; the lining is joined. */
export function sideways(): Case {
  const window = windowOf(3300, 1400, {
    ...flat,
    mount: "inside",
    face: "wide-plain",
    making: { pattern: { railroad: "always" } },
  });
  return planOne("metric", window, {
    cloths: [
      { id: "wide-plain", name: "Plain linen, 180 cm", usableWidthMm: 1780, massGsm: 240, demo: true },
    ],
  });
}

/** A straight repeat whose columns are known, centred and kept through the joins. */
export function patterned(): Case {
  const window = windowOf(1800, 1500, {
    ...flat,
    mount: "inside",
    face: "trellis",
    making: { pattern: { place: "top" } },
  });
  return planOne("metric", window, {
    cloths: [
      {
        id: "trellis",
        name: "Trellis cotton, 140 cm",
        usableWidthMm: 1380,
        massGsm: 200,
        shrinkLength: 0.02,
        shrinkWidth: 0.01,
        bowShare: 0.01,
        repeat: { verticalMm: 320, horizontalMm: 335, match: "straight" },
        demo: true,
      },
    ],
  });
}

/** A pane in a door. */
export function small(): Case {
  return planOne("imperial", windowOf(inches(14), inches(22), { ...flat, mount: "to-size" }));
}

/** A hall window: more rows than a page has room to number one by one. */
export function tall(): Case {
  return planOne(
    "metric",
    windowOf(900, 5200, { ...flat, mount: "inside", making: { fold: { largestSpacingMm: 150 } } }),
  );
}

type LiftMaking = NonNullable<NonNullable<NonNullable<Window["shade"]>["making"]>["lift"]>;

/** The window of `outside` with another lift. */
function withLift(lift: LiftMaking, system: UnitSystem = "imperial"): Case {
  const window = windowOf(inches(32), inches(54), { ...flat, mount: "outside", making: { lift } });
  window.opening.sillAboveFloorMm = inches(30);
  return planOne(system, window);
}

/** Raised by hand over a spring, the cords at the back in sewn sleeves. */
export function spring(): Case {
  return withLift({ kind: "spring", rearCords: "enclosed" });
}

/** No lock: over a last eye near the end of the board and down to a cleat. */
export function cleat(): Case {
  return withLift({ kind: "cleat", turnEye: "pulley-16" });
}

/** A tube turned by a wand that comes off, worked on the left. */
export function wand(): Case {
  return withLift({ kind: "tube-wand", controlSide: "left" }, "metric");
}

/** A tube turned by a loop on a tensioner, the cords at the back in woven sleeves. */
export function loop(): Case {
  return withLift({ kind: "tube-loop", rearCords: "ring-locked" });
}

/** The same on the left. */
export function loopLeft(): Case {
  return withLift({ kind: "tube-loop", rearCords: "ring-locked", controlSide: "left" });
}

/** A wide shade inside its opening, turned by a motor. */
export function motor(): Case {
  const window = windowOf(1900, 1500, { ...flat, mount: "inside", making: { lift: { kind: "motor" } } });
  window.opening.recessDepthMm = 140;
  return planOne("metric", window);
}

/** Two outer columns and a lower edge that dips between them: 36 × 60 in finished. */
export function relaxed(): Case {
  const window = windowOf(inches(36), inches(60), { style: "relaxed", mount: "to-size" });
  return planOne("imperial", window);
}

/** Sewn pleats set in from the edges, a bar between them, inside its opening, worked on the left. */
export function tailed(): Case {
  const window = windowOf(1212, 1606, {
    style: "tailed",
    mount: "inside",
    making: { lift: { controlSide: "left" } },
  });
  window.opening.recessDepthMm = 120;
  return planOne("metric", window);
}

/** Pressed pleats that open, no bar: a swag between two tails, the face of separate pieces. */
export function tailedPressed(): Case {
  const window = windowOf(inches(46), inches(60), {
    style: "tailed",
    mount: "to-size",
    making: { pleat: { held: "pressed", bar: "none", insetMm: inches(12), cut: "inserts" } },
  });
  return planOne("imperial", window);
}

/** Four poufs between pleats, the lowest tied so that it stays, outside above a sill. */
export function pleatedBalloon(): Case {
  const window = windowOf(1100, 1300, { style: "pleated-balloon", mount: "outside" });
  window.opening.sillAboveFloorMm = 850;
  return planOne("metric", window);
}

export const CASES = {
  banded,
  sideways,
  patterned,
  outside,
  leftHanded,
  ribbed,
  wide,
  small,
  tall,
  cleat,
  spring,
  wand,
  loop,
  loopLeft,
  motor,
  relaxed,
  tailed,
  tailedPressed,
  pleatedBalloon,
};

/** From where the live picture is seen: round the shade, above it, and how near. */
export interface Orbit {
  /** To the right of the shade's middle, rad; half a turn is the back. */
  aroundRad: number;
  aboveRad: number;
  /** 1: the whole wall is seen; larger is nearer. */
  near: number;
}

export const FRONT: Orbit = { aroundRad: 0.24, aboveRad: 0.06, near: 1 };
export const BACK: Orbit = { aroundRad: Math.PI - 0.2, aboveRad: 0.06, near: 1 };

const MOST_ABOVE_RAD = 1.25;
const MOST_BELOW_RAD = -0.7;
const NEAR = { least: 0.6, most: 6 };
const KEY_RAD = Math.PI / 24;
const KEY_NEAR = 1.2;

export function turned({ aroundRad, aboveRad, near }: Orbit, by: Partial<Orbit>): Orbit {
  const whole = aroundRad + (by.aroundRad ?? 0);
  return {
    aroundRad: whole - 2 * Math.PI * Math.round(whole / (2 * Math.PI)),
    aboveRad: Math.min(MOST_ABOVE_RAD, Math.max(MOST_BELOW_RAD, aboveRad + (by.aboveRad ?? 0))),
    near: Math.min(NEAR.most, Math.max(NEAR.least, near * (by.near ?? 1))),
  };
}

/** What a key does; undefined where it does nothing here. */
export function turnedByKey(orbit: Orbit, key: string): Orbit | undefined {
  switch (key) {
    case "ArrowLeft":
      return turned(orbit, { aroundRad: -KEY_RAD });
    case "ArrowRight":
      return turned(orbit, { aroundRad: KEY_RAD });
    case "ArrowUp":
      return turned(orbit, { aboveRad: KEY_RAD });
    case "ArrowDown":
      return turned(orbit, { aboveRad: -KEY_RAD });
    case "+":
    case "=":
      return turned(orbit, { near: KEY_NEAR });
    case "-":
      return turned(orbit, { near: 1 / KEY_NEAR });
    case "Home":
      return FRONT;
    case "End":
      return BACK;
    default:
      return undefined;
  }
}

/** On the way from one view to another, the short way round; eased at both ends. */
export function between(from: Orbit, to: Orbit, share: number): Orbit {
  const eased = share * share * (3 - 2 * share);
  const turn = to.aroundRad - from.aroundRad;
  const short = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  const mix = (a: number, b: number) => a + eased * (b - a);
  return {
    aroundRad: from.aroundRad + eased * short,
    aboveRad: mix(from.aboveRad, to.aboveRad),
    near: mix(from.near, to.near),
  };
}

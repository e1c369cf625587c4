/**
 * A drawing is data: tagged primitives in millimetres of the real thing, x to the right, y down.
 * What is drawn says what it *means* (`role`), never a colour; screens, PDF and DXF decide the look
 * from one table. Sizes of text, ticks and marks are in millimetres of *paper*, so that they stay
 * readable at any scale; `place()` turns both into one flat list.
 */
export type Point = readonly [xMm: number, yMm: number];

/** What a primitive means. `style.ts` has line weight, dash and fill for each. */
export const ROLES = [
  "finishedEdge",
  "fold",
  "crease",
  "gather",
  "tape",
  "gridLine",
  "weightCurve",
  "pullCurve",
  "holdCurve",
  "hidden",
  "cut",
  "numberedCut",
  "flaw",
  "stitch",
  "grain",
  "markLine",
  "ring",
  "rib",
  "bar",
  "board",
  "covering",
  "bracket",
  "screw",
  "eye",
  "housing",
  "roller",
  "toothedRoller",
  "dividerWire",
  "cord",
  "sleeve",
  "tube",
  "spool",
  "tubeSupport",
  "drive",
  "loop",
  "wand",
  "opening",
  "glass",
  "wall",
  "floor",
  "level",
  "faceCloth",
  "bandCloth",
  "liningCloth",
  "wrongSide",
  "clothOnBolt",
  "waste",
  "selvedge",
  "repeatLine",
  "seam",
  "dimension",
  "leader",
  "label",
  "note",
  "testSquare",
  "overlapMark",
  "ghost",
  "picture",
  "hand",
  "skin",
  "tool",
  "motion",
  "thread",
] as const;
export type Role = (typeof ROLES)[number];

/** Ties a primitive to the plan, so that it can be pressed. */
export interface Ref {
  /** Id of a working, e.g. `fold.half-fold`. */
  figure?: string;
  /** JSON pointer of a job field. */
  field?: string;
  /** A thing of the plan: `row-3`, `column-2`, `cord-4`, `face-1`. */
  part?: string;
}

interface Common extends Ref {
  role: Role;
  /**
   * Words that are left out (with their line) where they would lie on others, or where they would leave the
   * drawing too little of a small paper. The facts have them all the same.
   */
  yields?: boolean;
  /** What its words stand on: their border takes that colour. Bare paper unless given. */
  ground?: Role;
  /** Shift on paper, mm, applied after scaling: keeps words and neighbouring figures clear at any scale. */
  shiftPaperMm?: Point;
  /** The same where the drawing is shown without its measures, and what they took is free. */
  bareShiftPaperMm?: Point;
  /** Number of the cord, for its colour and dash rhythm. */
  cord?: number;
  /** Only for a reader at a desk: left out where the drawing is small and read from arm’s length. */
  atDesk?: true;
}

export interface Polyline extends Common {
  kind: "polyline";
  points: readonly Point[];
  closed?: boolean;
  /** Face cloth: how far it hung below here with the shade lowered, so that its pattern can go with it. */
  clothShiftMm?: number;
}

export interface Circle extends Common {
  kind: "circle";
  centre: Point;
  radiusMm: number;
}

/** A mark of fixed size on paper, wherever the scale would make the real thing a speck. */
export interface Marker extends Common {
  kind: "marker";
  at: Point;
  /** A `tag` is a ring with a number in it, for cords, rows and columns. */
  shape: "dot" | "ring" | "cross" | "triangle" | "tag";
  paperMm: number;
  text?: string;
  /** Tags of one name keep clear of each other along their row; a thin line ties those that moved to their point. */
  stack?: string;
  /** The line that it numbers: it slides along it until it is clear of words and of other tags that do. */
  along?: readonly [Point, Point];
}

export interface Text extends Common {
  kind: "text";
  at: Point;
  text: string;
  /** Height of the letters' em on paper, mm. */
  paperMm: number;
  anchor?: "start" | "middle" | "end";
  /** Where `at` is in the height of the line. */
  baseline?: "top" | "middle" | "bottom";
  angleDeg?: number;
  strong?: boolean;
  /** The name of a piece whose size is written under its middle: without that size it stands in the middle itself. */
  overSize?: true;
  /** The place it has, mm of the real thing: turned or made a little smaller to fit, left out where it cannot. */
  roomMm?: readonly [widthMm: number, heightMm: number];
  /** It yields as well where it is longer than this much of the real thing, mm. */
  alongMm?: number;
}

/** A few words beside a point, tied to it by a thin line of fixed length on paper. */
export interface Callout extends Common {
  kind: "callout";
  at: Point;
  text: string;
  paperMm: number;
  /** From the point to the words, mm on paper. */
  offsetPaperMm: Point;
}

/** A dimension line with oblique ticks. Its text must equal the distance it spans (a test measures it). */
export interface Dimension extends Common {
  kind: "dimension";
  from: Point;
  to: Point;
  /** Distance of the dimension line from the points, on paper, mm; positive to the left of from→to as seen on the page. */
  offsetPaperMm: number;
  text: string;
  /** What it measures, printed before the length. */
  label?: string;
  /**
   * Superimposed running dimensions (ISO 129-1): those of one name share one line and one origin, and each
   * writes its distance from the origin beside its own tick.
   */
  running?: string;
}

/**
 * Things as the eye sees them, from behind to the front: small faces with the colour of their own cloth or wood and the
 * light that falls on each. The one primitive with colours: they are those of the real thing, alike on any paper.
 */
export interface Facets extends Common {
  kind: "facets";
  faces: readonly Facet[];
}

export interface Facet {
  points: readonly Point[];
  /** `#rrggbb` in full light. */
  colour: string;
  /** Light on it: 1 gives the colour itself, 0 black. */
  light: number;
}

export type Primitive = Facets | Polyline | Circle | Marker | Text | Callout | Dimension;

/** One fact of the drawing in words, for those who cannot see it. */
export interface Fact {
  label: string;
  text: string;
}

export interface Drawing {
  /** `front`, `back`, `side-half` …: stable, used for file names and the gallery. */
  id: string;
  title: string;
  /** From where it is seen, and what else must be said: “Seen from the back”. */
  caption: string;
  primitives: Primitive[];
  facts: Fact[];
}

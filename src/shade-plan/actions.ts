/**
 * What the hands do in one step, with the figures of this shade that its drawing shows; lengths mm. Sides are as seen from
 * the room.
 */
export type StepAction =
  | { kind: "measure-opening"; widthMm: number; heightMm: number }
  | { kind: "square-cloth" }
  | { kind: "press-hem"; edge: "side" | "bottom"; turnMm: number; turns: number }
  | { kind: "mitre-corner"; aboveMm: number; inMm: number }
  | { kind: "mark-rows"; fromHemMm: number[]; columns: number }
  | { kind: "baste-layers"; layers: number; columnsMm: number[]; everyMm: number }
  | { kind: "sew-ring"; onto: "cloth" | "pocket" | "tape"; rows: number; columns: number }
  | { kind: "sew-sleeve"; rings: number; besideMm: number }
  | { kind: "slide-in"; what: "rib" | "bar"; count: number; lengthMm?: number }
  | { kind: "cover-board"; widthMm: number; lengthMm: number; turnMm: number }
  | { kind: "fix-shade"; how: "staple" | "hook-and-loop"; beyondMm: number }
  | { kind: "set-eye"; count: number; fromWallMm: number; placesMm: number[]; boardMm: number }
  | { kind: "tie-ring"; rings: number; cords: number }
  | { kind: "shake-lock"; slots: number; facing: "left" | "right" }
  | {
      kind: "thread-lock";
      facing: "left" | "right";
      /** From the wall to the room. */
      slots: number[];
      /** Cords in the order of threading. */
      cords: { number: number; from: "left" | "right"; slot: number }[];
    }
  | { kind: "screw-lock"; facing: "left" | "right"; fromEndMm: number; screws: number }
  | { kind: "wind-spool"; spools: number; turns: number }
  | { kind: "hang-board"; on: "brackets" | "screws"; placesMm: number[]; boardMm: number }
  | { kind: "wind-cleat"; below: "lock" | "eye"; side: "left" | "right"; aboveFloorMm: number }
  | { kind: "level-hem"; columnsMm: number[]; widthMm: number; withinMm: number }
  | { kind: "join-tails"; from: "lock" | "eye"; cords: number; belowMm: number }
  | { kind: "dress-folds"; folds: number; raisedMm: number }
  | { kind: "tie-folds"; folds: number; ties: number }
  | { kind: "fix-tag" };

export type ActionKind = StepAction["kind"];

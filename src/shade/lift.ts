/** A place on the board seen from below: x from the left finished edge seen from the room, z from the wall, mm. */
export interface BoardPoint {
  xMm: number;
  zMm: number;
}

/** Slot of the lock, numbered from the wall outwards. */
export interface Slot {
  number: number;
  zMm: number;
  /** Not used for cords as thin as this one, or beyond what is needed. */
  usable: boolean;
  cords: number[];
}

/** Where the lock sits and which way it faces. */
export interface LockSeat {
  /** Centre of the housing, mm from the left finished edge. */
  xMm: number;
  zMm: number;
  /** Every place of the centre that keeps clear of eyes, brackets and board ends, mm. */
  feasibleMm: [from: number, to: number][];
  /** `between` the last two eyes on the control side, or `outside` the last. */
  kind: "between" | "outside";
  /** Unreachable wish: the seat is drawn all the same, with a finding. */
  forced: boolean;
  /** Side of the housing on which the toothed roller and the wires' finished side lie: towards the outside of the shade. */
  facing: "left" | "right";
  screwsMm: BoardPoint[];
}

/** One lift cord and its whole path. Cords carry the number of their column. */
export interface CordRun {
  number: number;
  columnX: number;
  /** End of the lock by which it comes in. */
  entersFrom: "left" | "right";
  slot: number;
  /** Order among cords in one slot, from the wall outwards. */
  placeInSlot: number;
  /** Bottom ring to board, mm. */
  riseMm: number;
  /** Along the board from its own eye to the lock, mm. */
  runMm: number;
  tailMm: number;
  knotsMm: number;
  /** Exact length and the length to cut (raised to the ruler), mm. */
  lengthMm: number;
  cutMm: number;
  /** Path seen from below: own eye, lane along the board, roller. */
  path: BoardPoint[];
  /** Numbers of the eyes it passes, its own first. */
  eyes: number[];
  /** Weight it carries at full raise, N, and the pull that this asks for at the hand. */
  loadN: number;
  pullN: number;
}

export interface Lift {
  kind: "cord-lock";
  controlSide: "left" | "right";
  lockId: string;
  lockName: string;
  /** Locks that came before it in the list and do not take these cords, each with why. */
  refusedLocks?: { lockId: string; lockName: string; reason: string }[];
  cordId: string;
  cordName: string;
  cordDiameterMm: number;
  housingLengthMm: number;
  housingWidthMm: number;
  housingHeightMm: number;
  slots: Slot[];
  dividerWires: number;
  seat: LockSeat;
  eyes: BoardPoint[];
  cords: CordRun[];
  /** Order in which cords go into the lock, by number. */
  threading: number[];
  /** Sum of cut lengths, mm. */
  cordTotalMm: number;
  /** Pull at the hand with the shade nearly raised, N. */
  pullN: number;
  /** Total weight on the cords at full raise, N. */
  heldN: number;
  /** Tail below the lock when lowered and when raised, mm. */
  tailLoweredMm: number;
  tailRaisedMm: number;
  /** Height of the cords' lower end above the floor at both ends of the travel, where known, mm. */
  tailEndAboveFloorLoweredMm?: number;
  tailEndAboveFloorRaisedMm?: number;
}

import type { OwnFit } from "./own-fit.ts";

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
  /**
   * As near to the control side as it clears what is there; further in for an easier pull, or so that the cords come in
   * level and the lock holds them; or where the maker set it.
   */
  chosenFor: "reach" | "pull" | "hold" | "maker";
  /** Side of the housing on which the toothed roller and the wires' finished side lie: towards the outside of the shade. */
  facing: "left" | "right";
  screwsMm: BoardPoint[];
}

/** How the cords come into the lock, seen from the room: heights below the underside of the board, mm. */
export interface CordEntry {
  /** Diameter and length of the rollers, and their axis. */
  rollerMm: number;
  rollerLengthMm: number;
  axisMm: number;
  /** The middle of a cord in an eye, at the housing’s end, and over the roller. */
  eyeLevelMm: number;
  mouthLevelMm: number;
  lockLevelMm: number;
  /** From the eye nearest to the lock: above 0 it climbs, below 0 it descends. */
  climbDeg: number;
}

/** One lift cord, whatever takes it up. Cords carry the number of their column. */
export interface LiftCord {
  number: number;
  columnX: number;
  /** Bottom ring to board, mm. */
  riseMm: number;
  knotsMm: number;
  /** Exact length and the length to cut (raised to the ruler), mm. */
  lengthMm: number;
  cutMm: number;
  /** Weight it carries at full raise, N, and the pull that this asks for where the cord is taken up. */
  loadN: number;
  pullN: number;
}

/** A cord over a lock, and its whole path. */
export interface CordRun extends LiftCord {
  /** End of the lock by which it comes in. */
  entersFrom: "left" | "right";
  slot: number;
  /** Order among cords in one slot, from the wall outwards. */
  placeInSlot: number;
  /** Along the board from its own eye to the lock, mm. */
  runMm: number;
  tailMm: number;
  /** Path seen from below: own eye, lane along the board, roller. */
  path: BoardPoint[];
  /** Numbers of the eyes it passes, its own first. */
  eyes: number[];
}

/** The eye or pulley over which all cords turn down to the cleat. */
export interface TurnEye extends BoardPoint {
  /** Column whose own eye it is; absent where it stands by itself, nearer to the end of the board. */
  column?: number;
  id: string;
  name: string;
  diameterMm: number;
}

/** A cord along the board and over the last eye, down to the cleat. */
export interface CleatCord extends LiftCord {
  /** Along the board from its own eye to the last one, mm. */
  runMm: number;
  tailMm: number;
  /** Path seen from below: own eye, eyes passed, last eye. */
  path: BoardPoint[];
  /** Numbers of the eyes above columns that it passes, its own first. */
  eyes: number[];
  /** Turns on its way, rad: at its own eye and those it passes, and over the last one. */
  eyesRad: number;
  turnRad: number;
}

/** A cord that ends on a spool above its column: it has no tail. */
export interface SpoolCord extends LiftCord {
  /** Cord that stays on the spool with the shade lowered, mm. */
  wrapsMm: number;
}

/** Sleeves of woven tube that the rings grip, one on each cord: cut length of one and of all, mm. */
export interface WovenSleeves {
  count: number;
  cutMm: number;
  totalMm: number;
}

/** Forces at one height on the way from lowered to raised. */
export interface CourseHeight {
  /** How far the bottom row has risen, mm, and the same as a share of its travel. */
  liftMm: number;
  raise: number;
  /** Weight on all cords together, N. */
  heldN: number;
  /** Pull of the hand that raises it from here, and what must hold it here, N. */
  pullN: number;
  holdN: number;
  /** On the tube, where there is one, N·m. */
  torqueNm?: number;
}

/** What one part of the rig adds to the pull at the hand, shade raised, N. */
export interface PullShare {
  /**
   * The weight itself, the turn at a cord's own eye, the bends from the last eye into the lock, its roller; without a
   * lock the turn over the last eye.
   */
  what: "weight" | "own-eye" | "passed-eye" | "roller" | "last-eye";
  /** Column of the eye. */
  eye?: number;
  addsN: number;
}

/** Forces at every height: straight lines between neighbouring entries, a step where two share a height. */
export interface LiftCourse {
  heights: CourseHeight[];
  /** What makes up the pull where it is greatest: the weight first; empty for a tube. */
  shares: PullShare[];
  /** Pull at the hand if every eye above a column but the last before the lock were a pulley, N. */
  withPulleysN?: number;
  /** How far the hem hangs out of level, since cords stretch unequally, mm, at the worst height. */
  levelMm?: number;
}

/** Forces on the rail's cords with the rail let down so far and the hem at its lowest, N. */
export interface RailHeight {
  downMm: number;
  heldN: number;
  pullN: number;
  holdN: number;
}

/** One cord of a top rail: loads with the rail up and the lift cords slack. */
export interface RailCord {
  column: number;
  xMm: number;
  /** Along the board from its own eye to its lock, mm. */
  runMm: number;
  knotsMm: number;
  lengthMm: number;
  cutMm: number;
  loadN: number;
  pullN: number;
  /** Seen from below: own eye, lane along the board, roller. */
  path: BoardPoint[];
}

/** An upper edge that can be let down: a stiff rail on cords and a lock of its own. */
export interface TopRail {
  /** How far it comes down, mm. */
  dropMm: number;
  /** End of the board at which its lock sits, seen from the room. */
  side: "left" | "right";
  /** Length of the rail, mm. */
  railMm: number;
  massKg: number;
  lockId: string;
  lockName: string;
  housingLengthMm: number;
  housingWidthMm: number;
  housingHeightMm: number;
  seat: { xMm: number; zMm: number; forced: boolean; screwsMm: BoardPoint[] };
  eyes: BoardPoint[];
  /** Outside diameter of its screw eyes, mm. */
  eyeDiameterMm: number;
  cords: RailCord[];
  /** Weight on its cords and pull at the hand where they are greatest, N. */
  heldN: number;
  pullN: number;
  /** From up to let down: straight lines between neighbouring entries, a step where two share a height. */
  course: RailHeight[];
  /** Its cords below their lock, the rail let down and up, mm. */
  tailDownMm: number;
  tailUpMm: number;
  cordTotalMm: number;
}

/** What every lift has, whatever takes up its cords. */
interface AnyLift {
  /** Where the cords end: over a lock on the board, on a cleat at the wall, or on spools of a tube under the board. */
  takeUp: "lock" | "cleat" | "tube";
  /** What hangs within reach for a hand to work it. */
  hangs: "tail" | "wand" | "loop" | "nothing";
  poweredBy: "hand" | "spring" | "motor";
  /** A cord or a loop of cord hangs in front, where a child can come to it: of the lift, or of a top that comes down. */
  cordsAtFront: boolean;
  controlSide: "left" | "right";
  /** How the cords run up the back: bare through rings, in a woven sleeve that rings grip, in a sewn sleeve. */
  rearCords: "open" | "ring-locked" | "enclosed";
  wovenSleeves?: WovenSleeves;
  cordId: string;
  cordName: string;
  cordDiameterMm: number;
  /** Under a tube there are none. */
  eyes: BoardPoint[];
  /** Sum of cut lengths, mm. */
  cordTotalMm: number;
  /** Pull at the hand where it is greatest, N; 0 for a motor. */
  pullN: number;
  /** Total weight on the cords at full raise, N. */
  heldN: number;
  /** Forces at every height between. */
  course: LiftCourse;
  /** Absent where the shade hangs from the board. */
  topRail?: TopRail;
}

/** Cords through eyes along the board and over a lock; their tails hang. */
export interface CordLockLift extends AnyLift {
  kind: "cord-lock";
  takeUp: "lock";
  hangs: "tail";
  poweredBy: "hand";
  /** Outside diameter of the screw eyes, mm. */
  eyeDiameterMm: number;
  lockId: string;
  lockName: string;
  /** Locks that came before it in the list and do not take these cords, each with why. */
  refusedLocks?: { lockId: string; lockName: string; reason: string }[];
  /** The maker's own locks by his or her cords; absent for who has none. */
  ownFit?: OwnFit;
  housingLengthMm: number;
  housingWidthMm: number;
  housingHeightMm: number;
  /** Between roller end and housing, where it was measured, mm. */
  endGapMm?: number;
  entry: CordEntry;
  slots: Slot[];
  dividerWires: number;
  seat: LockSeat;
  cords: CordRun[];
  /** Order in which cords go into the lock, by number. */
  threading: number[];
  /** Tail below the lock when lowered and when raised, mm. */
  tailLoweredMm: number;
  tailRaisedMm: number;
  /** Height of the cords' lower end above the floor at both ends of the travel, where known, mm. */
  tailEndAboveFloorLoweredMm?: number;
  tailEndAboveFloorRaisedMm?: number;
}

/** Cords through eyes along the board, over the last of them and straight down to a cleat: nothing else holds the shade. */
export interface CleatLift extends AnyLift {
  kind: "cleat";
  takeUp: "cleat";
  hangs: "tail";
  poweredBy: "hand";
  /** Outside diameter of the screw eyes above the columns, mm. */
  eyeDiameterMm: number;
  turn: TurnEye;
  cords: CleatCord[];
  /** Below the last eye when lowered and when raised, mm. */
  tailLoweredMm: number;
  tailRaisedMm: number;
  /** Height of the cords' lower end above the floor before they are wound, where known, mm. */
  tailEndAboveFloorLoweredMm?: number;
  tailEndAboveFloorRaisedMm?: number;
  /** Pull on the cleat that keeps the shade raised, N. */
  holdN: number;
  /** Down from the last eye to the cleat, where the height of the shade is known, mm; negative where it lies above. */
  toCleatMm?: number;
  /** What is left to wind on the cleat with the shade raised, mm, and how many figures of eight that makes. */
  windMm?: number;
  figureEights?: number;
}

/** The tube under the board on which the spools sit. Along the board from the left finished edge, mm. */
export interface LiftTube {
  id: string;
  name: string;
  diameterMm: number;
  fromMm: number;
  toMm: number;
  lengthMm: number;
  /** Its axis: from the wall, and below the underside of the board, mm. */
  zMm: number;
  axisMm: number;
}

/** One spool, its middle above its column. */
export interface Spool {
  number: number;
  xMm: number;
  lengthMm: number;
  coreMm: number;
  flangeMm: number;
}

/** A bearing of the tube, screwed up into the board. */
export interface TubeSupport {
  number: number;
  xMm: number;
}

/** What turns the tube, and where it sits under the board. */
export interface DriveSeat {
  id: string;
  name: string;
  /** Its middle. */
  xMm: number;
  zMm: number;
  lengthMm: number;
  heightMm: number;
  depthMm: number;
  /** `outside` the last spool on the control side, `between` two spools, or at the `far` end. */
  place: "outside" | "between" | "far";
  /** Every place of its middle that keeps clear of spools and board ends, mm. */
  feasibleMm: [from: number, to: number][];
  /** Unreachable wish: it is drawn all the same, with a finding. */
  forced: boolean;
  screwsMm: BoardPoint[];
  /** Heaviest shade that its maker states, kg. */
  massMaxKg?: number;
}

/** What every lift with a tube has. */
interface TubeParts extends AnyLift {
  takeUp: "tube";
  cords: SpoolCord[];
  tube: LiftTube;
  spools: Spool[];
  supports: TubeSupport[];
  supportLengthMm: number;
  drive: DriveSeat;
  /** Drives that came before it in the list and do not do, each with why. */
  refusedDrives?: { driveId: string; driveName: string; reason: string }[];
  /** From the underside of the board to the lowest part, mm. */
  heightMm: number;
  /** Wraps that stay on a spool with the shade lowered. */
  wrapsLeft: number;
  /** From the tube's axis to the middle of the cord that runs off, lowered and raised, mm. */
  woundLoweredMm: number;
  woundRaisedMm: number;
  /** Turns of the tube from lowered to raised. */
  turns: number;
  /** Weight on the cords as the first fold begins, N. */
  heldLoweredN: number;
  torqueLoweredNm: number;
  torqueRaisedNm: number;
  /** Bend of the tube, and hem out of level by its twist, shade raised, mm; absent where its wall is not known. */
  stiffness?: { bendMm: number; twistMm: number };
}

/** A spring balances the weight; the shade is raised and lowered by hand at its hem. */
export interface SpringLift extends TubeParts {
  kind: "spring";
  hangs: "nothing";
  poweredBy: "spring";
  /** Pull at the hem that friction must hold each way, so that the shade stays where it is left, N. */
  bandN: number;
  massMinKg?: number;
}

/** A rigid wand turns the tube. */
export interface WandLift extends TubeParts {
  kind: "tube-wand";
  hangs: "wand";
  poweredBy: "hand";
  /** Below the drive, mm. */
  wandMm: number;
  detachable: boolean;
  /** Radius on which the hand turns it, mm. */
  crankMm: number;
  /** Turns of the wand from lowered to raised. */
  handTurns: number;
  wandEndAboveFloorMm?: number;
}

/** A continuous loop turns the tube; a tensioner fixed to the wall holds its lower end. */
export interface LoopLift extends TubeParts {
  kind: "tube-loop";
  hangs: "loop";
  poweredBy: "hand";
  /** From the drive's wheel down to the lowest point of the loop, mm. */
  loopDropMm: number;
  /** From the top line down to the wheel, mm. */
  loopExitBelowTopMm: number;
  loopPerimeterMm: number;
  wheelMm: number;
  /** A connector in it comes apart under a pull. */
  breakaway?: true;
  /** Loop that the hand pulls down from lowered to raised, mm. */
  loopTravelMm: number;
  loopEndAboveFloorMm?: number;
}

/** A motor turns the tube. */
export interface MotorLift extends TubeParts {
  kind: "motor";
  hangs: "nothing";
  poweredBy: "motor";
  power?: "mains" | "low-voltage";
  /** From lowered to raised, where the motor's speed is known. */
  raiseSeconds?: number;
}

export type TubeLift = SpringLift | WandLift | LoopLift | MotorLift;
export type LockLift = CordLockLift;
export type Lift = LockLift | CleatLift | TubeLift;

import type { Finding, Remedy, Working } from "../figures/index.ts";
import type { English, Goods, Mount, OfferTerms, Opening, Place, Purpose, StyleKind } from "../job/index.ts";
import type {
  BoardPlan,
  Caution,
  ChildSafetyTag,
  ClothFeel,
  ClothPlan,
  Cost,
  ExistingPlan,
  Folds,
  Form,
  Grid,
  Lift,
  Mass,
  RoomAlignment,
  SafetyReview,
  Size,
  Step,
} from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";

export const PLAN_FORMAT = "shadewright-plan";
export const PLAN_VERSION = 2;

/** Everything that follows from one window of the job. */
export interface ShadePlan {
  shadeId: string;
  windowName: string;
  roomId: string;
  roomName: string;
  style: StyleKind;
  mount: Mount;
  /** What was measured at the window, as the job gives it: for the measure sheet. */
  opening?: Opening;
  /** It hangs already: what is done to it, and what that takes. All else of the plan then says how it is. */
  existing?: ExistingPlan;
  size: Size;
  grid: Grid;
  /** How the style shapes its cloth beyond a plain rectangle with rings. */
  form: Form;
  /** What all its layers together weigh and how they bend. */
  feel: ClothFeel;
  /** How its cloth folds, where it does so in one plane: not where it is drawn in across, or hangs in swags. */
  folds?: Folds;
  cloth: ClothPlan;
  mass: Mass;
  lift: Lift;
  board: BoardPlan;
  steps: Step[];
  cost: Cost;
  /** Cautions for the first sheet. */
  cautions: Caution[];
  /** Its cords evaluated against the rules of its place and purpose, at every height. */
  safety: SafetyReview;
  /** The child-safety tag to print, as data. */
  tag: ChildSafetyTag;
  workings: Working[];
  findings: Finding[];
}

/** What the windows of one room share; findings of the room stand with those of the job. */
export interface RoomPlan {
  roomId: string;
  roomName: string;
  /** Where the job asks for a room in line. */
  alignment?: RoomAlignment;
  workings: Working[];
}

/** What answers every finding of one cause, pressed once. */
export interface CauseAnswer {
  /** As of the card. */
  causeId: string;
  /** The shades whose findings it answers, each of which it changes. */
  shadeIds: string[];
  remedies: Remedy[];
}

/** Everything that follows from a job. Derived; never stored as truth. */
export interface Plan {
  format: typeof PLAN_FORMAT;
  version: typeof PLAN_VERSION;
  jobId: string;
  jobName: string;
  client?: string;
  demo: boolean;
  place?: Place;
  purpose?: Purpose;
  goods?: Goods;
  /** What a client reads on quote, order and invoice, as the job gives it. */
  offer?: OfferTerms;
  units: UnitChoice;
  /** In whose English its texts are read. In code they stand in British English; whoever writes them out spells them so. */
  english: English;
  shades: ShadePlan[];
  rooms: RoomPlan[];
  /** Findings of the job as a whole; those of a shade stand with it. */
  findings: Finding[];
  /** What answers a cause on one shade, and on all that have it; there once remedies are proven. */
  answers?: CauseAnswer[];
  /** Shopping and cost of all shades together. */
  cost: Cost;
  /** Workings of the job's own figures. */
  workings: Working[];
}

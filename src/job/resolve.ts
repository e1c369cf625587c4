import type { UnitChoice } from "../units/index.ts";
import { type Catalogue, FORMER_IDS } from "./catalogue.ts";
import type { Cutting } from "./cutting.ts";
import { DEFAULT_CUTTING, DEFAULT_RATES, DEFAULTS, isWorkedOut, type MakingGroup } from "./defaults.ts";
import type { Existing } from "./existing.ts";
import type { Goods, Job, Mount, Opening, Place, Purpose, Rates, Room, StyleKind, Window } from "./job.ts";
import { liftByWeight } from "./lift-by-weight.ts";
import { LIFT_TRAITS } from "./lift-traits.ts";
import type { LiftKind, Making, RearGuide } from "./making.ts";
import type { Bar, Board, Cloth, Cord, CordLock, Drive, Eye, PartKind, Ring, Tube } from "./parts.ts";
import { locksToChoose, ownUsualPart, PART_SETTINGS, type PartsAtHand } from "./parts-at-hand.ts";
import { styleDefault } from "./style-defaults.ts";
import { STYLE_TRAITS } from "./style-traits.ts";

type Groups = { [G in keyof Making]-?: NonNullable<Making[G]> };
type Table = typeof DEFAULTS;
/** Settings with a default are always there; those that the shade works out are there when the maker fixed them. */
export type ResolvedMaking = {
  [G in MakingGroup]: {
    [K in keyof Table[G] & keyof Groups[G] as Table[G][K] extends { workedOut: true }
      ? never
      : K]-?: NonNullable<Groups[G][K]>;
  } & {
    [K in keyof Table[G] & keyof Groups[G] as Table[G][K] extends { workedOut: true }
      ? K
      : never]?: NonNullable<Groups[G][K]>;
  };
};

export interface LayerCloths {
  face: Cloth;
  interlining?: Cloth;
  blackout?: Cloth;
  lining?: Cloth;
}

/** One shade with every question answered: by the maker, by the workshop, or by a default. */
export interface ResolvedShade {
  shadeId: string;
  windowName: string;
  roomId: string;
  roomName: string;
  /** JSON pointer of the window in the job. */
  path: string;
  units: UnitChoice;
  place?: Place;
  purpose?: Purpose;
  goods?: Goods;
  style: StyleKind;
  mount: Mount;
  opening: Opening;
  /** The window as the job has it, for patches that put others in its place. */
  window: Window;
  making: ResolvedMaking;
  /** As the maker chose, else as it was proposed for the place and the purpose. */
  liftKind: LiftKind;
  rearCords: RearGuide;
  /** What the shade itself says about its making, before workshop and defaults: where patches go. */
  own?: Making;
  /** The shade hangs already: as it was measured, and what is to be done to it. */
  existing?: Existing;
  /** Groups of settings that the shade has of its own; undefined where it has none at all. A patch must know. */
  ownGroups?: readonly MakingGroup[];
  cloths: LayerCloths;
  /** Cloths of the bands on the face, where one was chosen. */
  bandCloths: { banding?: Cloth; bottomBand?: Cloth };
  /** References that named nothing, or a part of which too little is known: where, what was asked, what stands in. */
  missing: { path: string; asked: string; used: string; what: string; unknown?: string[] }[];
  /** The face is the stand-in of the catalogue, since none was named. */
  faceAssumed: boolean;
  lock?: CordLock;
  /** Every lock to choose from: the maker's own alone where there is one, else those of the catalogue. */
  locks: CordLock[];
  /** Every part to choose from, the maker's own first: for remedies. */
  parts: PartsAtHand;
  cord: Cord;
  eye: Eye;
  /** Over which all cords turn down to a cleat, where there is no lock. */
  turnEye: Eye;
  ring: Ring;
  tube: Tube;
  /** The maker's own choice of drive, and every drive to choose from. */
  drive?: Drive;
  drives: Drive[];
  bar: Bar;
  rib: Bar;
  board: Board;
}

/** Rates with their defaults, and the prices that were typed, by line of the shopping list. */
export type ResolvedRates = Required<Rates>;

type Loose = Record<string, Record<string, unknown> | undefined>;

/** Shade over workshop over the style’s own default over the usual one, setting by setting. */
export function resolveMaking(
  shade: Making | undefined,
  workshop: Making | undefined,
  style: StyleKind = "flat",
): ResolvedMaking {
  const usual: Loose = usualMaking(style);
  const resolved: Loose = {};
  for (const group in usual) {
    const habits = (workshop as Loose | undefined)?.[group];
    const own = (shade as Loose | undefined)?.[group];
    // Groups of which nothing was said are one and the same for every shade.
    resolved[group] =
      habits === undefined && own === undefined ? usual[group] : over(over(usual[group], habits), own);
  }
  return resolved as ResolvedMaking;
}

/** `values` with what was said of them; a setting that is left out stands as it was. */
function over(
  values: Readonly<Record<string, unknown>> | undefined,
  said: Readonly<Record<string, unknown>> | undefined,
): Record<string, unknown> {
  const changed = { ...values };
  for (const key in said) if (said[key] !== undefined && said[key] !== null) changed[key] = said[key];
  return changed;
}

const USUAL = new Map<StyleKind, ResolvedMaking>();

/** What a style takes where neither the shade nor the workshop said; settings that are worked out are left out. */
function usualMaking(style: StyleKind): ResolvedMaking {
  const known = USUAL.get(style);
  if (known !== undefined) return known;
  const making: Loose = {};
  for (const group of Object.keys(DEFAULTS) as MakingGroup[]) {
    const table: Record<string, Parameters<typeof isWorkedOut>[0]> = DEFAULTS[group];
    const values: Record<string, unknown> = {};
    for (const [key, entry] of Object.entries(table)) {
      const value = styleDefault(style, group, key)?.value ?? (isWorkedOut(entry) ? undefined : entry.value);
      if (value !== undefined) values[key] = value;
    }
    making[group] = Object.freeze(values);
  }
  USUAL.set(style, making as ResolvedMaking);
  return making as ResolvedMaking;
}

export function resolveRates(rates: Rates): ResolvedRates {
  const resolved: Record<string, unknown> = { prices: rates.prices ?? {} };
  for (const [key, entry] of Object.entries(DEFAULT_RATES))
    resolved[key] = rates[key as keyof Rates] ?? entry.value;
  return resolved as ResolvedRates;
}

/** Without a table any length is cut along. */
export type ResolvedCutting = Required<Omit<Cutting, "tableMm">> & Pick<Cutting, "tableMm">;

export function resolveCutting(cutting: Cutting = {}): ResolvedCutting {
  const { tableMm } = cutting;
  const resolved: Record<string, unknown> = tableMm === undefined ? {} : { tableMm };
  for (const [key, entry] of Object.entries(DEFAULT_CUTTING))
    resolved[key] = cutting[key as keyof Cutting] ?? entry.value;
  return resolved as ResolvedCutting;
}

/** What is proposed for a shade whose maker chose no lift. */
export interface LiftProposal {
  kind: LiftKind;
  rearCords: RearGuide;
}

/** Nothing proposed: the lift that the trade has always made. */
export const PLAIN_LIFT: LiftProposal = { kind: "cord-lock", rearCords: "open" };

/** Why a part that is there cannot be planned with: its name stands for the id, and what is not known of it. */
function tooLittle(
  { halfKnown }: PartsAtHand,
  kind: PartKind,
  asked: string,
): { asked: string; unknown: string[] } | undefined {
  const half = halfKnown?.find((part) => part.kind === kind && part.id === asked);
  return half && { asked: half.name, unknown: half.unknown };
}

/** Where nobody chose a cord, an eye, a ring or a tube, the maker's own before an example. */
function withOwnParts(making: ResolvedMaking, said: readonly (Making | undefined)[], parts: PartsAtHand) {
  const own: Record<string, string> = {};
  for (const setting of PART_SETTINGS) {
    const id = said.some((one) => one?.lift?.[setting] !== undefined)
      ? undefined
      : ownUsualPart(parts, setting);
    if (id !== undefined) own[setting] = id;
  }
  return Object.keys(own).length === 0 ? making : { ...making, lift: { ...making.lift, ...own } };
}

/**
 * The lift of a shade that hangs already where its maker chose none: the one that it has, but for what is to be done
 * to it. One that is to go without cords, or to be made safer, takes what is proposed for the place.
 */
function liftOfExisting(
  { tasks, strung, rearCords = "open" }: Existing,
  proposal: LiftProposal,
): LiftProposal {
  if (tasks.includes("make-safer")) return proposal;
  if (tasks.includes("go-cordless"))
    return LIFT_TRAITS[proposal.kind].cordsAtFront ? { ...proposal, kind: "spring" } : proposal;
  if (tasks.includes("fit-lock") || tasks.includes("replace-lock")) return { ...PLAIN_LIFT, rearCords };
  return { kind: strung, rearCords };
}

/**
 * Answers every question of one window. Never fails: a reference to nothing falls back and is reported.
 *
 * @throws where the catalogue has no part of a kind: a bug
 */
export function resolveShade(
  job: Pick<Job, "units" | "place" | "purpose" | "goods" | "workshop">,
  parts: PartsAtHand,
  room: Pick<Room, "id" | "name">,
  window: Window,
  path: string,
  proposal: LiftProposal = PLAIN_LIFT,
): ResolvedShade {
  const missing: ResolvedShade["missing"] = [];
  const { shade } = window;
  const { existing } = shade;
  const proposed = existing === undefined ? proposal : liftOfExisting(existing, proposal);
  const making = withOwnParts(
    resolveMaking(shade.making, job.workshop, shade.style),
    [shade.making, job.workshop],
    parts,
  );
  const find = <K extends PartKind>(
    kind: K,
    asked: string,
    at: string,
    what: string,
  ): Catalogue[K][number] => {
    const list: readonly Catalogue[K][number][] = parts[kind];
    const found =
      list.find((part) => part.id === asked) ?? list.find((part) => part.id === FORMER_IDS[asked]);
    if (found) return found;
    const fallback = list[0];
    if (!fallback) throw new Error(`invalid catalogue: no ${what}`);
    missing.push({ path: at, asked, used: fallback.name, what, ...tooLittle(parts, kind, asked) });
    return fallback;
  };
  const cloth = (asked: string | null | undefined, key: string, fallback?: string): Cloth | undefined => {
    const wanted = asked === undefined ? fallback : asked;
    return wanted === null || wanted === undefined
      ? undefined
      : find("cloths", wanted, `${path}/shade/${key}`, "cloth");
  };
  const own = shade.making as Loose | undefined;
  // A reference to nothing is mended where it was written: in the shade or in the workshop's habits.
  const at = (group: MakingGroup, key: string) =>
    own?.[group]?.[key] === undefined ? `/workshop/${group}/${key}` : `${path}/shade/making/${group}/${key}`;
  // Which drive stands in hangs on the kind of lift, which is not resolved yet.
  const ownDrive = (asked: string): Drive | undefined => {
    const found = parts.drives.find((drive) => drive.id === asked);
    if (found === undefined) {
      const used = "the first that fits";
      missing.push({
        path: at("lift", "drive"),
        asked,
        used,
        what: "drive",
        ...tooLittle(parts, "drives", asked),
      });
    }
    return found;
  };
  const { lift, board } = making;
  const lining = cloth(shade.lining, "lining", "cotton-lining");
  // A shade made with ribs whose maker did not say how takes strips where there is no lining to fold pockets in.
  if (
    STYLE_TRAITS[shade.style].madeWithRibs &&
    lining === undefined &&
    (own?.ribs?.kind ?? job.workshop?.ribs?.kind) === undefined
  )
    making.ribs = { ...making.ribs, kind: "strip-pocket" };
  const cloths: LayerCloths = {
    face: find("cloths", shade.face ?? "plain-cotton", `${path}/shade/face`, "cloth"),
    interlining: cloth(shade.interlining, "interlining"),
    blackout: cloth(shade.blackout, "blackout"),
    lining,
  };
  const tube = find("tubes", lift.tube, at("lift", "tube"), "lift tube");
  const bar = find("bars", board.bar, at("board", "bar"), "weight bar");
  return {
    shadeId: window.id,
    windowName: window.name,
    roomId: room.id,
    roomName: room.name,
    path,
    units: job.units,
    place: job.place,
    purpose: job.purpose,
    goods: job.goods,
    style: shade.style,
    mount: shade.mount,
    opening: window.opening,
    window,
    making,
    liftKind:
      lift.kind ??
      (existing === undefined && lift.drive === undefined
        ? liftByWeight(proposed.kind, window.opening, {
            style: shade.style,
            making,
            cloths,
            bar,
            tube,
            drives: parts.drives,
          })
        : proposed.kind),
    // Who chooses the lift chooses its cords: the proposal stands or falls as a whole.
    rearCords:
      lift.rearCords ??
      (lift.kind === undefined ? proposed : { rearCords: existing?.rearCords ?? PLAIN_LIFT.rearCords })
        .rearCords,
    own: shade.making,
    ...(existing === undefined ? {} : { existing }),
    ...(own === undefined
      ? {}
      : { ownGroups: (Object.keys(own) as MakingGroup[]).filter((group) => own[group] !== undefined) }),
    cloths,
    bandCloths: {
      banding: cloth(shade.banding, "banding"),
      bottomBand: cloth(shade.bottomBand, "bottomBand"),
    },
    missing,
    faceAssumed: shade.face === undefined,
    lock: lift.lock === undefined ? undefined : find("locks", lift.lock, at("lift", "lock"), "cord lock"),
    locks: locksToChoose(parts.locks),
    parts,
    cord: find("cords", lift.cord, at("lift", "cord"), "cord"),
    eye: find("eyes", lift.eye, at("lift", "eye"), "screw eye"),
    turnEye: find(
      "eyes",
      lift.turnEye ?? lift.eye,
      at("lift", lift.turnEye === undefined ? "eye" : "turnEye"),
      "screw eye",
    ),
    ring: find("rings", lift.ring, at("lift", "ring"), "ring"),
    tube,
    drive: lift.drive === undefined ? undefined : ownDrive(lift.drive),
    drives: parts.drives,
    bar,
    rib: find("ribs", making.ribs.rib, at("ribs", "rib"), "rib"),
    board: find("boards", board.section, at("board", "section"), "board"),
  };
}

import type { PatchOperation } from "../../figures/index.ts";
import {
  LIFT_TRAITS,
  type LiftKind,
  type PatchedShade,
  type RearGuide,
  settingPatch,
} from "../../job/index.ts";
import { downToMark, lengthText, upToMark } from "../../units/index.ts";
import type { Check } from "../rules/rule.ts";
import type { SafetyShade } from "../safety-reads.ts";
import type { CloserRows } from "./closer-rows.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { type Course, fromTo } from "./course.ts";
import type { LoopCords } from "./lift-cords.ts";
import { cordGeometry, operatingLoop, type ShadeFacts, topOf } from "./lift-geometry.ts";
import { heldWhileGathering, rearSpans } from "./rear-cords.ts";
import type { ReviewInput } from "./review-input.ts";

export type VariantSetting = [group: "lift" | "fold" | "hobble", key: string, value: unknown];

/** What is done, short enough to press, and what it changes. */
export interface VariantWords {
  label: string;
  /** What is done, without the numbers of this shade. */
  deed?: string;
  changes?: string;
}

/** The same shade with one or two settings changed: what its cords would be then. */
export interface Variant {
  settings: VariantSetting[];
  /** Asked for only where it is offered. */
  says: () => VariantWords;
  geometry: CordGeometry;
}

/** A hand needs at least so much cord to pull at. */
const SHORTEST_TAIL_MM = 150;
/** Where a loop would end if none is planned yet: above the reach of a child on a chair, or half way down. */
const LOOP_ABOVE_FLOOR_MM = 1600;

/** Lifts that are offered in place of the one there is, the most careful first. */
const OTHER_KINDS: Record<LiftKind, VariantWords | undefined> = {
  spring: { label: "Raise it by a spring", changes: "No cord hangs at the front." },
  "tube-wand": { label: "Raise it by a tube and a rigid wand", changes: "No cord hangs at the front." },
  motor: { label: "Raise it by a tube and a motor", changes: "No cord hangs at the front." },
  "tube-loop": {
    label: "Raise it by a tube and a loop on a tension device",
    changes: "One loop hangs, and no cord with a free end.",
  },
  // No remedy leads to cords that hang with a free end.
  "cord-lock": undefined,
  cleat: undefined,
};

const CLOSED_GUIDES = {
  "ring-locked": {
    label: "Run the rear cords in a woven sleeve that every ring grips",
    changes:
      "Between rings no cord is drawn out for as long as they grip it, which only a pull shows; sleeve and rings cost more.",
  },
  enclosed: {
    label: "Run the rear cords in sewn sleeves",
    changes:
      "A sleeve along each column from the bottom ring to the top: more tape and sewing. That no cord can be got at shows only in its test.",
  },
} as const satisfies Partial<Record<RearGuide, VariantWords>>;
type ClosedGuide = keyof typeof CLOSED_GUIDES;

/** Whatever works the shade, a top that comes down keeps cords of its own. */
const RAIL_STAYS = "The top rail’s own cords hang at the front as before.";

export function kindVariants(facts: ShadeFacts, geometry: CordGeometry): Variant[] {
  const railStays = geometry.pulls.some(({ raises }) => raises === "top-rail");
  return (Object.keys(OTHER_KINDS) as LiftKind[]).flatMap((kind): Variant[] => {
    const words = OTHER_KINDS[kind];
    if (words === undefined || kind === geometry.kind) return [];
    return [
      {
        settings: [["lift", "kind", kind]],
        says: () => (railStays ? { ...words, changes: RAIL_STAYS } : words),
        geometry: withKind(facts, geometry, kind),
      },
    ];
  });
}

/** Under a tube or spools no cord runs along the board; what runs up the back stays. */
function withKind(facts: ShadeFacts, geometry: CordGeometry, kind: LiftKind): CordGeometry {
  const { pulls, loop: _loop, wandMm: _wand, leadLooseMm: _lead, leadLowMm: _low, rear, ...same } = geometry;
  return {
    ...same,
    kind,
    pulls: pulls.filter(({ raises }) => raises === "top-rail"),
    ...(rear === undefined ? {} : { rear: { ...rear, boardSpansMm: [], top: topOf({ kind }) } }),
    ...(LIFT_TRAITS[kind].hangs === "loop"
      ? { loop: operatingLoop(expectedLoop(facts), facts.shade.board.thicknessMm) }
      : {}),
  };
}

function expectedLoop({ size, shade }: ShadeFacts): LoopCords {
  const half = size.finishedLengthMm / 2;
  const clear =
    size.topAboveFloorMm === undefined
      ? 0
      : size.topAboveFloorMm - shade.board.thicknessMm - LOOP_ABOVE_FLOOR_MM;
  const breakaway = shade.making.lift.loopJoint === "breakaway" ? ({ breakaway: true } as const) : {};
  return {
    kind: "tube-loop",
    ...breakaway,
    loopDropMm: clear > SHORTEST_TAIL_MM ? Math.min(half, clear) : half,
  };
}

/** The same shade hung from its board, where its top can be let down on cords of its own. */
export function boardVariant({ lift, ...facts }: ReviewInput): Variant[] {
  if (lift.topRail === undefined) return [];
  const { topRail: _rail, ...hung } = lift;
  return [
    {
      settings: [["fold", "topDropMm", 0]],
      says: () => ({ label: "Hang it from the board", changes: "Its top then stays where it is." }),
      geometry: cordGeometry(facts, hung),
    },
  ];
}

/** Closed ways for the cords up the back. */
export function guideVariants(geometry: CordGeometry): Variant[] {
  const { rear } = geometry;
  if (rear === undefined) return [];
  return (Object.keys(CLOSED_GUIDES) as ClosedGuide[])
    .filter((guide) => guide !== rear.guide && rear.guide !== "enclosed")
    .map((guide) => ({
      settings: [["lift", "rearCords", guide]],
      says: () => CLOSED_GUIDES[guide],
      geometry: { ...geometry, rear: { ...rear, guide } },
    }));
}

/** A part that comes apart on every rear cord, where a rule takes that in the place of its limit. */
export function releaseVariant(geometry: CordGeometry, { orElse }: Check): Variant[] {
  const { rear } = geometry;
  if (orElse !== "rear-release" || rear === undefined || rear.releases === true) return [];
  return [
    {
      settings: [["lift", "rearRelease", "breakaway"]],
      says: () => ({
        label: "End every rear cord in a part that comes apart",
        changes: "At what load it does, 6 kg at the most, only a weight shows.",
      }),
      geometry: { ...geometry, rear: { ...rear, releases: true } },
    },
  ];
}

/** The motor’s lead clipped along all of its length. */
export function leadVariant(geometry: CordGeometry): Variant[] {
  if ((geometry.leadLooseMm ?? 0) === 0) return [];
  return [
    {
      settings: [["lift", "leadLooseMm", 0]],
      says: () => ({ label: "Clip the lead to board and wall along all of its length" }),
      geometry: { ...geometry, leadLooseMm: 0 },
    },
  ];
}

/** The shade with so many rows. */
export function rowVariant(
  { shade, size, grid, mass }: ShadeFacts,
  closer: CloserRows,
  rows: number,
  geometry: CordGeometry,
): Variant {
  const laid = closer.grid(rows);
  const [key, value] = closer.setting(rows);
  const { rear } = geometry;
  const spans = rearSpans(laid, rear?.endBelowTopMm ?? shade.board.thicknessMm);
  return {
    settings: [["fold", key, value]],
    says: () => ({
      label: `Set the rows closer: ${rows} rows`,
      deed: "Set the rows closer",
      changes: `${lengthText(closer.foldMm(rows), shade.units)} apart, instead of ${grid.rows.length} rows, with as many more rings to sew.`,
    }),
    geometry: withTravel(
      {
        ...geometry,
        ...(rear === undefined
          ? {}
          : { rear: { ...rear, spans, heldN: heldWhileGathering(size, laid, mass, spans) } }),
      },
      laid.travelMm,
    ),
  };
}

/** With another travel the tail grows by another length. */
function withTravel(geometry: CordGeometry, travelMm: number): CordGeometry {
  const grown = ({ mm: [loweredMm = 0] }: Course) => fromTo(loweredMm, loweredMm + Math.max(0, travelMm));
  const pulls = geometry.pulls.map((pull) =>
    pull.raises === "top-rail"
      ? pull
      : {
          ...pull,
          lengthMm: grown(pull.lengthMm),
          ...(pull.joinedMm === undefined ? {} : { joinedMm: grown(pull.joinedMm) }),
        },
  );
  return { ...geometry, travelMm, pulls };
}

/** A tail shorter by what the rule is missed by, down to what a hand can still hold. */
export function tailVariant(
  { units }: SafetyShade,
  geometry: CordGeometry,
  check: Check,
  missedByMm: number,
): Variant[] {
  const pull = geometry.pulls.find(({ raises }) => raises === "shade");
  if (
    pull === undefined ||
    !/^(?:free-cord|joined-cord|pull-cord|hanging|loose-loop|any-loop|secured)/.test(check.quantity)
  ) {
    return [];
  }
  const loweredMm = pull.lengthMm.mm[0] ?? 0;
  const raisedMm = pull.lengthMm.mm[1] ?? loweredMm;
  const tailMm = downToMark(loweredMm - missedByMm, units.ruler);
  if (tailMm < SHORTEST_TAIL_MM || tailMm >= loweredMm) return [];
  return [
    {
      settings: [["lift", "tailMm", tailMm]],
      says: () => ({
        label: `Cut the tail ${lengthText(tailMm, units)} below the ${pull.from}, shade lowered`,
        deed: "Cut the tails shorter",
      }),
      geometry: {
        ...geometry,
        pulls: geometry.pulls.map((one) =>
          one === pull ? { ...pull, lengthMm: fromTo(tailMm, tailMm + raisedMm - loweredMm) } : one,
        ),
      },
    },
  ];
}

/** The cleat at the height that the rule asks for. */
export function cleatVariant(
  { units }: SafetyShade,
  geometry: CordGeometry,
  check: Check,
  limitMm: number,
): Variant[] {
  const { pulls } = geometry;
  if (pulls.length === 0 || check.quantity !== "cleat-height") return [];
  const cleatMm = upToMark(limitMm, units.ruler);
  return [
    {
      settings: [["lift", "cleatAboveFloorMm", cleatMm]],
      says: () => ({ label: `Fix the cleat ${lengthText(cleatMm, units)} above the floor` }),
      geometry: { ...geometry, pulls: pulls.map((pull) => ({ ...pull, cleatAboveFloorMm: cleatMm })) },
    },
  ];
}

/** Two changes at once: the second is made to what the first has left. */
export function bothVariants(first: Variant, second: Variant): Variant {
  return {
    settings: [...first.settings, ...second.settings],
    says: () => bothSay(first.says(), second.says()),
    geometry: second.geometry,
  };
}

function bothSay(first: VariantWords, second: VariantWords): VariantWords {
  return {
    label: bothText(first.label, second.label),
    ...(first.deed === undefined && second.deed === undefined
      ? {}
      : { deed: bothText(first.deed ?? first.label, second.deed ?? second.label) }),
    changes: [first.changes, second.changes].filter((text) => text !== undefined).join(" "),
  };
}

function bothText(first: string, second: string): string {
  return `${first}; ${second.charAt(0).toLowerCase()}${second.slice(1)}`;
}

/** One patch for all settings. */
export function variantPatch(shade: PatchedShade, settings: readonly VariantSetting[]): PatchOperation[] {
  return settings.flatMap(([group, key, value]) => settingPatch(shade, group, key, value));
}

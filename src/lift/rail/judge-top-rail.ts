import type { Finding, Remedy } from "../../figures/index.ts";
import { partChoice, STYLE_TRAITS, settingPatch, styleWithArticle } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { forceText, lengthText } from "../../units/index.ts";
import { hardPull } from "../hard-pull.ts";
import { neededStrengthN, STRENGTH_FACTOR } from "../judge-strength.ts";
import type { LiftShade } from "../lift-input.ts";
import type { PlannedRail } from "./top-rail.ts";

/** A top that comes down: what it asks for, and where it cannot be. */
export function judgeTopRail(shade: LiftShade, planned: PlannedRail | undefined): Finding[] {
  const askedMm = shade.making.fold.topDropMm;
  if (askedMm <= 0) return [];
  const base = {
    stage: "rig",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/fold/topDropMm`,
  } as const;
  const fromBoard = {
    label: "Hang it from the board",
    patch: settingPatch(shade, "fold", "topDropMm", 0),
  };
  if (!STYLE_TRAITS[shade.style].takesTopRail) {
    return [
      {
        ...base,
        id: "rig.top-not-for-style",
        severity: "fix",
        text: `The top of ${styleWithArticle(shade.style)} shade cannot be let down: only flat cloth hangs from a rail as it hangs from a board. It is planned from the board.`,
        cite: cite("our-choice", "gathers and pleats need the board’s width of heading"),
        remedies: [fromBoard],
      },
    ];
  }
  if (shade.opening.head !== undefined) {
    return [
      {
        ...base,
        id: "rig.top-under-head",
        severity: "stop",
        text: "Under a head that is not level no rail can hang: the top of this shade must stay at its board.",
        cite: cite("geometry"),
        remedies: [fromBoard],
      },
    ];
  }
  if (planned === undefined) return [];
  const { rail } = planned;
  const text = (mm: number) => lengthText(mm, shade.units);
  const force = (forceN: number) => forceText(forceN, shade.units);
  return [
    {
      ...base,
      id: "rig.top-down",
      severity: "note",
      text: `Its top comes down by ${text(rail.dropMm)} on ${rail.cords.length} cords of its own, over a second lock at the ${rail.side} end of the board, seen from the room. With the top down ${text(rail.dropMm)} of cord run bare between board and rail, whatever encloses them further down: the review of cords counts them. Up, they carry ${force(rail.heldN)}, all of shade and rail while the lift cords are slack, and take a pull of about ${force(rail.pullN)}.`,
      cite: cite("geometry", "cord between board and rail"),
      figures: ["rig.rail-held", "rig.rail-pull"],
      remedies: [fromBoard],
    },
    ...hardPull(shade, rail.pullN, {
      path: base.path,
      takes: `Drawing the top up takes a pull of about ${force(rail.pullN)} for a weight of ${force(rail.heldN)}.`,
      eases: "Pulleys in place of the eyes or a lighter bar make it lighter.",
      figures: ["rig.rail-pull", "rig.rail-held"],
      remedies: [...pulleys(shade), fromBoard],
      of: { stage: "rig", id: "rig.rail-hard-pull" },
    }),
    ...weakCord(shade, planned, base),
    ...noRoom(shade, planned, base, fromBoard),
    ...(rail.dropMm < askedMm - 1
      ? [
          {
            ...base,
            id: "rig.top-drop-limited",
            severity: "note" as const,
            text: `The top can come down ${text(rail.dropMm)} at most, to where the raised stack hangs; ${text(askedMm)} was asked for.`,
            cite: cite("geometry"),
            remedies: [],
          },
        ]
      : []),
  ];
}

type Base = Pick<Finding, "stage" | "shadeId" | "path">;

function pulleys(shade: LiftShade): Remedy[] {
  return shade.parts.eyes
    .filter(({ id, pulleyShare }) => pulleyShare !== undefined && id !== shade.eye.id)
    .slice(0, 1)
    .map(partChoice(shade, "lift", "eye", " in place of the eyes"));
}

/** Its cords carry more than the lift's: each is fewer, and the whole shade hangs on them. */
function weakCord(shade: LiftShade, { rail }: PlannedRail, base: Base): Finding[] {
  const { breakingN, name } = shade.cord;
  const neededN = Math.max(
    ...rail.cords.map(({ loadN, pullN }) => neededStrengthN({ loadN, runningN: pullN })),
  );
  const path = `${shade.path}/shade/making/lift/cord`;
  if (breakingN === undefined) {
    return [
      {
        ...base,
        id: "rig.rail-strength-unknown",
        severity: "unproven",
        path,
        text: `The rail’s cords need a breaking strength of ${forceText(neededN, shade.units)}; that of “${name}” is not given. Ask its maker.`,
        cite: STRENGTH_FACTOR.cite,
        figures: ["rig.rail-held"],
        remedies: [],
      },
    ];
  }
  if (breakingN >= neededN) return [];
  return [
    {
      ...base,
      id: "rig.rail-cord-too-weak",
      severity: "stop",
      path,
      text: `The rail’s cords need a breaking strength of ${forceText(neededN, shade.units)}, ${STRENGTH_FACTOR.value} times what the heaviest of them takes with its knot; “${name}” breaks at ${forceText(breakingN, shade.units)}.`,
      cite: STRENGTH_FACTOR.cite,
      figures: ["rig.rail-held"],
      remedies: shade.parts.cords
        .filter((cord) => (cord.breakingN ?? 0) >= neededN)
        .slice(0, 2)
        .map(partChoice(shade, "lift", "cord")),
    },
  ];
}

/** Its eyes, cords and lock share the board with those of the lift. */
function noRoom(shade: LiftShade, { rail, rig }: PlannedRail, base: Base, fromBoard: Remedy): Finding[] {
  const lacks = [
    ...(rig.eyesMeetLift
      ? ["its eyes have no room between the wall edge and what hangs under the board"]
      : []),
    ...(rig.seat.forced ? [`“${rail.lockName}” has no place clear of the lift at the ${rail.side} end`] : []),
    ...(rig.cordsMeetLock ? ["its cords touch the housing of the lift’s lock"] : []),
  ];
  const deeper = shade.parts.boards
    .filter(({ depthMm }) => depthMm > shade.board.depthMm)
    .sort((a, b) => a.depthMm - b.depthMm)
    .slice(0, 2)
    .map(partChoice(shade, "board", "section"));
  return [
    ...(lacks.length === 0
      ? []
      : [
          {
            ...base,
            id: "rig.rail-no-room",
            severity: "stop" as const,
            path: `${shade.path}/shade/making/board/section`,
            text: `The top rail’s own rig does not fit on a board ${lengthText(shade.board.depthMm, shade.units)} deep: ${lacks.join("; ")}. It is drawn all the same.`,
            cite: cite("geometry", "eyes, cords and locks beside each other on the board"),
            remedies: [...deeper, fromBoard],
          },
        ]),
    ...rig.misfits.map((reason) => ({
      ...base,
      id: "rig.rail-lock-misfit",
      severity: "stop" as const,
      path: `${shade.path}/shade/making/lift/lock`,
      text: `The top rail’s own lock, “${rail.lockName}”, ${reason}.`,
      cite: cite("lock-instructions", "what a lock takes"),
      remedies: [fromBoard],
    })),
  ];
}

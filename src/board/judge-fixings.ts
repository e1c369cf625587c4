import type { Finding, Remedy } from "../figures/index.ts";
import { settingPatch } from "../job/index.ts";
import {
  fromBoardEndMm,
  type HeadShape,
  type Lift,
  type MountedBoard,
  type ScrewLoad,
} from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { forceText, lengthText, upToMark } from "../units/index.ts";
import { atSetting } from "./at-setting.ts";
import type { BoardInput, BoardShade } from "./board-input.ts";
import type { ScrewLoads } from "./board-strength.ts";
import { type Fixings, NEAREST_FIXINGS_MM } from "./fixings.ts";
import { HOLLOW_FACTOR, strengthNote, withHandText } from "./judge-strength.ts";

/** What is known of the fixings beside their places. */
export interface FixingFacts {
  /** Load on the heaviest fixing, N. */
  worstN: number;
  screws: ScrewLoads;
  /** No screw sold is as long as this board and wall need. */
  tooLong: boolean;
}

/** Are the fixings placed as asked, and what does the wall have to do with it? */
export function judgeFixings(
  { shade, size, lift }: BoardInput,
  board: MountedBoard,
  fixings: Fixings,
  facts: FixingFacts,
): Finding[] {
  return [
    ...misplaced(shade, { size, board, lift }, fixings),
    ...wall(shade, board, facts),
    ...(facts.tooLong ? [noSuchScrew(shade, board)] : []),
    localCodes(shade, board, facts),
  ];
}

const placeCite = cite("from-memory", "within 4 in of the ends, at most 24 to 30 in apart");

/** What is screwed up under the board beside its fixings. */
function hanging({ takeUp }: Lift): string {
  switch (takeUp) {
    case "lock":
      return "eyes and lock";
    case "cleat":
      return "eyes";
    case "tube":
      return "spools, supports and drive";
  }
}

function upper(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

function misplaced(
  shade: BoardShade,
  { size, board, lift }: { size: HeadShape; board: MountedBoard; lift: Lift },
  { kind, faults, brackets, widthMm }: Fixings,
): Finding[] {
  const what = kind === "brackets" ? "bracket" : "screw";
  const text = (mm: number) => lengthText(mm, shade.units);
  const findings: Finding[] = [];
  if (faults.includes("clear")) {
    findings.push({
      ...atSetting(shade, "board/bracketSpacingMm"),
      id: "board.fixing-not-clear",
      severity: "fix",
      text: `Not every ${what} finds a place clear of ${hanging(lift)}: each needs ${text(widthMm)} and a little beside. Use fewer columns, or fix the board in another way.`,
      cite: cite("geometry"),
      remedies: [],
    });
  }
  const along = (xMm: number) => fromBoardEndMm({ size, board, lift }, xMm);
  const first = brackets[0]?.xMm ?? board.leftMm;
  const last = brackets.at(-1)?.xMm ?? board.leftMm;
  const endMm = Math.max(along(first), along(board.leftMm + board.lengthMm) - along(last));
  if (faults.includes("end")) {
    findings.push({
      ...atSetting(shade, "board/bracketEndMm"),
      id: "board.fixing-from-end",
      severity: "note",
      text: `${upper(hanging(lift))} leave the outer ${what} no place within ${text(shade.making.board.bracketEndMm)} of the board’s end; it sits ${text(endMm)} from it.`,
      cite: placeCite,
      remedies: accept(shade, "bracketEndMm", endMm),
    });
  }
  const widest = brackets.reduce(
    (most, { xMm }, i) => Math.max(most, xMm - (brackets[i - 1]?.xMm ?? xMm)),
    0,
  );
  const asked = shade.making.board.bracketSpacingMm;
  if (asked < NEAREST_FIXINGS_MM && widest > asked) {
    findings.push({
      ...atSetting(shade, "board/bracketSpacingMm"),
      id: "board.fixings-too-near",
      severity: "note",
      text: `At most ${text(asked)} between two ${what}s is asked for. Nearer than ${text(NEAREST_FIXINGS_MM)} they only get in each other’s way, so that is used.`,
      cite: cite("our-choice", "100 mm"),
      remedies: accept(shade, "bracketSpacingMm", NEAREST_FIXINGS_MM),
    });
  }
  if (faults.includes("spacing")) {
    findings.push({
      ...atSetting(shade, "board/bracketSpacingMm"),
      id: "board.fixing-spacing",
      severity: "note",
      text: `${upper(hanging(lift))} push two ${what}s ${text(widest)} apart; ${text(Math.max(asked, NEAREST_FIXINGS_MM))} at most is asked for.`,
      cite: placeCite,
      remedies: accept(shade, "bracketSpacingMm", widest),
    });
  }
  return findings;
}

function accept(shade: BoardShade, key: "bracketEndMm" | "bracketSpacingMm", mm: number): Remedy[] {
  const marked = upToMark(mm, shade.units.ruler);
  return [
    {
      label: `Allow ${lengthText(marked, shade.units)}`,
      patch: settingPatch(shade, "board", key, marked),
    },
  ];
}

/** What comes on one screw, plug or anchor, and how much more that is when the shade is hung on. */
function loadsText(shade: BoardShade, board: MountedBoard, { tugged, worst, hand }: ScrewLoads): string {
  const force = (load: ScrewLoad) => forceText(onOne(load), shade.units);
  const hung = hand === "child" ? `, ${force(worst)} ${withHandText(hand, shade.units)}` : "";
  const prying = board.fixing === "brackets" ? ", with what its bracket adds by prying" : "";
  return `${force(tugged)} when somebody tugs${hung}${prying}`;
}

/** Words of what nearly every shade is told are made when they are read. */
function wall(shade: BoardShade, board: MountedBoard, { screws }: FixingFacts): Finding[] {
  const { substrate, fixingRatedN } = shade.making.board;
  const loads = () => loadsText(shade, board, screws);
  const force = (loadN: number) => forceText(loadN, shade.units);
  const common = {
    ...atSetting(shade, "board/substrate"),
    figures: ["board.fixing-load", "board.load", "board.hand-load"],
  };
  if (substrate === "timber") return [];
  if (substrate === "unknown") {
    return [
      {
        ...common,
        id: "board.wall-unknown",
        severity: "unproven",
        get text() {
          return `What is behind the wall is not known. ${count(board)} must carry ${force(board.loadN)} in all; on the hardest worked screw come ${loads()}. Find out whether there is timber, masonry or a hollow wall there; never assume a stud.`;
        },
        cite: cite("our-choice", "nothing is assumed"),
        remedies: [
          substrateIs(shade, "timber", "It is solid timber"),
          substrateIs(shade, "masonry", "It is masonry"),
          substrateIs(shade, "hollow-wall", "It is a hollow wall"),
        ],
      },
    ];
  }
  const masonry = substrate === "masonry";
  return [
    {
      ...common,
      id: masonry ? "board.masonry" : "board.hollow-wall",
      severity: masonry || fixingRatedN !== undefined ? "note" : "unproven",
      get text() {
        return masonry
          ? `On the hardest worked plug come ${loads()}. Use wall plugs whose maker rates them for that in this masonry, and drill and plug as the maker says.`
          : `A hollow wall holds only what its anchor’s maker states for it. On the hardest worked anchor come ${loads()}. Take anchors for which ${force(HOLLOW_FACTOR * onOne(screws.worst))} or more are stated, ${HOLLOW_FACTOR} times as much, or fix to the framing.`;
      },
      cite: masonry ? cite("common-practice", "plugs by their maker’s rating") : anchorCite,
      remedies: masonry ? [] : [substrateIs(shade, "timber", "Fix to the timber framing instead")],
    },
  ];
}

/** Away from the wall and along it together, N. */
function onOne({ pullN, shearN }: ScrewLoad): number {
  return Math.hypot(pullN, shearN);
}

const anchorCite = cite("common-practice", "tabulated anchor loads are ultimate; a factor of four at least");

function count(board: MountedBoard): string {
  const n = board.brackets.length;
  const what = board.fixing === "brackets" ? "bracket" : "screw";
  return `${n === 1 ? "One" : n} ${what}${n === 1 ? "" : "s"}`;
}

function substrateIs(
  shade: BoardShade,
  substrate: BoardShade["making"]["board"]["substrate"],
  label: string,
): Remedy {
  return { label, patch: settingPatch(shade, "board", "substrate", substrate) };
}

function noSuchScrew(shade: BoardShade, board: MountedBoard): Finding {
  return {
    ...atSetting(shade, "board/section"),
    id: "board.no-such-screw",
    severity: "fix",
    text: `The wall screws would have to be ${lengthText(board.screws.lengthMm, shade.units)} long, longer than they are commonly sold. Take a thinner board, or brackets.`,
    cite: cite("from-memory", "lengths in which screws are sold"),
    figures: ["board.screw-length"],
    remedies: [],
  };
}

/** Where the wall is said to be timber, nothing else tells what comes on one screw. */
function localCodes(shade: BoardShade, board: MountedBoard, { worstN, screws }: FixingFacts): Finding {
  return {
    ...atSetting(shade, "board/substrate"),
    id: "board.local-codes",
    severity: "note",
    get text() {
      const force = (loadN: number) => forceText(loadN, shade.units);
      const one =
        shade.making.board.substrate === "timber"
          ? ` On the hardest worked screw come ${loadsText(shade, board, screws)}.`
          : "";
      return `The fixings carry ${force(board.loadN)} with a hand at work, the heaviest ${force(worstN)}.${one} ${strengthNote(shade.units)}`;
    },
    cite: cite("our-choice", "mean strengths over a factor; nothing here replaces a local code"),
    figures: ["board.load", "board.fixing-load", "board.hand-load"],
    remedies: [],
  };
}

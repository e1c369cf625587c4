import type { Finding, Remedy } from "../figures/index.ts";
import { settingPatch } from "../job/index.ts";
import { type BoardPlan, fromBoardEndMm, type Head, type Lift } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { forceText, lengthText, upToMark } from "../units/index.ts";
import { atSetting } from "./at-setting.ts";
import type { BoardInput, BoardShade } from "./board-input.ts";
import { type Fixings, NEAREST_FIXINGS_MM } from "./fixings.ts";
import { STRENGTH_NOTE } from "./judge-strength.ts";

export interface FixingFacts {
  /** Load on the heaviest fixing, N. */
  worstN: number;
  /** No screw sold is as long as this board and wall need. */
  tooLong: boolean;
}

/** Are the fixings placed as asked, and what does the wall have to do with it? */
export function judgeFixings(
  { shade, size, lift }: BoardInput,
  board: BoardPlan,
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
  return takeUp === "lock" ? "eyes and lock" : "spools, supports and drive";
}

function upper(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

function misplaced(
  shade: BoardShade,
  { size, board, lift }: { size: Head; board: BoardPlan; lift: Lift },
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

/** A tug may be half as much again, and a rating is to be met several times over: the maker of an anchor says how. */
function wall(shade: BoardShade, board: BoardPlan, { worstN }: FixingFacts): Finding[] {
  const { substrate, fixingRatedN } = shade.making.board;
  const load = forceText(worstN, shade.units);
  const common = { ...atSetting(shade, "board/substrate"), figures: ["board.fixing-load", "board.load"] };
  if (substrate === "timber") return [];
  if (substrate === "unknown") {
    return [
      {
        ...common,
        id: "board.wall-unknown",
        severity: "unproven",
        text: `What is behind the wall is not known. ${count(board)} must carry ${forceText(board.loadN, shade.units)} in all, the heaviest ${load}. Find out whether there is timber, masonry or a hollow wall there; never assume a stud.`,
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
      text: masonry
        ? `Use wall plugs whose maker rates them for this masonry: the heaviest fixing carries ${load}, more when somebody tugs. Drill and plug as the maker says.`
        : `A hollow wall holds only what its anchor’s maker states for it: the heaviest fixing carries ${load}, more when somebody tugs. Take anchors rated for at least four times as much, or fix to the framing.`,
      cite: masonry ? cite("common-practice", "plugs by their maker’s rating") : anchorCite,
      remedies: masonry ? [] : [substrateIs(shade, "timber", "Fix to the timber framing instead")],
    },
  ];
}

const anchorCite = cite("common-practice", "tabulated anchor loads are ultimate; a factor of four at least");

function count(board: BoardPlan): string {
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

function noSuchScrew(shade: BoardShade, board: BoardPlan): Finding {
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

function localCodes(shade: BoardShade, board: BoardPlan, { worstN }: FixingFacts): Finding {
  return {
    ...atSetting(shade, "board/substrate"),
    id: "board.local-codes",
    severity: "note",
    text: `The fixings carry ${forceText(board.loadN, shade.units)} with a hand at work, the heaviest ${forceText(worstN, shade.units)}. ${STRENGTH_NOTE}`,
    cite: cite("our-choice", "mean strengths over a factor; nothing here replaces a local code"),
    figures: ["board.load", "board.fixing-load"],
    remedies: [],
  };
}

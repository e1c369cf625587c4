import type { Finding, Remedy } from "../figures/index.ts";
import { type LineWishes, lineWishes, settingPatch, withParents } from "../job/index.ts";
import type { RoomAlignment, RowLayout } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { downToMark, inches, lengthText } from "../units/index.ts";
import type { LineProblem } from "./line-problem.ts";
import type { Motifs } from "./motif.ts";
import { isFree, type RoomInput, type RoomWindow } from "./room-window.ts";
import { type Trial, trialsOf, withWindow } from "./trials.ts";
import type { Hindrance, WishSetting } from "./why.ts";
import type { WindowOutcome } from "./window-outcome.ts";
import { gaveWords } from "./words.ts";

/** Less than this is no news: a finger's breadth of flat cloth more. */
const WORTH_TELLING_MM = inches(1);

/** What did not come into line, and what it cost, each with a way out where one edit is one. */
export function judgeLine(
  input: RoomInput,
  problem: LineProblem,
  alignment: RoomAlignment,
  outcomes: readonly WindowOutcome[],
  motifs: Motifs,
): Finding[] {
  const free = outcomes.filter(({ window }) => isFree(input, window));
  const trial = trialsOf(problem);
  return [
    ...roomFindings(input, alignment, free.length),
    ...free.flatMap((one) => [
      ...unmeasured(input, one),
      ...apart(input, alignment, one, trial),
      ...lower(input, one, trial),
    ]),
    ...motifs.elsewhere.map(({ window }) => motifElsewhere(input, window)),
  ];
}

function lineBase(input: RoomInput) {
  return {
    stage: "shape",
    path: `${input.path}/inLine`,
    cite: cite("our-choice", "a room in line"),
  } as const;
}

function lineRemedy(input: RoomInput, label: string, change: LineWishes): Remedy {
  return {
    label,
    patch: [{ op: "add", path: `${input.path}/inLine`, value: { ...lineWishes(input.inLine), ...change } }],
  };
}

function leaveOut(input: RoomInput, { shade }: RoomWindow): Remedy {
  return lineRemedy(input, `Leave ${shade.windowName} out of the line`, {
    without: [...input.settings.without, shade.shadeId],
  });
}

function roomFindings(input: RoomInput, alignment: RoomAlignment, free: number): Finding[] {
  const findings: Finding[] = [];
  if (input.settings.folds !== "own" && alignment.spacingMm === undefined) {
    findings.push({
      ...lineBase(input),
      id: "align.nothing-shared",
      severity: "note",
      text:
        free < 2
          ? `${input.roomName} is to have its folds in line, but ${free === 1 ? "only one window" : "no window"} is there to follow.`
          : `No two windows of ${input.roomName} can have their rows at one spacing: each keeps its own.`,
      remedies: [
        {
          label: "Let every window keep its own folds",
          patch: [{ op: "remove", path: `${input.path}/inLine` }],
        },
      ],
    });
  }
  if (!alignment.proven) {
    findings.push({
      ...lineBase(input),
      id: "align.not-every-spacing",
      severity: "unproven",
      text: `${input.roomName} has so many windows that not every spacing was tried: a closer one may leave less cloth hanging.`,
      remedies: [],
    });
  }
  return findings;
}

function unmeasured({ settings, roomName }: RoomInput, { window }: WindowOutcome): Finding[] {
  const { shade, size, ask, hangsFlat } = window;
  const forFolds = settings.folds === "levels" && typeof ask !== "string";
  const forMotif = settings.motif && hangsFlat && shade.cloths.face.repeat !== undefined;
  if (size.topAboveFloorMm !== undefined || !(forFolds || forMotif)) return [];
  return [
    {
      id: "align.measure-floor",
      severity: "unproven",
      stage: "shape",
      shadeId: shade.shadeId,
      path: `${shade.path}/opening/sillAboveFloorMm`,
      text: `Measure how high the bottom of the opening is above the floor at ${shade.windowName}: without that its ${forFolds ? "folds" : "pattern"} cannot be set to the height of its neighbours in ${roomName}.`,
      cite: cite("our-choice", "a room in line"),
      remedies: [],
    },
  ];
}

function apart(
  input: RoomInput,
  alignment: RoomAlignment,
  { window, aligned, hindrance }: WindowOutcome,
  trial: Trial,
): Finding[] {
  const { settings } = input;
  const { shade, size } = window;
  if (settings.folds === "own" || alignment.spacingMm === undefined || hindrance === undefined) return [];
  const unknownHeight = size.topAboveFloorMm === undefined && aligned.follows === "spacing";
  // That finding stands already, with what to measure.
  if (unknownHeight) return [];
  const isOwn = aligned.follows === "own";
  return [
    {
      ...lineBase(input),
      id: isOwn ? "align.own-rows" : "align.own-levels",
      severity: "note",
      shadeId: shade.shadeId,
      text: isOwn
        ? `${shade.windowName} keeps its own rows, since ${hindrance.words}.`
        : `${shade.windowName} has the spacing of ${input.roomName}, but its rows stand at heights of their own, since ${hindrance.words}.`,
      remedies: [...unhinder(input, window, hindrance, trial), leaveOut(input, window)],
    },
  ];
}

/** What lets the window onto the levels, where letting go of one thing does. */
function unhinder(input: RoomInput, { shade }: RoomWindow, hindrance: Hindrance, trial: Trial): Remedy[] {
  const { setting, without, lowerMm } = hindrance;
  const { shadeId } = shade;
  const goal = input.settings.folds;
  if (setting !== undefined && without !== undefined) {
    const isOwn =
      setting === "rule" || (shade.own?.fold as Record<string, unknown> | undefined)?.[setting] !== undefined;
    const after = trial(shadeId, (problem) =>
      withWindow(problem, shadeId, (window) => ({ ...window, ask: without(window.ask) })),
    );
    return isOwn && after?.follows === goal ? [letGo(shade, setting)] : [];
  }
  if (lowerMm === undefined) return [];
  const mostLowerMm = Math.ceil(lowerMm);
  if (trial(shadeId, (problem) => ({ ...problem, mostLowerMm }))?.follows !== goal) return [];
  const label = `Let shades of the room hang up to ${lengthText(mostLowerMm, input.units)} lower`;
  return [lineRemedy(input, label, { mostLowerMm })];
}

const SETTING_NAMES: Record<WishSetting, string> = {
  rows: "number of rows",
  spacingMm: "spacing",
  skirtMm: "skirt",
  hemBarMm: "hem bar section",
  stackMm: "highest stack",
  rule: "rule",
};

function letGo(shade: RoomWindow["shade"], setting: WishSetting): Remedy {
  if (setting === "rule") {
    return {
      label: `Give ${shade.windowName} a headrail allowance`,
      patch: withParents(settingPatch(shade, "fold", "rule", "half-fold"), shade),
    };
  }
  return {
    label: `Let the ${SETTING_NAMES[setting]} of ${shade.windowName} follow the room`,
    patch: [{ op: "remove", path: `${shade.path}/shade/making/fold/${setting}` }],
  };
}

function given({ headrailExtraMm, bottomExtraMm }: RowLayout): number {
  return headrailExtraMm + bottomExtraMm;
}

function lower(input: RoomInput, { window, aligned }: WindowOutcome, trial: Trial): Finding[] {
  const { layout } = aligned;
  const { shade } = window;
  if (layout === undefined || given(layout) < WORTH_TELLING_MM) return [];
  return [
    {
      ...lineBase(input),
      id: "align.hangs-lower",
      severity: "note",
      shadeId: shade.shadeId,
      text: `So that its folds meet those of its neighbours, ${shade.windowName} gives way. ${gaveWords(layout, input.units).join(" ")}`,
      figures: ["align.headrail-extra", "align.hem-extra"],
      remedies: [
        ...lowerBoard(input, window, layout, trial),
        leaveOut(input, window),
        ...spacingAlone(input, window, trial),
      ],
    },
  ];
}

function isCured({ layout }: { layout?: RowLayout } = {}): boolean {
  return layout === undefined || given(layout) < WORTH_TELLING_MM;
}

/** An outside mount can take its flat cloth off at the top: board and top line come down, the folds stay. */
function lowerBoard(input: RoomInput, { shade }: RoomWindow, layout: RowLayout, trial: Trial): Remedy[] {
  const { overlapAboveMm } = shade.making.mount;
  const byMm = downToMark(layout.headrailExtraMm, input.units.ruler);
  if (shade.mount !== "outside" || byMm <= 0 || byMm > overlapAboveMm) return [];
  const { shadeId } = shade;
  const after = trial(shadeId, (problem) =>
    withWindow(problem, shadeId, (window) => ({
      ...window,
      ...(window.topMm === undefined ? {} : { topMm: window.topMm - byMm }),
      ask: { ...window.ask, lengthMm: window.ask.lengthMm - byMm },
    })),
  );
  if (after === undefined || after.follows === "own" || !isCured(after)) return [];
  return [
    {
      label: `Fix the board of ${shade.windowName} ${lengthText(byMm, input.units)} lower`,
      patch: settingPatch(shade, "mount", "overlapAboveMm", overlapAboveMm - byMm),
    },
  ];
}

function spacingAlone(input: RoomInput, { shade }: RoomWindow, trial: Trial): Remedy[] {
  if (input.settings.folds !== "levels") return [];
  const after = trial(shade.shadeId, (problem) => ({ ...problem, folds: "spacing" }));
  if (after === undefined || !isCured(after)) return [];
  return [lineRemedy(input, "Share the spacing alone, not the heights", { folds: "spacing" })];
}

function motifElsewhere(input: RoomInput, { shade }: RoomWindow): Finding {
  return {
    ...lineBase(input),
    id: "align.motif-elsewhere",
    severity: "note",
    shadeId: shade.shadeId,
    text: `The pattern of ${shade.windowName} was placed on the shade itself and does not begin at the height of its neighbours in ${input.roomName}.`,
    cite: cite("set-of-shades", "one start line for a set"),
    remedies: [
      {
        label: `Let the pattern of ${shade.windowName} follow the room`,
        patch: [{ op: "remove", path: `${shade.path}/shade/making/pattern/place` }],
      },
    ],
  };
}

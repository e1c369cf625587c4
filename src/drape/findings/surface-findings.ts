import type { Finding } from "../../figures/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import { listed } from "../../words/index.ts";
import type { DrapeInput } from "../drape-input.ts";
import { drapeShade, isNet } from "../drape-shade.ts";
import type { HangingShade } from "../hanging-cloth.ts";
import { differs, type SurfaceFigure, surfaceFigures } from "../surface-figures.ts";
import { swingsInMm } from "./swing.ts";

/** Lowered, half and raised: what the plan has figures for. */
const HEIGHTS = [
  { raise: 0, words: "let down" },
  { raise: 0.5, words: "half way up" },
  { raise: 1, words: "raised" },
] as const;
/** Sides that come in by less are not seen, mm. */
const DRAWN_IN_MM = 6;

const AT_REST = "As the cloth comes to rest";

export interface SurfaceFindingsInput {
  drape: DrapeInput;
  shadeId: string;
  units: UnitChoice;
}

interface FigureAtHeight extends SurfaceFigure {
  words: string;
}

/**
 * Where the cloth of a shade, brought to rest, differs from its plan by more than a tenth, and how far its sides draw in.
 * Nothing for folds whose section the plan itself solves. Takes about a second.
 */
export function surfaceFindings(input: SurfaceFindingsInput): Finding[] {
  const { drape } = input;
  if (!isNet(drape)) return [];
  const hangings: HangingShade[] = [];
  const figures = HEIGHTS.flatMap(({ raise, words }): FigureAtHeight[] => {
    const before = hangings.at(-1);
    const hanging = drapeShade(drape, raise, before === undefined ? {} : { before });
    hangings.push(hanging);
    return surfaceFigures(drape, raise, hanging).map((figure) => ({ ...figure, words }));
  });
  return [
    hangs(input, figures),
    ...KINDS.flatMap((kind) => differing(input, figures, kind)),
    ...drawnIn(input, figures),
    ...swingsIn(input),
    ...(hangings.every(({ method }) => method === "settled") ? [] : [notAtRest(input)]),
  ];
}

/** How deep its poufs are and how far its edge dips: of cloth that hangs in swags the plan has no profile. */
function hangs({ drape, ...input }: SurfaceFindingsInput, figures: readonly FigureAtHeight[]): Finding {
  const { units } = input;
  const atEach = (kind: SurfaceFigure["kind"]) =>
    HEIGHTS.map(({ words }) => {
      const measured = figures.filter((one) => one.kind === kind && one.words === words);
      return { words, text: lengthText(Math.max(0, ...measured.map(({ surfaceMm }) => surfaceMm)), units) };
    });
  const outs = atEach("stands-out");
  const flat = outs.filter(({ text }) => text === lengthText(0, units));
  const out = listed(outs.filter((one) => !flat.includes(one)).map(({ text, words }) => `${text} ${words}`));
  const said = [
    ...(flat.length === 0 ? [] : [`hangs flat ${listed(flat.map(({ words }) => words))}`]),
    ...(out === "" ? [] : [`stands out from its rings by ${out}`]),
  ];
  const dips = drape.form.swags.length === 0 ? [] : atEach("dip");
  const edge =
    dips.length === 0
      ? ""
      : ` Its lower edge dips between columns by up to ${listed(dips.map(({ text, words }) => `${text} ${words}`))}.`;
  return finding(input, "drape.hangs", "note", `${AT_REST}, the shade ${listed(said)}.${edge}`);
}

/** Without its stiffness on the bias the same net hangs as the catenary does. */
const WITHSTANDS =
  " The plan’s edge is that of cloth that gives freely on the bias; a firm weave holds its poufs higher.";

const KINDS = ["lowest", "stands-out", "dip", "along-column"] as const;

/** The figure of one kind that differs most, at whichever height. */
function differing(
  input: SurfaceFindingsInput,
  figures: readonly FigureAtHeight[],
  kind: (typeof KINDS)[number],
): Finding[] {
  const offMm = ({ surfaceMm, planMm = surfaceMm }: SurfaceFigure) => Math.abs(surfaceMm - planMm);
  const [worst] = figures
    .filter((figure) => figure.kind === kind && differs(figure))
    .sort((a, b) => offMm(b) - offMm(a));
  if (worst?.planMm === undefined) return [];
  const [own, plan] = [worst.surfaceMm, worst.planMm].map((mm) => lengthText(mm, input.units));
  const { words } = worst;
  const withstands =
    worst.surfaceMm < worst.planMm && input.drape.form.across === "pleated" ? WITHSTANDS : "";
  const text = {
    lowest: `${AT_REST}, the shade ${words} reaches ${own} below the top line; the plan has ${plan} and goes by that.${withstands}`,
    "stands-out": `${AT_REST}, the shade ${words} stands out by ${own}; the plan has ${plan} and goes by that. Leave room for the larger of the two.`,
    dip: `${AT_REST}, a scallop dips by ${own} ${words}; the plan has ${plan} and goes by that.${withstands}`,
    "along-column": `${AT_REST}, a column takes up ${own} of it ${words}; the plan has ${plan} and cuts by that.`,
  }[kind];
  return [finding(input, `drape.${kind}`, "unproven", text)];
}

function drawnIn(input: SurfaceFindingsInput, figures: readonly FigureAtHeight[]): Finding[] {
  const measured = figures.flatMap(({ kind, surfaceMm: mm, words }) =>
    kind === "draws-in" ? [{ mm, words }] : [],
  );
  return furthestIn(
    input,
    "drape.draws-in",
    measured,
    (far) =>
      `Each side draws in by up to ${far}, its rings hanging straight under their eyes: the shade is as wide as planned at the board alone. Outside a reveal, see that it still covers what it is to cover.`,
  );
}

/** Cords lean: the figures above have every ring straight under its eye. */
function swingsIn(input: SurfaceFindingsInput): Finding[] {
  const { form, grid } = input.drape;
  const lowered = grid.rows[0]?.yMm ?? 0;
  // Let down, the cloth above the rings holds them where they are.
  const measured = HEIGHTS.filter(({ raise }) => raise > 0).map(({ raise, words }) => ({
    words,
    mm: swingsInMm(form, grid, lowered - raise * grid.travelMm),
  }));
  return furthestIn(
    input,
    "drape.swings-in",
    measured,
    (far) =>
      `What hangs between its columns pulls at the outer ones: free to swing on their cords, they come in by up to ${far} if the cloth is limp, by less if it is firm. A bar or rod from the first column to the last keeps them apart.`,
  );
}

/** A note on the height at which the sides come in furthest; none where it is not seen. */
function furthestIn(
  input: SurfaceFindingsInput,
  id: string,
  measured: readonly { mm: number; words: string }[],
  says: (far: string) => string,
): Finding[] {
  const [most] = measured.filter(({ mm }) => mm > DRAWN_IN_MM).sort((a, b) => b.mm - a.mm);
  if (most === undefined) return [];
  return [finding(input, id, "note", says(`${lengthText(most.mm, input.units)} ${most.words}`))];
}

function notAtRest(input: SurfaceFindingsInput): Finding {
  return finding(
    input,
    "drape.not-at-rest",
    "unproven",
    "Where the cloth comes to rest was not found to the end at every height: what is said of how it hangs is near it.",
  );
}

function finding(
  { shadeId }: Pick<SurfaceFindingsInput, "shadeId">,
  id: string,
  severity: Finding["severity"],
  text: string,
): Finding {
  return { id, severity, stage: "shape", shadeId, text, cite: cite("hanging-net"), remedies: [] };
}

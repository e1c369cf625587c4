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
    ...differing(input, figures),
    ...sides(input, figures),
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

/** What differs is told with its height, the figure of the cloth at rest and that of the plan. */
const DIFFERING = {
  lowest: (words, own, plan) => `${words} reaches ${own} below the top line where the plan has ${plan}`,
  "stands-out": (words, own, plan) => `${words} stands out by ${own} where the plan has ${plan}`,
  dip: (words, own, plan) => `${words} dips by ${own} in a scallop where the plan has ${plan}`,
  "along-column": (words, own, plan) => `${words} takes ${own} along a column where the plan has ${plan}`,
} as const satisfies Partial<
  Record<SurfaceFigure["kind"], (words: string, own: string, plan: string) => string>
>;
type DifferingKind = keyof typeof DIFFERING;

/** Of each kind the figure that differs most, at whichever height, all in one finding. */
function differing(input: SurfaceFindingsInput, figures: readonly FigureAtHeight[]): Finding[] {
  const worst = (Object.keys(DIFFERING) as DifferingKind[]).flatMap((kind) => worstOf(kind, figures));
  if (worst.length === 0) return [];
  const says = worst.map(({ kind, words, surfaceMm, planMm }) =>
    DIFFERING[kind](words, lengthText(surfaceMm, input.units), lengthText(planMm, input.units)),
  );
  const firm = worst.some(({ kind, surfaceMm, planMm }) => kind !== "stands-out" && surfaceMm < planMm);
  const withstands = firm && input.drape.form.across === "pleated" ? WITHSTANDS : "";
  const room = worst.some(({ kind }) => kind === "stands-out") ? " Leave room for the larger." : "";
  const text = `${AT_REST}, the shade ${listed(says)}. The plan goes by its own figures.${room}${withstands}`;
  return [finding(input, "drape.differs", "unproven", text)];
}

interface Differing extends FigureAtHeight {
  kind: DifferingKind;
  planMm: number;
}

function worstOf(kind: DifferingKind, figures: readonly FigureAtHeight[]): Differing[] {
  const offMm = ({ surfaceMm, planMm }: Differing) => Math.abs(surfaceMm - planMm);
  return figures
    .flatMap((one): Differing[] =>
      one.kind === kind && one.planMm !== undefined && differs(one)
        ? [{ ...one, kind, planMm: one.planMm }]
        : [],
    )
    .sort((a, b) => offMm(b) - offMm(a))
    .slice(0, 1);
}

interface InAtHeight {
  mm: number;
  words: string;
}

/** How far its sides come in: all of the figures have every ring straight under its eye, but cords may lean. */
function sides(input: SurfaceFindingsInput, figures: readonly FigureAtHeight[]): Finding[] {
  const { form, grid } = input.drape;
  const far = ({ mm, words }: InAtHeight) => `${lengthText(mm, input.units)} ${words}`;
  const plumb = furthestIn(
    figures.flatMap(({ kind, surfaceMm: mm, words }) => (kind === "draws-in" ? [{ mm, words }] : [])),
  ).map((most) => `each side draws in by up to ${far(most)} with its rings plumb under their eyes`);
  const lowered = grid.rows[0]?.yMm ?? 0;
  // Let down, the cloth above the rings holds them where they are.
  const raised = HEIGHTS.filter(({ raise }) => raise > 0);
  const swung = furthestIn(
    raised.map(({ raise, words }) => ({
      words,
      mm: swingsInMm(form, grid, lowered - raise * grid.travelMm),
    })),
  ).map(
    (most) =>
      `on free cords and in limp cloth the outer rings swing in by up to ${far(most)}, unless a bar or rod from the first column to the last keeps them apart`,
  );
  const said = [...plumb, ...swung].join("; ");
  if (said === "") return [];
  const text = `${said.charAt(0).toUpperCase()}${said.slice(1)}. Outside a reveal, see that it still covers what it is to cover.`;
  return [finding(input, "drape.sides", "note", text)];
}

/** The height at which sides come in furthest; none where it is not seen. */
function furthestIn(measured: readonly InAtHeight[]): InAtHeight[] {
  return measured
    .filter(({ mm }) => mm > DRAWN_IN_MM)
    .sort((a, b) => b.mm - a.mm)
    .slice(0, 1);
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

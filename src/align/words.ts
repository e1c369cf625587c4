import type { AlignedWindow, RoomAlignment, RowLayout } from "../shade-plan/index.ts";
import { lengthText, markMm, SAME_LENGTH_MM, type UnitChoice } from "../units/index.ts";
import { counted } from "../words/index.ts";

type Outcome = Pick<AlignedWindow, "follows" | "layout" | "sharesRaisedHem" | "why">;

/** What one window kept and what it gave, in a few sentences. */
export function windowWords(
  { follows, layout, sharesRaisedHem, why }: Outcome,
  folds: "levels" | "spacing" | "own",
  units: UnitChoice,
): string {
  const since = why === undefined ? "" : `, since ${why}`;
  if (layout === undefined) return `Keeps its own rows${since}.`;
  const rows = counted(layout.rows, "row");
  const kept =
    follows === "levels"
      ? `${rows} on the shared levels.`
      : folds === "levels"
        ? `${rows} at the shared spacing, but not on the levels${since}.`
        : `${rows} at the shared spacing.`;
  return [
    kept,
    ...gaveWords(layout, units),
    ...(sharesRaisedHem ? ["Raised, its hem is at the shared height."] : []),
  ].join(" ");
}

/** What gave, where it is a whole mark of the ruler or more. */
export function gaveWords({ headrailExtraMm, bottomExtraMm }: RowLayout, units: UnitChoice): string[] {
  const shows = (mm: number) => mm > markMm(units.ruler) - SAME_LENGTH_MM;
  return [
    ...(shows(headrailExtraMm)
      ? [`It hangs ${lengthText(headrailExtraMm, units)} lower than its headrail needs.`]
      : []),
    ...(shows(bottomExtraMm)
      ? [`Its hem shows ${lengthText(bottomExtraMm, units)} more below the folds than it would alone.`]
      : []),
  ];
}

/** What the room shares, in a few sentences. */
export function roomWords(alignment: Omit<RoomAlignment, "words">, units: UnitChoice): string {
  const { spacingMm, levelsMm, raisedHemMm, motifs, windows } = alignment;
  const said: string[] = [];
  if (spacingMm !== undefined) {
    const [lowest] = levelsMm;
    const highest = levelsMm.at(-1);
    const followers = windows.filter(({ layout }) => layout !== undefined).length;
    const whose = followers === windows.length ? "all windows" : `${followers} of ${windows.length} windows`;
    said.push(
      lowest === undefined || highest === undefined
        ? `Rows stand ${lengthText(spacingMm, units)} apart on ${whose}.`
        : `Rows stand ${lengthText(spacingMm, units)} apart on ${whose}, on ${levelsMm.length} levels from ${lengthText(lowest, units)} to ${lengthText(highest, units)} above the floor.`,
    );
  }
  if (raisedHemMm !== undefined) {
    const sharing = windows.filter(({ sharesRaisedHem }) => sharesRaisedHem).length;
    said.push(
      `Raised, ${sharing === windows.length ? "all" : sharing} hems hang ${lengthText(raisedHemMm, units)} above the floor.`,
    );
  }
  for (const { clothName, levelMm, windows: made } of motifs) {
    if (made.length > 1) {
      said.push(
        `The pattern of ${clothName} begins ${lengthText(levelMm, units)} above the floor on ${made.length} windows.`,
      );
    }
  }
  return said.length === 0 ? "Nothing is shared: every window keeps its own rows." : said.join(" ");
}

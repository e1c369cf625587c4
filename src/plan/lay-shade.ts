import { type Figure, type StageResult, WorkingBook, workingOf } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import { chooseLiftParts } from "../lift/index.ts";
import { measure } from "../measure/index.ts";
import type { Column, Size } from "../shade-plan/index.ts";
import { headrailNeeded, type LaidGrid, STYLE_MODULES } from "../styles/index.ts";

/** A shade measured and laid, before anything is cut: as far as its room has to know it. */
export interface LaidShade {
  shade: ResolvedShade;
  measured: ReturnType<typeof measure>;
  columns: StageResult<Column[]>;
  liftParts: ReturnType<typeof chooseLiftParts>;
  /** Least headrail allowance, mm. */
  headrail: Figure;
  laid: StageResult<LaidGrid>;
  /** What was written down on the way. */
  book: WorkingBook;
}

/** Measures one shade and lays its columns and rows. */
export function layShade(shade: ResolvedShade): LaidShade {
  const book = new WorkingBook();
  const measured = measure(shade, book);
  const { size } = measured;
  const columns = STYLE_MODULES[shade.style].columns({ shade, size });
  note(book, columns.workings);
  const liftParts = chooseLiftParts(shade, size, columns.values, book);
  const headrail = headrailNeeded({ shade, liftParts });
  note(book, [headrail]);
  const laid = gridOf(shade, size, columns.values, headrail);
  return { shade, measured, columns, liftParts, headrail, laid, book };
}

/** The same shade with its rows where the room has them: what it measures stays. */
export function layAgain(own: LaidShade, shade: ResolvedShade): LaidShade {
  if (shade.making.fold === own.shade.making.fold) return { ...own, shade };
  const laid = gridOf(shade, own.measured.size, own.columns.values, own.headrail);
  return { ...own, shade, laid };
}

function gridOf(
  shade: ResolvedShade,
  size: Size,
  columns: Column[],
  { value: headrailNeededMm }: Figure,
): StageResult<LaidGrid> {
  return STYLE_MODULES[shade.style].grid({ shade, size, columns, headrailNeededMm });
}

/** Writes figures down in a book of workings. */
export function note(book: WorkingBook, figures: readonly Figure[]): void {
  book.workings.push(...figures.map(workingOf));
}

import type { ColumnStretch } from "../column-stretch.ts";

/** One line of nodes across the cloth. */
export interface ClothLine {
  /** Cloth from the line above it to here, mm; 0 for the first. */
  stepMm: number;
  fromHemMm: number;
  /** Stretch that ends here, and how far into it, 0 to 1. */
  stretch: number;
  share: number;
  /** Height at which the rings of the columns hold it, mm below the top line. */
  heldYMm?: number;
  /** In cloth that is drawn up on tapes: cloth and tape of the swag that it lies in, mm. */
  swag?: { clothMm: number; tapeMm: number };
}

/** Consecutive lines that hang one way: each strand lies in front of the next one. */
export interface ClothStrand {
  from: number;
  to: number;
}

export interface CellGrid {
  lines: ClothLine[];
  strands: ClothStrand[];
}

const FOLD_STEP_MM = 24;
const FLAT_STEP_MM = 100;
const HEM_STEP_MM = 22;
const LEAST_FOLD = 8;
const MOST_FOLD = 8;
const COARSE_FOLD = 6;
/** More lines than this and each fold has to do with fewer. */
const MOST_LINES = 150;

/** Lines of nodes across the cloth, close together where it folds, and the strands that it hangs in. */
export function layLines(cloth: readonly ColumnStretch[], coarse = false): CellGrid {
  const wanted = cloth.map((stretch) => linesIn(stretch, coarse));
  const total = wanted.reduce((sum, n) => sum + n, 0);
  const fewer = Math.min(1, MOST_LINES / total);
  const first = cloth[0]?.fromHemMm[0] ?? 0;
  const lines: ClothLine[] = [{ stepMm: 0, fromHemMm: first, stretch: 0, share: 0, heldYMm: 0 }];
  const strands: ClothStrand[] = [];
  let from = 0;
  cloth.forEach((stretch, index) => {
    const { arcMm, lowerYMm, fromHemMm, tapeMm, isFree = false } = stretch;
    const count = evened(Math.max(2, Math.round((wanted[index] as number) * fewer)), folds(stretch));
    for (let k = 1; k <= count; k++) {
      const share = k / count;
      lines.push({
        ...{ stepMm: arcMm / count, fromHemMm: fromHemMm[0] - arcMm * share, stretch: index, share },
        ...(k === count && lowerYMm !== undefined && !isFree ? { heldYMm: lowerYMm } : {}),
        ...(tapeMm === undefined ? {} : { swag: { clothMm: arcMm, tapeMm } }),
      });
    }
    const to = lines.length - 1;
    if (folds(stretch)) strands.push({ from, to: to - count / 2 }, { from: to - count / 2, to });
    else strands.push({ from, to });
    from = to;
  });
  return { lines, strands };
}

/** Less slack than this is no fold yet, mm. */
const SLACK_MM = 0.5;

export function folds({ arcMm, upperYMm, lowerYMm }: ColumnStretch): boolean {
  return lowerYMm !== undefined && arcMm - (lowerYMm - upperYMm) > SLACK_MM;
}

function linesIn(stretch: ColumnStretch, coarse: boolean): number {
  const { kind, arcMm } = stretch;
  if (folds(stretch) && coarse) return COARSE_FOLD;
  if (folds(stretch)) return Math.min(MOST_FOLD, Math.max(LEAST_FOLD, Math.ceil(arcMm / FOLD_STEP_MM)));
  if (kind === "hem") return Math.min(10, Math.max(2, Math.ceil(arcMm / HEM_STEP_MM)));
  return Math.min(10, Math.max(2, Math.ceil(arcMm / FLAT_STEP_MM)));
}

function evened(count: number, even: boolean): number {
  return even && count % 2 === 1 ? count + 1 : count;
}

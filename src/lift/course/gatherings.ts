import { type Form, type Grid, type Mass, massByCarrier } from "../../shade-plan/index.ts";
import { GRAVITY, SAME_LENGTH_MM } from "../../units/index.ts";

/** One stretch of the shade as the cords gather it, from the bottom up. */
export interface Gathering {
  /** Risen so far when it begins, mm. */
  startsMm: number;
  /** What gathers along the cord, the whole stretch, and the cloth in it, mm. */
  gathersMm: number;
  cordMm: number;
  clothMm: number;
  /** Cloth from the hem up to its lower row, mm. */
  belowMm: number;
}

/** What the cords gather, from the bottom up: between rows, and above the top row what is left of the travel. */
export function gatherings(grid: Grid, form: Form): Gathering[] {
  const clothOf = new Map(form.stretches.map(({ row, clothMm }) => [row, clothMm]));
  let startsMm = 0;
  let belowMm = clothOf.get(0) ?? grid.bottomSectionMm;
  return [...grid.rows]
    .sort((a, b) => a.number - b.number)
    .map((row, i, rows) => {
      const above = rows[i + 1];
      const spanMm = row.yMm - (above?.yMm ?? 0);
      const gathersMm = Math.max(0, Math.min(spanMm, grid.travelMm - startsMm));
      // Above the top row only the cloth below the headrail allowance gathers.
      const cordMm = above === undefined ? gathersMm : Math.max(gathersMm, spanMm);
      const slackMm = Math.max(0, (clothOf.get(row.number) ?? spanMm) - spanMm);
      const gathering = { startsMm, gathersMm, cordMm, clothMm: cordMm + slackMm, belowMm };
      startsMm += gathersMm;
      belowMm += cordMm + slackMm;
      return gathering;
    });
}

/** What hangs on the cords at one height. */
export interface Carried {
  /** Rows lifted so far. */
  rows: number;
  /** Cloth that the cords carry, and all cloth from hem to top line, mm. */
  hangsMm: number;
  lengthMm: number;
}

/**
 * What all cords together carry with the bottom row risen by so much: the rows lifted so far, the cloth below them, and
 * of the fold on its way the share that its lower end carries.
 *
 * That share is (1 − d/a)/2 for limp cloth of length a over a gap d (the catenary's limit of two pins on one
 * plumb line): nothing while it hangs straight, one half once it is closed. Stiffer cloth differs by little:
 * the reference fold at a/c = 3.1 and d = a/2 gives 0.27 where this gives 0.25.
 */
export function carriedAt(list: readonly Gathering[], form: Form, liftMm: number): Carried {
  const lengthMm = form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0);
  const at = Math.max(
    0,
    list.findLastIndex(({ startsMm, gathersMm }) => gathersMm > SAME_LENGTH_MM && startsMm <= liftMm),
  );
  const now = list[at];
  if (now === undefined || lengthMm <= 0) return { rows: 0, hangsMm: 0, lengthMm: 1 };
  const gapMm = Math.max(0, now.cordMm - Math.min(now.gathersMm, Math.max(0, liftMm - now.startsMm)));
  return { rows: at + 1, hangsMm: now.belowMm + (now.clothMm - gapMm) / 2, lengthMm };
}

/** The weight of that with the bar, N, for any height that the bottom row has risen to, mm. */
export function heldAt(list: readonly Gathering[], form: Form, mass: Mass): (liftMm: number) => number {
  const { clothKg, hemKg, barKg, rowsKg } = massByCarrier(mass);
  return (liftMm) => {
    const { rows, hangsMm, lengthMm } = carriedAt(list, form, liftMm);
    const rowsShare = rows / Math.max(1, list.length);
    return GRAVITY * (barKg + hemKg + rowsKg * rowsShare + clothKg * Math.min(1, hangsMm / lengthMm));
  };
}

/** Just before a fold closes, as a share of it: there the weight of the stretch is still to come. */
const NEARLY = 1 - 1e-6;

/** Where the weight on the cords bends or steps as they gather the cloth, mm of lift: straight lines lie between. */
export function weightSteps(list: ReturnType<typeof gatherings>): number[] {
  return list
    .filter(({ gathersMm }) => gathersMm > SAME_LENGTH_MM)
    .flatMap(({ startsMm, gathersMm }) => [startsMm, startsMm + gathersMm * NEARLY]);
}

import type { ResolvedMaking } from "../../job/index.ts";
import type { ClothMark, Form, Pleat, StyleAllowance } from "../../shade-plan/index.ts";
import { counted } from "../../words/index.ts";

/** A pleat to lay: where it comes to stand on the finished shade, and the cloth in it. */
export interface PleatAsk {
  xMm: number;
  foldedMm: number;
}

/** Pleats from the left, with their lines on the flat, hemmed cloth: each is moved by what lies in those before it. */
export function layPleats(asked: readonly PleatAsk[], kind: ResolvedMaking["pleat"]["kind"]): Pleat[] {
  let before = 0;
  return [...asked]
    .sort((a, b) => a.xMm - b.xMm)
    .map(({ xMm, foldedMm }, i) => {
      const left = xMm + before;
      before += foldedMm;
      const flatMm = [left, left + foldedMm / 2, left + foldedMm] as const;
      const faces = [xMm - foldedMm / 4, xMm + foldedMm / 4] as const;
      return { number: i + 1, xMm, foldedMm, flatMm, ...(kind === "box" ? { facesMm: faces } : {}) };
    });
}

/** Pleats on top of the finished width. Interlining and blackout go behind the pleats, not into them. */
export function pleatAllowances(
  pleats: readonly Pleat[],
  { pleat, hems }: Pick<ResolvedMaking, "pleat" | "hems">,
): StyleAllowance[] {
  const widthMm = pleats.reduce((sum, { foldedMm }) => sum + foldedMm, 0);
  if (widthMm === 0) return [];
  const count = pleats.length;
  const label = counted(count, "pleat");
  return [
    { label, widthMm, lengthMm: 0 },
    ...(pleat.cut === "inserts"
      ? [{ label: "seams of the inserts", widthMm: 4 * count * hems.seamMm, lengthMm: 0, inSeams: true }]
      : []),
  ];
}

/** Three upright lines for each pleat on the flat, hemmed cloth. */
export function pleatMarks(pleats: readonly Pleat[]): ClothMark[] {
  return pleats.flatMap(({ number, flatMm: [left, middle, right] }): ClothMark[] => [
    { kind: "pleat", along: "x", atMm: left, label: `Pleat ${number} left` },
    { kind: "pleat-centre", along: "x", atMm: middle, label: `Pleat ${number} middle` },
    { kind: "pleat", along: "x", atMm: right, label: `Pleat ${number} right` },
  ]);
}

/** How a pleat can open: at most how far to either side at the hem, and up to where, mm. */
export interface PleatOpening {
  sideMm: number;
  untilMm: number;
}

/** A pleat opens no further than its own half, nor than its open edge is long: the flap swings about its last stitch. */
export function pleatOpening(
  { pleat }: Pick<ResolvedMaking, "pleat">,
  foldedMm: number,
  flatLengthMm: number,
): PleatOpening {
  const untilMm =
    pleat.held === "sewn"
      ? Math.min(pleat.openAtHemMm, flatLengthMm)
      : Math.max(0, flatLengthMm - pleat.sewnAtTopMm);
  return { sideMm: Math.min(foldedMm / 2, untilMm), untilMm };
}

/** Bar between two lines alone, where one is asked for. */
export function barBetween(
  { pleat, board }: Pick<ResolvedMaking, "pleat" | "board">,
  fromMm: number,
  toMm: number,
): Pick<Form, "bar"> {
  if (pleat.bar === "none" || toMm <= fromMm) return {};
  const inMm = Math.min(board.barShorterMm, (toMm - fromMm) / 2) / 2;
  return { bar: { fromMm: fromMm + inMm, toMm: toMm - inMm } };
}

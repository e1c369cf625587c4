import type { Column, Form, ShadePoint, Swag } from "../../shade-plan/index.ts";
import { scallopWithin } from "../base/scallop.ts";
import { bayLine } from "./bay-line.ts";
import { easeBetween, hasTails } from "./ease.ts";
import { hangTail, tailLine } from "./tail.ts";

/** A line across the cloth that was level with the shade down, held at the columns. */
export interface DrapedAsk {
  form: Form;
  columns: readonly Column[];
  widthMm: number;
  /** Where the columns hold it now, mm below the top line. */
  yMm: number;
  /** Above the hem on the flat cloth, mm. */
  aboveHemMm: number;
  /** How far the columns have carried it up: between them it can hang back by as much. */
  risenMm: number;
  /** The lower edge itself: with its own cloth and, where there is one, the bar in it. */
  isHem?: boolean;
}

/** How far the line hangs between each two columns, from the left, mm. */
export function baysOf(ask: DrapedAsk): Swag[] {
  const { form, columns, aboveHemMm, risenMm, isHem = false } = ask;
  // Bays are mostly alike: each kind is computed once.
  const known = new Map<string, number>();
  const sagOf = (spanMm: number, arcMm: number, mostMm: number) => {
    const key = `${spanMm.toFixed(6)} ${arcMm.toFixed(6)} ${mostMm}`;
    const sagMm = known.get(key) ?? scallopWithin(spanMm, arcMm, mostMm).sagMm;
    known.set(key, sagMm);
    return sagMm;
  };
  return columns.slice(1).map(({ xMm: toMm }, i) => {
    const fromMm = columns[i]?.xMm ?? 0;
    const spanMm = toMm - fromMm;
    const middle = (fromMm + toMm) / 2;
    const own = isHem ? form.swags.find((swag) => swag.fromMm < middle && middle < swag.toMm) : undefined;
    const isHeld = isHem && form.bar !== undefined && form.bar.fromMm < middle && middle < form.bar.toMm;
    const arcMm = own?.arcMm ?? spanMm + easeBetween(form, fromMm, toMm, aboveHemMm);
    const sagMm = isHeld ? 0 : sagOf(spanMm, arcMm, (own?.sagMm ?? 0) + risenMm);
    return { fromMm, toMm, arcMm, sagMm };
  });
}

/** The line from its left end to its right end: tails or level strips at the sides, a catenary in every bay. */
export function drapedLine(ask: DrapedAsk): ShadePoint[] {
  const { form, columns, widthMm, yMm } = ask;
  const between = bayLine(yMm, baysOf(ask));
  if (!hasTails(form, widthMm)) return levelEnds(between, yMm, widthMm);
  const left = tailPoints(ask, columns[0]?.xMm ?? 0, 0);
  const right = tailPoints(ask, columns.at(-1)?.xMm ?? widthMm, widthMm);
  return [...left.slice(0, -1), ...between, ...right.reverse().slice(1)];
}

/** Beside the outer columns a narrow strip stays level. */
export function levelEnds(between: readonly ShadePoint[], yMm: number, widthMm: number): ShadePoint[] {
  const [first] = between;
  const last = between.at(-1);
  return [
    ...(first === undefined || first[0] > 0 ? [[0, yMm] as const] : []),
    ...between,
    ...(last === undefined || last[0] < widthMm ? [[widthMm, yMm] as const] : []),
  ];
}

function tailPoints(ask: DrapedAsk, columnMm: number, edgeMm: number): ShadePoint[] {
  const { form, yMm, aboveHemMm, risenMm } = ask;
  const widthMm = Math.abs(edgeMm - columnMm);
  const outwards = edgeMm < columnMm ? -1 : 1;
  const [from, to] = outwards < 0 ? [edgeMm, columnMm] : [columnMm, edgeMm];
  const hang = hangTail(widthMm, widthMm + easeBetween(form, from, to, aboveHemMm), risenMm);
  return tailLine(widthMm, hang).map(([out, down]) => [columnMm + outwards * out, yMm + down]);
}

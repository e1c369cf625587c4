import type { Band } from "../../shade-plan/index.ts";
import type { Point, Primitive } from "../model.ts";
import { line } from "./shapes.ts";
import type { SheetInput } from "./sheet-input.ts";

/**
 * Bands of another cloth on one stretch of the face, on a shade that hangs flat. Raised, the bands along the sides run
 * on over the folds; what lies at the hem is folded away behind them.
 */
export function bandsOn(
  { shade, raise }: SheetInput,
  outline: readonly (readonly [number, number])[],
): Primitive[] {
  if (shade.form.across !== "flat") return [];
  const ys = outline.map(([, y]) => y);
  const [from, to] = [Math.min(...ys), Math.max(...ys)];
  const all = shade.cloth.bands;
  const shown =
    raise <= 0 ? all : all.filter(({ part }) => part === "left" || part === "right" || part === "top");
  return shown.flatMap((band): Primitive[] => {
    const shape = bandShape(band, shown);
    const points = clipped(shape, from, to);
    if (points.length < 3) return [];
    const ref = { part: `band-${band.part}` };
    return [
      line("bandCloth", points, { closed: true, ...ref }),
      ...edgesOf(shape, from, to).map((edge) => line("bandCloth", edge, ref)),
    ];
  });
}

/** Its own edges, as far as they lie on the stretch: where that ends the band goes on. */
function edgesOf(shape: readonly Point[], from: number, to: number): Point[][] {
  return shape.flatMap((point, i) => {
    const next = shape[(i + 1) % shape.length] ?? point;
    const level = Math.abs(next[1] - point[1]) < 1e-9;
    if (level) return point[1] >= from && point[1] <= to ? [[point, next]] : [];
    const at = (y: number): Point => [
      point[0] + ((y - point[1]) / (next[1] - point[1])) * (next[0] - point[0]),
      y,
    ];
    const low = Math.max(from, Math.min(point[1], next[1]));
    const high = Math.min(to, Math.max(point[1], next[1]));
    return low < high ? [[at(low), at(high)]] : [];
  });
}

/** A band with its ends on the slant where it meets a neighbour in a mitre. */
export function bandShape(band: Band, all: readonly Band[]): Point[] {
  const { part, xMm: x, yMm: y, widthMm: w, heightMm: h } = band;
  const has = (other: Band["part"]) => band.mitred && all.some((one) => one.part === other && one.mitred);
  const cut = Math.min(w, h);
  const at = (other: Band["part"]) => (has(other) ? cut : 0);
  switch (part) {
    case "left":
      return [
        [x, y],
        [x + w, y + at("top")],
        [x + w, y + h - at("bottom")],
        [x, y + h],
      ];
    case "right":
      return [
        [x, y + at("top")],
        [x + w, y],
        [x + w, y + h],
        [x, y + h - at("bottom")],
      ];
    case "top":
      return [
        [x, y],
        [x + w, y],
        [x + w - at("right"), y + h],
        [x + at("left"), y + h],
      ];
    case "bottom":
      return [
        [x + at("left"), y],
        [x + w - at("right"), y],
        [x + w, y + h],
        [x, y + h],
      ];
    case "bottom-band":
      return [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
      ];
  }
}

/** What of a convex outline lies between two levels. */
function clipped(points: readonly Point[], from: number, to: number): Point[] {
  return below(
    below(points, (y) => y - from),
    (y) => to - y,
  );
}

function below(points: readonly Point[], inside: (y: number) => number): Point[] {
  return points.flatMap((point, i): Point[] => {
    const next = points[(i + 1) % points.length] ?? point;
    const [a, b] = [inside(point[1]), inside(next[1])];
    const kept: Point[] = a >= 0 ? [point] : [];
    if (a * b >= 0) return kept;
    const share = a / (a - b);
    return [...kept, [point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])]];
  });
}

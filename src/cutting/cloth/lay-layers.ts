import { firstPacking } from "./first-packing.ts";
import { FitMasks } from "./fit-masks.ts";
import type { StepGrid } from "./grid.ts";
import { LayerDecoder } from "./layer-decoder.ts";
import { type Packing, packed } from "./packing.ts";
import type { LayerPlan } from "./wanted-layers.ts";

/** Layers below each other on the only bolt, and below them what no layer holds; undefined where that has no place. */
export function layLayers(grid: StepGrid, stages: number, plan: LayerPlan): Packing | undefined {
  const { items } = grid;
  const count = items.length;
  const laid = {
    x: new Int32Array(count),
    y: new Float64Array(count),
    bolt: new Int16Array(count),
    w: Int32Array.from(items, ({ w }) => w),
    h: Int32Array.from(items, ({ h }) => h),
  };
  const waiting = queues(grid, plan);
  let top = 0;
  for (const { columns } of plan.layers) {
    let left = 0;
    let used = 0;
    for (const { types, width } of columns) {
      let y = top;
      for (const type of types) {
        const { w, h, row } = plan.types[type] as LayerPlan["types"][number];
        const item = waiting[row]?.pop();
        if (item === undefined) continue;
        [laid.x[item], laid.y[item], laid.w[item], laid.h[item]] = [left, y, w, h];
        y += h;
      }
      left += width;
      used = Math.max(used, y - top);
    }
    top += used;
  }
  const rest = waiting.flat();
  if (rest.length > 0 && !layRest(grid, stages, rest, top, laid)) return undefined;
  return packed(grid, laid);
}

function queues({ items }: StepGrid, plan: LayerPlan): number[][] {
  const rowOf = new Map<string, number>();
  for (const { w, h, turned, row } of plan.types) rowOf.set(turned ? `${h} ${w}` : `${w} ${h}`, row);
  const waiting: number[][] = plan.rest.map(() => []);
  items.forEach(({ w, h }, item) => {
    (waiting[rowOf.get(`${w} ${h}`) as number] as number[]).push(item);
  });
  return waiting;
}

function layRest(
  grid: StepGrid,
  stages: number,
  rest: readonly number[],
  top: number,
  laid: Omit<Packing, "used" | "cost">,
): boolean {
  const own = rest.map((item) => grid.items[item] as StepGrid["items"][number]);
  const small: StepGrid = { ...grid, items: own };
  const masks = new FitMasks(own);
  const tries = firstPacking(small, new LayerDecoder(small, masks, [0], stages), 0);
  let packing: Packing | undefined;
  for (let step = tries.next(); ; step = tries.next()) {
    packing = step.value;
    if (step.done) break;
  }
  if (!packing) return false;
  rest.forEach((item, k) => {
    laid.x[item] = packing.x[k] as number;
    laid.y[item] = top + (packing.y[k] as number);
    laid.w[item] = packing.w[k] as number;
    laid.h[item] = packing.h[k] as number;
  });
  return true;
}

import { boundRaisedToStep, type WholeLengths } from "./whole-lengths.ts";

/**
 * No plan costs less: the cuts laid end to end over the stock that is cheapest by its length, and, where one length is
 * sold, the dual-feasible functions of Fekete and Schepers (Mathematical Programming 91, 2001, 11–31).
 */
export function materialBound(whole: WholeLengths): number {
  const cost = Math.max(endToEnd(whole), oneLengthBound(whole));
  return boundRaisedToStep(cost, whole.costStep);
}

function endToEnd({ sizes, demand, stock, toMeasure }: WholeLengths): number {
  let need = 0;
  for (let type = 0; type < sizes.length; type++) need += (sizes[type] as number) * (demand[type] as number);
  let rate = Number.POSITIVE_INFINITY;
  for (const { size, cost, available } of stock) {
    if (available === Number.POSITIVE_INFINITY && size > 0) rate = Math.min(rate, cost / size);
  }
  if (toMeasure)
    for (const [type, cost] of toMeasure.entries()) rate = Math.min(rate, cost / (sizes[type] as number));
  let total = 0;
  const limited = stock.filter(({ size, available }) => size > 0 && available !== Number.POSITIVE_INFINITY);
  for (const { size, cost, available } of limited.sort((a, b) => a.cost / a.size - b.cost / b.size)) {
    if (cost / size >= rate) break;
    const cells = Math.min(need, size * available);
    total += (cells * cost) / size;
    need -= cells;
  }
  return need > 0 && Number.isFinite(rate) ? total + need * rate : total;
}

const MOST_FUNCTIONS = 20;
const MOST_LIMITS = 100;
const DUST = 1e-9;

/** Bars needed at the least where every one were as long as the longest, less those at hand, times the price. */
function oneLengthBound(whole: WholeLengths): number {
  const { sizes, stock, toMeasure } = whole;
  const sold = stock.filter(({ available }) => available === Number.POSITIVE_INFINITY);
  const [only] = sold;
  if (only === undefined || sold.length > 1 || toMeasure) return 0;
  const longest = stock.reduce((most, { size }) => Math.max(most, size), 0);
  const held = stock.reduce((sum, { available }) => sum + (Number.isFinite(available) ? available : 0), 0);
  const half = sizes.filter((size) => 2 * size <= longest);
  const every = Math.max(1, Math.ceil(half.length / MOST_LIMITS));
  let bars = 0;
  for (const limit of [0, ...half.filter((_, i) => i % every === 0)]) {
    for (let k = 0; k <= MOST_FUNCTIONS; k++) bars = Math.max(bars, weighed(whole, longest, limit, k));
  }
  return Math.max(0, Math.ceil(bars - DUST) - held) * only.cost;
}

/** Sum of the cuts under U(limit) and then u(k); k = 0 leaves the second out. */
function weighed({ sizes, demand }: WholeLengths, longest: number, limit: number, k: number): number {
  let sum = 0;
  for (let type = 0; type < sizes.length; type++) {
    const size = sizes[type] as number;
    const count = demand[type] as number;
    if (size > longest - limit) sum += count;
    else if (size >= limit) sum += count * stepped(size, longest, k);
  }
  return sum;
}

function stepped(size: number, longest: number, k: number): number {
  if (k === 0 || ((k + 1) * size) % longest === 0) return size / longest;
  return Math.floor(((k + 1) * size) / longest) / k;
}

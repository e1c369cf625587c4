import { type PatternBar, roomOn } from "./bar-pattern.ts";
import type { WholeLengths } from "./whole-lengths.ts";

/** Beyond so many bars the passes would take longer than they are worth. */
const MOST_BARS = 600;

/**
 * The same cost or less, with the offcuts gathered: cuts go from emptier bars to fuller ones of their kind, and what is
 * cut from stock comes off the shortest piece that holds it.
 */
export function tidyBars(whole: WholeLengths, bars: readonly PatternBar[]): PatternBar[] {
  if (bars.length > MOST_BARS) return bars.map((bar) => ({ ...bar }));
  const tidied = bars.map(({ stock, types }) => ({ stock, types: [...types] }));
  gather(whole, tidied);
  const used = tidied.filter(({ types }) => types.length > 0);
  return ontoShortest(whole, used);
}

function gather(whole: WholeLengths, bars: PatternBar[]): void {
  const room = bars.map((bar) => roomOn(whole, bar));
  const byRoom = [...bars.keys()].filter((i) => (bars[i] as PatternBar).stock >= 0);
  byRoom.sort((a, b) => (room[b] as number) - (room[a] as number));
  for (const from of byRoom) {
    const giver = bars[from] as PatternBar;
    for (const type of [...giver.types]) {
      const size = whole.sizes[type] as number;
      let best: number | undefined;
      for (const to of byRoom) {
        const free = room[to] as number;
        const fuller = to !== from && free < (room[from] as number) && free >= size;
        if (fuller && (best === undefined || free < (room[best] as number))) best = to;
      }
      if (best === undefined) continue;
      giver.types.splice(giver.types.indexOf(type), 1);
      bars[best]?.types.push(type);
      room[from] = (room[from] as number) + size;
      room[best] = (room[best] as number) - size;
    }
  }
}

function ontoShortest(whole: WholeLengths, bars: PatternBar[]): PatternBar[] {
  const left = whole.stock.map(({ available }) => available);
  for (const { stock } of bars) if (stock >= 0) left[stock] = (left[stock] as number) - 1;
  const size = (stock: number) => whole.stock[stock]?.size ?? 0;
  const held = (bar: PatternBar) => bar.types.reduce((sum, type) => sum + (whole.sizes[type] as number), 0);
  const order = bars.map((bar) => bar).sort((a, b) => held(a) - held(b));
  for (const bar of order) {
    if (bar.stock < 0) continue;
    const need = held(bar);
    let best = bar.stock;
    for (let s = 0; s < whole.stock.length; s++) {
      const fits = (left[s] as number) > 0 && size(s) >= need && size(s) < size(best);
      if (fits && whole.stock[s]?.cost === whole.stock[bar.stock]?.cost) best = s;
    }
    if (best === bar.stock) continue;
    left[bar.stock] = (left[bar.stock] as number) + 1;
    left[best] = (left[best] as number) - 1;
    bar.stock = best;
  }
  return bars;
}

import { type ClothNet, NetBuilder, noContacts } from "../../mechanics/index.ts";
import type { ClothFeel } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import type { DrapeCell } from "./cell.ts";
import type { CellGrid, ClothLine } from "./cell-grid.ts";
import { warpMm, wholeWarpMm } from "./warp.ts";

/** Threads stretch to twice their length under so many times the cloth that hangs from them: by 0.3 % under it. */
const INEXTENSIBLE = 300;
/** Wherever a thread ends, as much cloth as lies in a fold may hang from it, mm. */
const LEAST_CLOTH_MM = 200;
/** A tape bears the cloth of its whole bay. */
const TAPE_CARRIES = 10;
/** Weft that is longer than its place lies in ripples finer than the net: it withstands that a little. */
const RIPPLES = 0.01;
/** Shear stiffness of plain weaves, N/mm. */
const SHEAR = sourced(0.05, "ratio", cite("from-memory", "30 to 100 N/m for plain weaves of cotton"));
/** Share of the rigidity that lines on the bias carry. */
const BIAS_SHARE = 0.35;
/** A bar is this many times as stiff as the cloth it lies in: it hardly bends, and the matrix stays sound. */
const BAR_STIFFENS = 2e4;

export interface HemLoad {
  /** Weight of a bar on each mm, N, and from where to where it lies. */
  weightNPerMm: number;
  fromMm: number;
  toMm: number;
}

/** The net of one cell: its threads, what bends it, its weight, and what holds it. */
export function cellNet(
  cell: DrapeCell,
  { lines }: CellGrid,
  { weightNPerMm2, rigidityNmm }: ClothFeel,
  bar?: HemLoad,
): ClothNet {
  const across = cell.xMm.length;
  const net = new NetBuilder(across * lines.length);
  const node = (i: number, j: number) => j * across + i;
  const membraneAt = (j: number) =>
    INEXTENSIBLE * (weightNPerMm2 * hangsMm(lines[j] as ClothLine) + (bar?.weightNPerMm ?? 0));
  const stepMm = (i: number, j: number) => warpMm(cell, lines, i, j);
  // What lies in ripples finer than the net weighs as much as the rest.
  const wholeMm = (i: number, j: number) => wholeWarpMm(cell, lines, i, j);
  const weftMm = (i: number, j: number) => cell.acrossMm(i, (lines[j] as ClothLine).fromHemMm);
  const placeMm = (i: number) => (cell.xMm[i + 1] as number) - (cell.xMm[i] as number);
  const wide = (i: number, j: number) =>
    ((i > 0 ? weftMm(i - 1, j) : 0) + (i + 1 < across ? weftMm(i, j) : 0)) / 2;
  const tall = (i: number, j: number) =>
    ((j > 0 ? stepMm(i, j) : 0) + (j + 1 < lines.length ? stepMm(i, j + 1) : 0)) / 2;
  const whole = (i: number, j: number) =>
    ((j > 0 ? wholeMm(i, j) : 0) + (j + 1 < lines.length ? wholeMm(i, j + 1) : 0)) / 2;
  for (let j = 0; j < lines.length; j++) {
    const membrane = membraneAt(j);
    for (let i = 0; i < across; i++) {
      const area = wide(i, j) * whole(i, j);
      net.load(node(i, j), 1, weightNPerMm2 * area);
      if (j > 0) {
        const isTape = lines[j]?.swag !== undefined && cell.columns.includes(i);
        const strip = isTape ? TAPE_CARRIES * wide(i, j) : wide(i, j);
        net.thread(
          node(i, j - 1),
          node(i, j),
          stepMm(i, j),
          (membrane * strip) / stepMm(i, j),
          isTape ? 0 : 1,
        );
      }
      if (i + 1 < across) {
        const rest = weftMm(i, j);
        net.thread(
          node(i, j),
          node(i + 1, j),
          rest,
          (membrane * tall(i, j)) / rest,
          cell.across === "gathered" ? 0 : RIPPLES,
          // What a pleat could give more lies folded in it.
          cell.across === "pleated" ? Math.max(0, rest - placeMm(i)) : 0,
        );
      }
      if (j > 0 && i + 1 < across) {
        const [w, h] = [weftMm(i, j), stepMm(i, j)];
        const stiff = (SHEAR.value * (w * w + h * h)) / (2 * w * h);
        net.thread(node(i, j - 1), node(i + 1, j), Math.hypot(w, h), stiff, 0);
        net.thread(node(i + 1, j - 1), node(i, j), Math.hypot(w, h), stiff, 0);
      }
      bendAt(i, j);
    }
  }
  if (bar !== undefined) layBar(bar);
  hold(net, cell, lines);
  return net.build(noContacts());

  function bendAt(i: number, j: number): void {
    const w = wide(i, j);
    const h = tall(i, j);
    const inside = i > 0 && i + 1 < across && j > 0 && j + 1 < lines.length;
    const bias = inside ? BIAS_SHARE * rigidityNmm : 0;
    const diagonal = w * w + h * h;
    if (j > 0 && j + 1 < lines.length)
      net.bend(
        [node(i, j - 1), node(i, j), node(i, j + 1)],
        [stepMm(i, j), stepMm(i, j + 1)],
        (rigidityNmm - (2 * bias * h ** 4) / diagonal ** 2) * w * h,
      );
    const weft = Math.max(0, rigidityNmm - (2 * bias * w ** 4) / diagonal ** 2) * w * h;
    if (i > 0 && i + 1 < across)
      net.bend([node(i - 1, j), node(i, j), node(i + 1, j)], [weftMm(i - 1, j), weftMm(i, j)], weft);
    else if (i > 0) net.mirrorBend(node(i - 1, j), node(i, j), weftMm(i - 1, j), weft);
    else if (cell.left === "mirror") net.mirrorBend(node(1, j), node(0, j), weftMm(0, j), weft);
    if (!inside) return;
    const length = Math.sqrt(diagonal);
    for (const side of [-1, 1])
      net.bend([node(i - side, j - 1), node(i, j), node(i + side, j + 1)], [length, length], bias * w * h);
  }

  function layBar({ weightNPerMm, fromMm, toMm }: HemLoad): void {
    const j = lines.length - 1;
    const isBarred = (i: number) =>
      (cell.xMm[i] as number) >= fromMm - 1 && (cell.xMm[i] as number) <= toMm + 1;
    for (let i = 0; i < across; i++) {
      if (!isBarred(i)) continue;
      net.load(node(i, j), 1, weightNPerMm * wide(i, j));
      const stiff = BAR_STIFFENS * rigidityNmm * wide(i, j) * 10;
      if (i > 0 && i + 1 < across && isBarred(i - 1) && isBarred(i + 1))
        net.bend([node(i - 1, j), node(i, j), node(i + 1, j)], [weftMm(i - 1, j), weftMm(i, j)], stiff);
      else if (i > 0 && i + 1 === across && isBarred(i - 1))
        net.mirrorBend(node(i - 1, j), node(i, j), weftMm(i - 1, j), stiff);
      else if (i === 0 && cell.left === "mirror") net.mirrorBend(node(1, j), node(0, j), weftMm(0, j), stiff);
    }
  }
}

/** Cloth that may hang from a thread here: swags hang from their tapes, each by itself. */
function hangsMm({ fromHemMm, swag }: ClothLine): number {
  return Math.max(LEAST_CLOTH_MM, swag?.clothMm ?? fromHemMm);
}

/** The board holds the first line, the rings their nodes, and mirror planes what lies in them. */
function hold(net: NetBuilder, cell: DrapeCell, lines: readonly ClothLine[]): void {
  const across = cell.xMm.length;
  lines.forEach(({ heldYMm }, j) => {
    for (let i = 0; i < across; i++) {
      const node = j * across + i;
      const isRing = heldYMm !== undefined && cell.columns.includes(i);
      if (j === 0 || isRing) net.hold(node, [0, 1, 2]);
      else if (i === across - 1 || (i === 0 && cell.left === "mirror")) net.hold(node, [0]);
    }
  });
}

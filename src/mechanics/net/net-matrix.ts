import { type Envelope, envelopeOf } from "../solve/envelope.ts";
import { type ClothNet, contactCoordinate } from "./net.ts";
import { clearanceMm, pushOf, stretchMm } from "./net-energy.ts";

/** Where the free coordinates stand in the matrix, and the envelope that they need: the same for every shape of one net. */
export interface NetPattern {
  /** Row of each coordinate; −1 where it is held. */
  row: Int32Array;
  rows: number;
  matrix: Envelope;
  /** What bending adds: the same for every shape. */
  bending: Float64Array;
}

export function netPattern(net: ClothNet): NetPattern {
  const { nodeCount, held, threads, bends } = net;
  const row = new Int32Array(3 * nodeCount).fill(-1);
  let rows = 0;
  for (let i = 0; i < row.length; i++) if (held[i] === 0) row[i] = rows++;
  // Lowest node that each node is tied to.
  const lowest = Int32Array.from({ length: nodeCount }, (_, n) => n);
  const tie = (...nodes: number[]) => {
    const low = Math.min(...nodes);
    for (const n of nodes) lowest[n] = Math.min(lowest[n] as number, low);
  };
  for (let t = 0; t < threads.from.length; t++) tie(threads.from[t] as number, threads.to[t] as number);
  for (let b = 0; b < bends.nodes.length; b += 3)
    tie(bends.nodes[b] as number, bends.nodes[b + 1] as number, bends.nodes[b + 2] as number);
  const first = new Int32Array(rows);
  for (let n = 0; n < nodeCount; n++) {
    let from = 3 * (lowest[n] as number);
    // Of a node that is held in part, its own free coordinates are tied to each other.
    while (from < 3 * n + 2 && row[from] === -1) from++;
    for (let c = 0; c < 3; c++) {
      const i = row[3 * n + c] as number;
      if (i >= 0) first[i] = Math.min(i, row[from] === -1 ? i : (row[from] as number));
    }
  }
  const matrix = envelopeOf(first);
  const pattern = { row, rows, matrix, bending: matrix.values };
  fillBends(net, adderTo(pattern));
  return { ...pattern, bending: matrix.values.slice() };
}

type Put = (i: number, j: number, value: number) => void;

function adderTo({ row, matrix: { start, values } }: Omit<NetPattern, "bending">): Put {
  return (i, j, value) => {
    const [a, b] = [row[i] as number, row[j] as number];
    if (a < 0 || b < 0) return;
    const at = a >= b ? (start[a] as number) + b : (start[b] as number) + a;
    values[at] = (values[at] as number) + value;
  };
}

/**
 * The matrix of second derivatives, kept positive: a thread that is shorter than at rest would buckle, and what that takes
 * away is left out. Contacts tie nodes far apart; here they stiffen each of their nodes alone, by no less than they do.
 */
export function fillMatrix(net: ClothNet, pattern: NetPattern, x: Float64Array): void {
  pattern.matrix.values.set(pattern.bending);
  const put = adderTo(pattern);
  fillThreads(net, x, put);
  for (const { slope, at } of pressedContacts(net, x)) {
    const sides = (net.contacts.nodes[3 * at + 1] as number) < 0 ? 1 : 2;
    eachContactNode(net, at, (i, weight) => put(i, i, sides * slope * Math.abs(weight)));
  }
}

/** Contacts that push, with the change of their push. */
export function pressedContacts(net: ClothNet, x: Float64Array): { at: number; slope: number }[] {
  const { contacts } = net;
  const pressed: { at: number; slope: number }[] = [];
  for (let at = 0; at < contacts.share.length; at++) {
    const { slope } = pushOf(contacts, clearanceMm(contacts, x, at));
    if (slope > 0) pressed.push({ at, slope });
  }
  return pressed;
}

/** Coordinates of one contact with their weights in its clearance. */
export function eachContactNode(
  { contacts: { nodes, share } }: ClothNet,
  at: number,
  visit: (coordinate: number, weight: number) => void,
): void {
  const b = nodes[3 * at + 1] as number;
  visit(3 * (nodes[3 * at] as number) + contactCoordinate(b), 1);
  if (b < 0) return;
  const s = share[at] as number;
  visit(3 * b + 2, s - 1);
  visit(3 * (nodes[3 * at + 2] as number) + 2, -s);
}

function fillThreads({ threads }: ClothNet, x: Float64Array, put: Put): void {
  const { from, to, stiffness, pushShare } = threads;
  const unit = new Float64Array(3);
  for (let t = 0; t < from.length; t++) {
    const a = 3 * (from[t] as number);
    const b = 3 * (to[t] as number);
    let squared = 0;
    for (let c = 0; c < 3; c++) {
      const d = (x[b + c] as number) - (x[a + c] as number);
      unit[c] = d;
      squared += d * d;
    }
    const length = Math.sqrt(squared);
    if (length === 0) continue;
    const stretch = stretchMm(threads, t, length);
    // Between its slack and its rest a thread does nothing.
    if (stretch === 0 && (threads.slackMm[t] as number) > 0) continue;
    const along = (stiffness[t] as number) * (stretch < 0 ? (pushShare[t] as number) : 1);
    if (along === 0) continue;
    const across = stretch < 0 ? 0 : (along * stretch) / length;
    for (let c = 0; c < 3; c++) {
      for (let d = 0; d < 3; d++) {
        const part = (((along - across) * (unit[c] as number)) / length) * ((unit[d] as number) / length);
        const value = part + (c === d ? across : 0);
        if (d <= c) {
          put(a + c, a + d, value);
          put(b + c, b + d, value);
        }
        put(a + c, b + d, -value);
      }
    }
  }
}

function fillBends({ bends }: ClothNet, put: Put): void {
  const { nodes, weights, stiffness } = bends;
  for (let b = 0; b < nodes.length; b += 3) {
    for (let p = 0; p < 3; p++) {
      for (let q = 0; q <= p; q++) {
        const [i, j] = [nodes[b + p] as number, nodes[b + q] as number];
        // The same node twice: both products fall on one entry.
        const times = p !== q && i === j ? 2 : 1;
        const product = times * (weights[b + p] as number) * (weights[b + q] as number);
        if (product === 0) continue;
        for (let c = 0; c < 3; c++) {
          const stiff = stiffness[b + c] as number;
          if (stiff !== 0) put(3 * i + c, 3 * j + c, stiff * product);
        }
      }
    }
  }
}

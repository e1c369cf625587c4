import { type Bends, type ClothNet, type Contacts, contactCoordinate, type Threads } from "./net.ts";

/** Energy of the net, N·mm; its gradient is added to `gradient` where one is given. */
export function netEnergy(net: ClothNet, x: Float64Array, gradient?: Float64Array): number {
  let energy = threadEnergy(net.threads, x, gradient) + bendEnergy(net.bends, x, gradient);
  energy += contactEnergy(net.contacts, x, gradient);
  for (let i = 0; i < x.length; i++) {
    const load = net.loadN[i] as number;
    energy -= load * (x[i] as number);
    if (gradient !== undefined) gradient[i] = (gradient[i] as number) - load;
  }
  return energy;
}

function threadEnergy(threads: Threads, x: Float64Array, gradient?: Float64Array): number {
  const { from, to, stiffness, pushShare } = threads;
  let energy = 0;
  for (let t = 0; t < from.length; t++) {
    const a = 3 * (from[t] as number);
    const b = 3 * (to[t] as number);
    const dx = (x[b] as number) - (x[a] as number);
    const dy = (x[b + 1] as number) - (x[a + 1] as number);
    const dz = (x[b + 2] as number) - (x[a + 2] as number);
    const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
    const stretch = stretchMm(threads, t, length);
    const k = (stiffness[t] as number) * (stretch < 0 ? (pushShare[t] as number) : 1);
    energy += 0.5 * k * stretch * stretch;
    if (gradient === undefined || length === 0) continue;
    const pull = (k * stretch) / length;
    add(gradient, a, -pull * dx, -pull * dy, -pull * dz);
    add(gradient, b, pull * dx, pull * dy, pull * dz);
  }
  return energy;
}

/** How far a thread is longer than at rest, or shorter than it may be without a push, mm. */
export function stretchMm({ restMm, slackMm }: Threads, t: number, lengthMm: number): number {
  const longer = lengthMm - (restMm[t] as number);
  return longer < 0 ? Math.min(0, longer + (slackMm[t] as number)) : longer;
}

function add(to: Float64Array, at: number, dx: number, dy: number, dz: number): void {
  to[at] = (to[at] as number) + dx;
  to[at + 1] = (to[at + 1] as number) + dy;
  to[at + 2] = (to[at + 2] as number) + dz;
}

function bendEnergy({ nodes, weights, offset, stiffness }: Bends, x: Float64Array, gradient?: Float64Array) {
  let energy = 0;
  for (let b = 0; b < nodes.length; b += 3) {
    const [i, j, k] = [3 * (nodes[b] as number), 3 * (nodes[b + 1] as number), 3 * (nodes[b + 2] as number)];
    const [u, v, w] = [weights[b] as number, weights[b + 1] as number, weights[b + 2] as number];
    for (let c = 0; c < 3; c++) {
      const stiff = stiffness[b + c] as number;
      if (stiff === 0) continue;
      const curve =
        u * (x[i + c] as number) +
        v * (x[j + c] as number) +
        w * (x[k + c] as number) +
        (offset[b + c] as number);
      energy += 0.5 * stiff * curve * curve;
      if (gradient === undefined) continue;
      const moment = stiff * curve;
      gradient[i + c] = (gradient[i + c] as number) + u * moment;
      gradient[j + c] = (gradient[j + c] as number) + v * moment;
      gradient[k + c] = (gradient[k + c] as number) + w * moment;
    }
  }
  return energy;
}

/** How far node a is in front of where it touches, mm. */
export function clearanceMm({ nodes, share, gapMm }: Contacts, x: Float64Array, at: number): number {
  const a = nodes[3 * at] as number;
  const b = nodes[3 * at + 1] as number;
  const out = (x[3 * a + contactCoordinate(b)] as number) - (gapMm[at] as number);
  if (b < 0) return out;
  const c = nodes[3 * at + 2] as number;
  const s = share[at] as number;
  return out - (1 - s) * (x[3 * b + 2] as number) - s * (x[3 * c + 2] as number);
}

/** Push and its change with depth: nothing, then a cubic that meets a straight line with the same slope and curvature. */
export function pushOf(
  { stiffness, softMm }: Contacts,
  clearMm: number,
): { energy: number; push: number; slope: number } {
  if (clearMm >= softMm) return { energy: 0, push: 0, slope: 0 };
  const depth = softMm - clearMm;
  if (clearMm > 0)
    return {
      energy: (stiffness * depth ** 3) / (6 * softMm),
      push: (stiffness * depth ** 2) / (2 * softMm),
      slope: (stiffness * depth) / softMm,
    };
  return {
    energy: stiffness * (clearMm ** 2 / 2 - (softMm * clearMm) / 2 + softMm ** 2 / 6),
    push: stiffness * (softMm / 2 - clearMm),
    slope: stiffness,
  };
}

function contactEnergy(contacts: Contacts, x: Float64Array, gradient?: Float64Array): number {
  let energy = 0;
  const { nodes, share } = contacts;
  for (let at = 0; at < share.length; at++) {
    const { energy: stored, push } = pushOf(contacts, clearanceMm(contacts, x, at));
    energy += stored;
    if (gradient === undefined || push === 0) continue;
    const b = nodes[3 * at + 1] as number;
    const a = 3 * (nodes[3 * at] as number) + contactCoordinate(b);
    gradient[a] = (gradient[a] as number) - push;
    if (b < 0) continue;
    const c = 3 * (nodes[3 * at + 2] as number) + 2;
    const s = share[at] as number;
    gradient[3 * b + 2] = (gradient[3 * b + 2] as number) + (1 - s) * push;
    gradient[c] = (gradient[c] as number) + s * push;
  }
  return energy;
}

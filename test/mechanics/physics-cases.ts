import { readFileSync } from "node:fs";

/**
 * Outside values for the mechanics: published, or computed by two independent methods outside this project. Each says
 * where it is from and how far it can be trusted; "memory" is in the provenance of what nobody looked up again.
 */
export interface PhysicsCase {
  id: string;
  topic: string;
  inputs: Record<string, unknown>;
  outputs: Record<string, unknown>;
  tolerance: string;
  source: string;
  provenance: string;
}

const all: PhysicsCase[] = JSON.parse(readFileSync(new URL("./physics-cases.json", import.meta.url), "utf8"));

/** Cases of one topic as rows of a test, name first. Fails where there are none, so that no table is empty unseen. */
export function casesOf(topic: string): [string, PhysicsCase][] {
  const found = all.filter((one) => one.topic === topic);
  if (found.length === 0) throw new Error(`invalid topic: ${topic}`);
  return found.map((one) => [`${one.id} (${one.provenance})`, one]);
}

/** A number of a case, NaN where it gives none. */
export function given(values: Record<string, unknown>, name: string): number {
  const value = values[name];
  return typeof value === "number" ? value : Number.NaN;
}

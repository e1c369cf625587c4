import type { Highs } from "highs";

/**
 * The exact solver, loaded only where a gap is left to close. The package's types are those of its CommonJS door; Node
 * takes the other one, whose default is the loader.
 */
export async function loadHighs(): Promise<Highs> {
  const { default: load } = (await import("highs")) as unknown as { default: () => Promise<Highs> };
  return load();
}

import { create } from "zustand";
import { fieldAccepts, type Job } from "../../job/index.ts";

/** Parts of a job that new jobs on this device begin with; a job keeps the copy that it was begun with. */
export const SHOP_PARTS = ["rates", "workshop"] as const;
export type ShopPart = (typeof SHOP_PARTS)[number];
export type Shop = Partial<Pick<Job, ShopPart>>;

const KEY = "shadewright-shop";

/** Only what this release can use. */
function kept(): Shop {
  try {
    const known: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    if (typeof known !== "object" || known === null) return {};
    const parts = known as Record<string, unknown>;
    return Object.fromEntries(
      SHOP_PARTS.flatMap((part) => {
        const value = parts[part];
        return value !== undefined && fieldAccepts([part], value) ? [[part, value]] : [];
      }),
    );
  } catch {
    return {};
  }
}

export const useShop = create<Shop>()(kept);

/** Another tab may have changed it. */
if (typeof window !== "undefined")
  window.addEventListener("storage", ({ key }) => {
    if (key === KEY) useShop.setState(kept(), true);
  });

/** New jobs begin with this from now on. */
export function keepInShop<P extends ShopPart>(part: P, value: Job[P]): void {
  useShop.setState({ [part]: value });
  try {
    localStorage.setItem(KEY, JSON.stringify(useShop.getState()));
  } catch {
    // A device that keeps nothing begins its jobs with the defaults.
  }
}

/** A new job with what this device’s shop has. */
export function withShop(job: Job): Job {
  return { ...job, ...useShop.getState() };
}

/** Each setting on its own, by its path: `lift/kind`, `prices/cord-1`. */
function settingsOf(value: unknown, path = ""): [string, string][] {
  if (value === undefined) return [];
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return [[path, JSON.stringify(value)]];
  return Object.entries(value).flatMap(([key, inner]) =>
    settingsOf(inner, path === "" ? key : `${path}/${key}`),
  );
}

/** Paths of the settings that two copies have otherwise. */
export function differingSettings(a: unknown, b: unknown): string[] {
  const [ofA, ofB] = [new Map(settingsOf(a)), new Map(settingsOf(b))];
  return [...new Set([...ofA.keys(), ...ofB.keys()])].filter((path) => ofA.get(path) !== ofB.get(path));
}

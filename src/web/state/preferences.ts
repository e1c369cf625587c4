import { create } from "zustand";
import type { UnitSystem } from "../../units/index.ts";
import { PRINT_SETS, type PrintSet, SET_PRESETS } from "../../workbook/print-sets/index.ts";

export type ThemeChoice = "device" | "light" | "dark";
export type PaperChoice = "letter" | "a4";

/** What the maker likes on this device; jobs carry their own units. */
export interface Preferences {
  theme: ThemeChoice;
  system: UnitSystem;
  paper: PaperChoice;
  /** What is printed. */
  sets: readonly PrintSet[];
  /** The shade whose steps are being done at the bench. */
  atBench: AtBench | null;
}

export interface AtBench {
  jobId: string;
  windowId: string;
  /** Name of the window. */
  name: string;
}

const KEY = "shadewright-preferences";

/** Inches and Letter where the browser speaks the English of the United States. */
function firstGuess(): Preferences {
  const inches = globalThis.navigator?.language === "en-US";
  return {
    theme: "device",
    system: inches ? "imperial" : "metric",
    paper: inches ? "letter" : "a4",
    sets: SET_PRESETS.usual,
    atBench: null,
  };
}

function kept(): Partial<Preferences> {
  try {
    const known: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    return typeof known === "object" && known !== null ? known : {};
  } catch {
    return {};
  }
}

/** Only values that this release knows. */
function sound({ theme, system, paper, sets, atBench }: Partial<Preferences>): Partial<Preferences> {
  return {
    ...(theme === "light" || theme === "dark" ? { theme } : {}),
    ...(system === "imperial" || system === "metric" ? { system } : {}),
    ...(paper === "letter" || paper === "a4" ? { paper } : {}),
    ...(isAtBench(atBench) ? { atBench } : {}),
    ...(Array.isArray(sets) ? { sets: PRINT_SETS.filter((one) => sets.includes(one)) } : {}),
  };
}

function isAtBench(known: unknown): known is AtBench {
  const keys = ["jobId", "windowId", "name"] as const satisfies (keyof AtBench)[];
  return keys.every((key) => typeof (known as AtBench | null | undefined)?.[key] === "string");
}

export const usePreferences = create<Preferences>()(() => ({ ...firstGuess(), ...sound(kept()) }));

export function prefer(change: Partial<Preferences>): void {
  usePreferences.setState(change);
  try {
    localStorage.setItem(KEY, JSON.stringify(usePreferences.getState()));
  } catch {
    // A device that keeps nothing asks again next time.
  }
}

/** Sets the paper of the page: as the device has it, or as chosen. */
export function applyTheme(theme: ThemeChoice): void {
  if (theme === "device") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
}

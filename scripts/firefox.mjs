import { findProgram, installPackage } from "./debian.mjs";

const NAMES = ["firefox-esr", "firefox"];

export const HOW_TO_GET_FIREFOX =
  "install it (on Debian: sudo apt-get install firefox-esr), or name yours in FIREFOX";

/**
 * A Firefox of this machine: the one that `FIREFOX` names, or the first on the path.
 * @returns {string | undefined}
 */
export function findFirefox() {
  return findProgram(process.env.FIREFOX, NAMES);
}

/**
 * Finds Firefox, or installs it through Debian's package manager where that is allowed.
 * @returns {string | undefined} where it is; its tests are left out where it is nowhere
 */
export function ensureFirefox() {
  return findFirefox() ?? (installPackage("firefox-esr") ? findFirefox() : undefined);
}

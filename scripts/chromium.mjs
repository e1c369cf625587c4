import { findProgram, installPackage } from "./debian.mjs";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/**
 * A Chromium of this machine: the one that `CHROMIUM` names, or the first on the path.
 * @returns {string | undefined}
 */
export function findChromium() {
  return findProgram(process.env.CHROMIUM, NAMES);
}

/**
 * Finds Chromium, or installs it through Debian's package manager where that is allowed.
 * @returns {string | undefined} where it is, or nothing after saying what to do
 */
export function ensureChromium() {
  const found = findChromium() ?? (installPackage("chromium") ? findChromium() : undefined);
  if (found) return found;
  console.error(
    "The browser tests need Chromium, and it is not here and could not be installed. " +
      "Install it (on Debian: sudo apt-get install chromium), or name yours in CHROMIUM.",
  );
  return undefined;
}

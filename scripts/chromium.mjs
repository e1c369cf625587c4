import { spawnSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { run } from "./run.mjs";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/** @param {string} path */
function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * A Chromium of this machine: the one that `CHROMIUM` names, or the first on the path.
 * @returns {string | undefined}
 */
export function findChromium() {
  const named = process.env.CHROMIUM;
  if (named) return isExecutable(named) ? named : undefined;
  const folders = ["/usr/bin", ...(process.env.PATH ?? "").split(delimiter)];
  return folders.flatMap((folder) => NAMES.map((name) => join(folder, name))).find(isExecutable);
}

/** How to run apt here, or nothing where it cannot be run without asking for a password. */
function aptCommand() {
  if (!existsSync("/usr/bin/apt-get")) return undefined;
  if (process.getuid?.() === 0) return ["apt-get"];
  const withoutPassword = spawnSync("sudo", ["-n", "true"], { stdio: "ignore" }).status === 0;
  return withoutPassword ? ["sudo", "-n", "apt-get"] : undefined;
}

/**
 * Finds Chromium, or installs it through Debian's package manager where that is allowed.
 * @returns {string | undefined} where it is, or nothing after saying what to do
 */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  const [command, ...first] = aptCommand() ?? [];
  if (command) {
    console.error("Installing Chromium (apt-get) …");
    const quiet = { DEBIAN_FRONTEND: "noninteractive" };
    const install = [...first, "install", "-y", "--no-install-recommends", "chromium"];
    if (
      run(command, install, quiet) ||
      (run(command, [...first, "update"], quiet) && run(command, install, quiet))
    ) {
      return findChromium();
    }
  }
  console.error(
    "The browser tests need Chromium, and it is not here and could not be installed. " +
      "Install it (on Debian: sudo apt-get install chromium), or name yours in CHROMIUM.",
  );
  return undefined;
}

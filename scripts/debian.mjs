import { spawnSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { run } from "./run.mjs";

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
 * A program of this machine: the one that an environment variable names, or the first on the path.
 * @param {string | undefined} named
 * @param {readonly string[]} names
 * @returns {string | undefined}
 */
export function findProgram(named, names) {
  if (named) return isExecutable(named) ? named : undefined;
  const folders = ["/usr/bin", ...(process.env.PATH ?? "").split(delimiter)];
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(isExecutable);
}

/** How to run apt here, or nothing where it cannot be run without asking for a password. */
function aptCommand() {
  if (!existsSync("/usr/bin/apt-get")) return undefined;
  if (process.getuid?.() === 0) return ["apt-get"];
  const withoutPassword = spawnSync("sudo", ["-n", "true"], { stdio: "ignore" }).status === 0;
  return withoutPassword ? ["sudo", "-n", "apt-get"] : undefined;
}

/**
 * Installs a package through Debian's package manager, where that is allowed.
 * @param {string} name
 * @returns {boolean} whether it was installed
 */
export function installPackage(name) {
  const [command, ...first] = aptCommand() ?? [];
  if (!command) return false;
  console.error(`Installing ${name} (apt-get) …`);
  const quiet = { DEBIAN_FRONTEND: "noninteractive" };
  const install = [...first, "install", "-y", "--no-install-recommends", name];
  return (
    run(command, install, quiet) ||
    (run(command, [...first, "update"], quiet) && run(command, install, quiet))
  );
}

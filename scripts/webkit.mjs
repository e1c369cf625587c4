import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { findProgram } from "./debian.mjs";

export const HOW_TO_GET_WEBKIT = "install it (on Debian: sudo apt-get install webkit2gtk-driver xvfb)";

/** Where Debian puts the small browser that the driver starts. */
function miniBrowser() {
  for (const root of [
    "/usr/lib",
    ...["x86_64", "aarch64"].map((machine) => `/usr/lib/${machine}-linux-gnu`),
  ]) {
    const folders = existsSync(root)
      ? readdirSync(root).filter((name) => name.startsWith("webkit2gtk-"))
      : [];
    const found = folders.map((name) => join(root, name, "MiniBrowser")).find((path) => existsSync(path));
    if (found) return found;
  }
  return undefined;
}

/**
 * WebKitGTK with its driver, and a screen that nobody sees.
 * @returns {{ driver: string, browser: string, screen: string } | undefined}
 */
export function findWebKit() {
  const driver = findProgram(undefined, ["WebKitWebDriver"]);
  const screen = findProgram(undefined, ["Xvfb"]);
  const browser = miniBrowser();
  return driver && screen && browser ? { driver, browser, screen } : undefined;
}

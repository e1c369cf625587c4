import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

/** Top folder of the checkout. */
export const ROOT = fileURLToPath(new URL("..", import.meta.url));

/**
 * Runs a command in the checkout with its output on this screen.
 * @param {string} command
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} [env] added to this process's own
 * @returns {boolean} whether it ended with 0
 */
export function run(command, args, env = {}) {
  const { status, error } = spawnSync(command, args, {
    cwd: ROOT,
    stdio: "inherit",
    env: { ...process.env, ...env },
    shell: process.platform === "win32",
  });
  if (error) console.error(`${command} did not start: ${error.message}`);
  return status === 0;
}

/**
 * Runs a tool that was installed with the project.
 * @param {string} name
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} [env]
 */
export function runTool(name, args, env = {}) {
  return run(`${ROOT}/node_modules/.bin/${name}`, args, env);
}

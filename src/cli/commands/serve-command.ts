import { randomBytes } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Command, InvalidArgumentError } from "commander";
import { badInput } from "../bad-input.ts";
import type { Io } from "../io.ts";
import { doorOf, FOLDER_OPTION } from "./store-option.ts";

interface ServeCommandOptions {
  port: number;
  host: string;
  folder?: string;
  address?: string;
  certificate?: string;
  key?: string;
  proxy?: string;
  workers: number;
}

/** `shadewright serve`: the planner and a workroom, until it is stopped. */
export function addServe(program: Command, io: Io): void {
  program
    .command("serve")
    .description("Serve the planner and a workroom: several people on one set of jobs")
    .option("--port <number>", "port to listen at", portOf, 4173)
    .option(
      "--host <address>",
      "address to listen at; others than this machine’s own want TLS or a proxy",
      "127.0.0.1",
    )
    .option(...FOLDER_OPTION)
    .option("--address <url>", "as browsers write it, https://shades.example")
    .option("--certificate <file>", "certificate for TLS, PEM")
    .option("--key <file>", "its key, PEM")
    .option("--proxy <ip>", "the proxy that speaks TLS: others do not get in")
    .option(
      "--workers <number>",
      "workbooks and cutting plans made at once; 0 leaves them to other processes",
      workersOf,
      1,
    )
    .action((options: ServeCommandOptions) => serveUntilStopped(options, io));
}

function portOf(text: string): number {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65_535)
    throw new InvalidArgumentError("It takes a whole number from 0 to 65535.");
  return port;
}

function workersOf(text: string): number {
  if (!/^\d{1,2}$/.test(text)) throw new InvalidArgumentError("It takes a whole number from 0 to 99.");
  return Number(text);
}

async function serveUntilStopped(options: ServeCommandOptions, io: Io): Promise<void> {
  const { port, host, folder, address, certificate, key, proxy, workers } = options;
  const planner = fileURLToPath(new URL("../../web", import.meta.url));
  if (!existsSync(planner))
    throw badInput("(planner)", "nothing", "the built planner: in the checkout, npm run build");
  if ((certificate === undefined) !== (key === undefined)) {
    throw badInput(
      certificate === undefined ? "--certificate" : "--key",
      "nothing",
      "a file: the two go together",
    );
  }
  const { bossQueue, serve } = await import("../../server/index.ts");
  const door = await doorOf(folder);
  const program = fileURLToPath(new URL("../../../bin/shadewright.mjs", import.meta.url));
  const queue = bossQueue(door, { workers, command: [process.execPath, program] });
  const isOpen = address !== undefined;
  const setUpCode = isOpen
    ? (process.env.SHADEWRIGHT_CODE ?? randomBytes(12).toString("base64url"))
    : undefined;
  const serving = await serve({
    planner,
    port,
    host,
    door,
    queue,
    ...(address === undefined ? {} : { origin: address }),
    ...(certificate === undefined || key === undefined
      ? {}
      : { tls: { certificate: read("--certificate", certificate), key: read("--key", key) } }),
    ...(proxy === undefined ? {} : { proxy }),
    ...(setUpCode === undefined ? {} : { setUpCode }),
  }).catch((error) => {
    throw badInput("serve", `${host}, port ${port}`, error instanceof Error ? error.message : String(error));
  });
  io.err(`Shadewright is ready: ${serving.url}\n`);
  if (setUpCode !== undefined && !(await door.isBegun().catch(() => true))) {
    io.err(`The first owner types this code: ${setUpCode}\n`);
  }
  if ((process.env.DATABASE_URL ?? "") !== "") {
    // Papers that wait from before are taken up; the embedded database is opened by who uses it.
    if (workers > 0) await queue.start();
  } else {
    io.err(
      "A workroom is kept in a folder here: it outlives this program, but what was written last not a power cut.\n",
    );
  }
  await new Promise<void>((done) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => done());
  });
  await serving.close();
}

function read(option: string, path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    throw badInput(option, path, "a file that can be read");
  }
}

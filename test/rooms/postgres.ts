import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, readlinkSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  export interface ProvidedContext {
    /** Of a PostgreSQL that is there for these tests alone; empty where none is installed. */
    postgresUrl: string;
  }
}

/** Where Debian puts the programs of a server, the newest release first. */
function programs(): string | undefined {
  const root = "/usr/lib/postgresql";
  if (!existsSync(root)) return undefined;
  const releases = readdirSync(root).sort((a, b) => Number(b) - Number(a));
  return releases.map((release) => join(root, release, "bin")).find((bin) => existsSync(join(bin, "initdb")));
}

/** PostgreSQL refuses to run as root: then as the user that its package made, or as nobody. */
function ownUser(): { uid: number; gid: number } | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const number = (flag: string, name: string) =>
    Number(execFileSync("id", [flag, name], { encoding: "utf8" }));
  for (const name of ["postgres", "nobody"]) {
    try {
      return { uid: number("-u", name), gid: number("-g", name) };
    } catch {}
  }
  return undefined;
}

export async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const address = server.address();
  await new Promise((done) => server.close(done));
  return typeof address === "object" && address ? address.port : 0;
}

export interface OwnPostgres {
  url: string;
  /** Kills the server, for who wants to see what is left; it is gone then. */
  kill(): Promise<void>;
  stop(): Promise<void>;
  /** Starts it again on the same folder where it was killed; one that runs goes on. */
  restart(): Promise<void>;
}

/**
 * Starts a PostgreSQL of our own in a temporary folder; undefined where none is installed.
 * @param prepare what is done to the folder before anything is in it; gives back how to undo it
 */
export async function ownPostgres(
  prepare: (folder: string) => () => void = () => () => {},
): Promise<OwnPostgres | undefined> {
  const bin = programs();
  if (bin === undefined) return undefined;
  const user = ownUser();
  const folder = mkdtempSync(join(tmpdir(), "shadewright-postgres-"));
  const undo = prepare(folder);
  if (user) chownSync(folder, user.uid, user.gid);
  const as = { ...user, cwd: folder, env: { PATH: process.env.PATH, LC_ALL: "C" } };
  const data = join(folder, "data");
  execFileSync(
    join(bin, "initdb"),
    ["-D", data, "-U", "owner", "-A", "trust", "-E", "UTF8", "--no-sync"],
    as,
  );
  const port = await freePort();
  const url = `postgres://owner@127.0.0.1:${port}/postgres`;
  let server: ChildProcess;
  const start = async () => {
    const options = ["-D", data, "-k", folder, "-h", "127.0.0.1", "-p", String(port)];
    server = spawn(join(bin, "postgres"), options, { ...as, stdio: "ignore" });
    const started = server;
    await Promise.race([
      isUp(url),
      new Promise((_done, fail) =>
        started.once("exit", (code) => fail(new Error(`PostgreSQL ended with ${code}`))),
      ),
    ]);
  };
  await start();
  const ending = async (signal: NodeJS.Signals) => {
    const ended = new Promise((done) => server.once("exit", done));
    server.kill(signal);
    await ended;
  };
  return {
    url,
    kill: () => ending("SIGKILL"),
    restart: async () => {
      if (server.exitCode === null && server.signalCode === null && isAlive(server.pid))
        return await isUp(url);
      // Those that served connections end by themselves once they notice; it does not start before.
      for (let tries = 0; ; tries++) {
        try {
          return await start();
        } catch (error) {
          if (tries > 100) throw error;
          await new Promise((done) => setTimeout(done, 100));
        }
      }
    },
    stop: async () => {
      if (server.exitCode === null && server.signalCode === null) await ending("SIGINT");
      undo();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function isAlive(pid = 0): boolean {
  try {
    // Where it was killed and is not yet known to have ended, it is a zombie: its files are gone from /proc.
    return process.kill(pid, 0) && readlinkSync(`/proc/${pid}/exe`) !== "";
  } catch {
    return false;
  }
}

async function isUp(url: string): Promise<void> {
  const { default: pg } = await import("pg");
  for (let tries = 0; ; tries++) {
    const client = new pg.Client({ connectionString: url });
    client.on("error", () => {});
    try {
      await client.connect();
      await client.query("select 1");
      return;
    } catch (error) {
      if (tries > 600) throw error;
      await new Promise((done) => setTimeout(done, 100));
    } finally {
      await client.end().catch(() => {});
    }
  }
}

/** For the whole project of tests. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const own = await ownPostgres();
  project.provide("postgresUrl", own?.url ?? "");
  return async () => own?.stop();
}

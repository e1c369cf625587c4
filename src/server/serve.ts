import { createServer, type Server } from "node:http";
import { createServer as createTlsServer } from "node:https";
import { isIP } from "node:net";
import { getRequestListener } from "@hono/node-server";
import { getConnInfo } from "@hono/node-server/conninfo";
import type { Context } from "hono";
import { plannerApp } from "./http/planner-app.ts";
import { roomApp } from "./http/room-app.ts";
import { makeRoom, type WorkroomOptions } from "./room.ts";
import type { OwnedDoor } from "./store/doors.ts";
import { keepUp } from "./upkeep/upkeep.ts";

export interface ServeOptions extends WorkroomOptions {
  /** Folder of the built planner. */
  planner: string;
  /** 0 takes any free one; a port that is taken gives way to the next, so many times. */
  port: number;
  tries?: number;
  host?: string;
  /** The workroom's store; without it the planner is served alone. */
  door?: OwnedDoor;
  /** As browsers write the address, where it is not this machine's own: `https://shades.example`. */
  origin?: string;
  tls?: { certificate: string; key: string };
  /** Address of the proxy that everything comes through. */
  proxy?: string;
}

export interface Serving {
  url: string;
  port: number;
  close(): Promise<void>;
}

/** How long a server that stops waits for what it is doing. */
const LAST_REQUESTS_MS = 3000;
const LOOPBACK = /^(?:localhost|127\.\d+\.\d+\.\d+|::1)$/;

/**
 * Serves the planner, and a workroom beside it.
 * @throws where it would be open to others without TLS or a proxy that is named
 */
export async function serve(options: ServeOptions): Promise<Serving> {
  const { planner, port, tries = 1, host = "127.0.0.1", door, origin, tls, proxy, ...more } = options;
  checkOpenness({ host, origin, tls, proxy });
  const isSecure = origin?.startsWith("https:") === true;
  const isProxied = origin !== undefined && tls === undefined;
  const room = door && makeRoom(door, more);
  const app = plannerApp({
    planner,
    isSecure,
    ...(room && {
      room: roomApp(room, {
        ...(origin === undefined ? {} : { named: origin }),
        addressOf: (c) => addressOf(c, isProxied),
      }),
    }),
  });
  const listener = getRequestListener(app.fetch);
  const server = tls
    ? createTlsServer({ cert: tls.certificate, key: tls.key, minVersion: "TLSv1.2" }, listener)
    : createServer(listener);
  if (proxy !== undefined) {
    server.on("connection", (socket) => {
      if (plainAddress(socket.remoteAddress) !== proxy) socket.destroy();
    });
  }
  const bound = await listen(server, port, tries, host);
  const stopUpkeep = door ? keepUp(door, room?.queue) : () => {};
  return {
    port: bound,
    url: origin === undefined ? `http://localhost:${bound}/` : `${origin}/`,
    close: async () => {
      stopUpkeep();
      room?.news.close();
      await new Promise<void>((done) => {
        server.close(() => done());
        server.closeIdleConnections();
        setTimeout(() => server.closeAllConnections(), door ? LAST_REQUESTS_MS : 0).unref();
      });
      await room?.queue?.close();
      await door?.close();
    },
  };
}

/** What stands in the way of others reading along, or pretending to be someone. */
function checkOpenness({
  host,
  origin,
  tls,
  proxy,
}: Pick<ServeOptions, "host" | "origin" | "tls" | "proxy">): void {
  if (origin !== undefined && !/^https:\/\/[^/]+$/.test(origin)) {
    throw new Error(
      `The address is ${JSON.stringify(origin)}; it wants https:// and a name, as https://shades.example.`,
    );
  }
  if (proxy !== undefined && isIP(proxy) === 0) {
    throw new Error(`The proxy is ${JSON.stringify(proxy)}; it wants its IP address, as 10.0.0.2.`);
  }
  if (tls !== undefined && origin === undefined) {
    throw new Error("A certificate wants the address that it is for: --address https://shades.example.");
  }
  if (LOOPBACK.test(host ?? "")) return;
  if (origin === undefined || (tls === undefined && proxy === undefined)) {
    throw new Error(
      `Others could read along at ${host}. Give --address with --certificate and --key, or with --proxy, the IP address ` +
        "of the proxy that speaks TLS; or leave out --host, and only this machine gets in.",
    );
  }
}

/** Who asks. A proxy adds the address that it saw as the last one; what stands before it anyone can write. */
function addressOf(c: Context, isProxied: boolean): string {
  const seen = isProxied ? c.req.header("x-forwarded-for")?.split(",").at(-1)?.trim() : undefined;
  if (seen !== undefined) return seen.slice(0, 60);
  try {
    return plainAddress(getConnInfo(c).remote.address);
  } catch {
    return "unknown";
  }
}

function plainAddress(address = "unknown"): string {
  return address.replace(/^::ffff:/, "");
}

async function listen(server: Server, first: number, tries: number, host: string): Promise<number> {
  for (let left = tries, port = first; ; left--, port++) {
    try {
      await new Promise<void>((done, fail) => {
        server.once("error", fail);
        server.listen(port, host, () => {
          server.off("error", fail);
          done();
        });
      });
      const address = server.address();
      return typeof address === "object" && address ? address.port : port;
    } catch (error) {
      const isTaken = (error as NodeJS.ErrnoException).code === "EADDRINUSE";
      if (!isTaken || left <= 1) throw error;
    }
  }
}

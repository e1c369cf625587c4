import { type Context, Hono } from "hono";
import { deleteCookie, getCookie, setCookie } from "hono/cookie";
import { ROUTES, type Route, type RouteName } from "../../workroom/protocol/index.ts";
import { signedInBy } from "../people/sessions.ts";
import { Refused } from "../refused.ts";
import type { Workroom } from "../room.ts";
import { anyoneHandlers, personHandlers } from "../routes/index.ts";
import { streamNews } from "../routes/news-stream.ts";
import { readToken } from "../secrets.ts";
import { inWorkroom } from "../store/store.ts";
import { asPerson } from "./as-person.ts";
import type { Answer, AskedByAnyone } from "./asked.ts";
import { checkProtocol } from "./check-protocol.ts";
import { checkOrigin, type Origins } from "./origins.ts";
import { RateLimit } from "./rate-limit.ts";
import { readBody } from "./read-body.ts";

export interface RoomAppOptions extends Origins {
  /** Address of who asks, as the connection or the named proxy tells it. */
  addressOf(c: Context): string;
}

const DAYS_90_S = 90 * 24 * 3600;

/** The workroom's addresses. What each may be used for stands in `ROUTES`; nothing is reached past it. */
export function roomApp(room: Workroom, options: RoomAppOptions): Hono {
  const app = new Hono();
  const rates = new RateLimit();
  app.use("/api/*", async (c, next) => {
    await next();
    c.header("Cache-Control", "no-store");
  });
  for (const [name, route] of Object.entries(ROUTES) as [RouteName, Route][]) {
    app.on(route.method, route.path, async (c) => {
      const asked = await askedOf(c, room, options, rates);
      try {
        if (name === "newsStream") return await streamNews(c, asked);
        return answerWith(c, await answerOf(name, route, asked), asked.origin);
      } catch (error) {
        const isEnded = error instanceof Refused && error.status === 401;
        if (isEnded && asked.cookie !== undefined) rates.forget(asked.cookie);
        throw error;
      }
    });
  }
  app.all("/api/*", () => {
    throw new Refused(404, "There is nothing at this address.");
  });
  app.onError((error, c) => {
    if (error instanceof Refused) {
      return c.json({ refused: error.message, issues: error.issues }, error.status);
    }
    console.error(`A request failed: ${c.req.method} ${c.req.path}: ${error.message}`);
    if (isDiskFull(error)) return c.json({ refused: DISK_FULL, issues: [] }, 507);
    return c.json({ refused: "The server is at fault. Try again: nothing is done twice.", issues: [] }, 500);
  });
  return app;
}

const DISK_FULL = "The disk of the workroom’s server is full: nothing of this was kept there.";

/** As PostgreSQL tells it (class 53, its appendix A “Error Codes”), or the system. */
function isDiskFull(error: Error): boolean {
  return ["53100", "ENOSPC"].includes(String((error as { code?: unknown }).code));
}

async function askedOf(
  c: Context,
  room: Workroom,
  { named, addressOf }: RoomAppOptions,
  rates: RateLimit,
): Promise<AskedByAnyone> {
  const origin = checkOrigin({ ...(named === undefined ? {} : { named }) }, c.req.raw);
  checkProtocol(c.req.raw);
  const cookie = getCookie(c, cookieName(origin));
  const address = addressOf(c);
  await rates.count(address, cookie, (one) => isSession(room, one), performance.now());
  return {
    room,
    params: c.req.param(),
    query: (name) => c.req.query(name),
    body: await readBody(c.req.raw),
    origin,
    address,
    device: c.req.header("user-agent") ?? "",
    cookie,
  };
}

/** Whether a cookie belongs to somebody who is signed in. */
async function isSession({ door }: Workroom, cookie: string): Promise<boolean> {
  const workroomId = readToken(cookie)?.workroomId;
  if (workroomId === undefined || !(await door.isBegun())) return false;
  const signedIn = await inWorkroom(await door.open(), workroomId, (trx) =>
    signedInBy(trx, workroomId, cookie),
  );
  return signedIn !== undefined;
}

async function answerOf(name: RouteName, { who }: Route, asked: AskedByAnyone): Promise<Answer> {
  const open = anyoneHandlers[name];
  if (who === "anyone" && open) return await open(asked);
  const handler = personHandlers[name];
  if (!handler) throw new Refused(404, "There is nothing at this address.");
  return await asPerson(asked, who, handler);
}

/** The prefix binds a cookie to this very name over TLS; plain HTTP, as on loopback, does not take it. */
function cookieName(origin: string): string {
  return origin.startsWith("https:") ? "__Host-workroom" : "workroom";
}

function answerWith(c: Context, { status = 200, body, cookie, file }: Answer, origin: string): Response {
  const isSecure = origin.startsWith("https:");
  if (cookie === null) deleteCookie(c, cookieName(origin), { path: "/", secure: isSecure });
  else if (cookie !== undefined) {
    setCookie(c, cookieName(origin), cookie, {
      httpOnly: true,
      sameSite: "Strict",
      secure: isSecure,
      path: "/",
      maxAge: DAYS_90_S,
    });
  }
  if (file) {
    c.header("Content-Type", file.type);
    c.header("Content-Disposition", `attachment; filename="${file.name}"`);
    return c.body(typeof file.bytes === "string" ? file.bytes : new Uint8Array(file.bytes), status);
  }
  return c.json(body ?? {}, status);
}

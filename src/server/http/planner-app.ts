import { serveStatic } from "@hono/node-server/serve-static";
import { Hono } from "hono";
import { etag } from "hono/etag";
import { secureHeaders } from "hono/secure-headers";

/**
 * What the pages may load: their own files, and what they made themselves (`blob:`, for downloads).
 * Inline styles are allowed since the component library writes some; inline scripts are not.
 */
const POLICY = {
  defaultSrc: ["'self'"],
  scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
  styleSrc: ["'self'", "'unsafe-inline'"],
  imgSrc: ["'self'", "data:", "blob:"],
  fontSrc: ["'self'", "data:"],
  connectSrc: ["'self'", "blob:", "data:"],
  workerSrc: ["'self'", "blob:"],
  frameSrc: ["'self'", "blob:"],
  manifestSrc: ["'self'"],
  objectSrc: ["'none'"],
  baseUri: ["'none'"],
  formAction: ["'none'"],
  frameAncestors: ["'none'"],
};

/** Served from memory of the browser without asking again: their names change with their content. */
const IMMUTABLE = /^\/assets\/.+-[\w-]{8,}\.\w+$/;

export interface PlannerAppOptions {
  /** Folder of the built planner. */
  planner: string;
  /** Answers below `/api`; without it the planner is alone. */
  room?: Hono;
  /** Whether browsers are to come over TLS from now on. */
  isSecure?: boolean;
}

/**
 * The planner's files with their headers. Unknown addresses without a file ending get the planner's
 * own page, which finds its way from the address.
 */
export function plannerApp({ planner, room, isSecure = false }: PlannerAppOptions): Hono {
  const app = new Hono();
  app.use(
    secureHeaders({
      contentSecurityPolicy: POLICY,
      crossOriginEmbedderPolicy: "require-corp",
      referrerPolicy: "no-referrer",
      // A server on the maker's own machine speaks plain HTTP.
      strictTransportSecurity: isSecure ? "max-age=31536000" : false,
      permissionsPolicy: {
        camera: [],
        microphone: [],
        geolocation: [],
        payment: [],
        usb: [],
        screenWakeLock: ["self"],
      },
    }),
  );
  if (room) app.route("/", room);
  // The planner asks once whether a workroom is behind this address: there is none.
  app.get("/api/me", (c) => c.body(null, 204));
  app.all("/api/*", (c) => c.json({ refused: "There is nothing at this address.", issues: [] }, 404));
  app.use(async (c, next) => {
    await next();
    const immutable = c.res.ok && IMMUTABLE.test(c.req.path);
    c.header("Cache-Control", immutable ? "public, max-age=31536000, immutable" : "no-cache");
  });
  app.use(etag());
  app.use(serveStatic({ root: planner, precompressed: true }));
  app.use((c, next) => {
    const isPage = c.req.method === "GET" && !/\.\w+$/.test(c.req.path);
    return isPage ? serveStatic({ root: planner, path: "index.html", precompressed: true })(c, next) : next();
  });
  app.notFound((c) => c.text("There is nothing at this address.", 404));
  app.onError((error, c) => {
    console.error(`A request failed: ${error.message}`);
    return c.text("The request failed.", 500);
  });
  return app;
}

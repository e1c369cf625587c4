import { createServer } from "node:http";
import { getRequestListener } from "@hono/node-server";
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

/**
 * The planner's files with their headers. Unknown addresses without a file ending get the planner's
 * own page, which finds its way from the address.
 * @param {string} folder
 */
export function webApp(folder) {
  const app = new Hono();
  app.use(
    secureHeaders({
      contentSecurityPolicy: POLICY,
      crossOriginEmbedderPolicy: "require-corp",
      referrerPolicy: "no-referrer",
      // A server on the maker's own machine speaks plain HTTP.
      strictTransportSecurity: false,
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
  app.use(async (c, next) => {
    await next();
    const immutable = c.res.ok && IMMUTABLE.test(c.req.path);
    c.header("Cache-Control", immutable ? "public, max-age=31536000, immutable" : "no-cache");
  });
  app.use(etag());
  app.use(serveStatic({ root: folder, precompressed: true }));
  app.use((c, next) => {
    const isPage = c.req.method === "GET" && !/\.\w+$/.test(c.req.path);
    return isPage ? serveStatic({ root: folder, path: "index.html", precompressed: true })(c, next) : next();
  });
  app.notFound((c) => c.text("There is nothing at this address.", 404));
  app.onError((error, c) => {
    console.error(`A request failed: ${error.message}`);
    return c.text("The request failed.", 500);
  });
  return app;
}

/**
 * @typedef {{ url: string, port: number, close: () => Promise<void> }} Serving
 */

/**
 * Serves the planner on this machine alone.
 * @param {string} folder
 * @param {{ port: number, tries?: number, host?: string }} at port 0 takes any free one; a port that is
 *   taken gives way to the next, so many times
 * @returns {Promise<Serving>}
 */
export async function serveWeb(folder, { port, tries = 1, host = "127.0.0.1" }) {
  const server = createServer(getRequestListener(webApp(folder).fetch));
  const bound = await listen(server, port, tries, host);
  return {
    port: bound,
    url: `http://localhost:${bound}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

/**
 * @param {import("node:http").Server} server
 * @param {number} port
 * @param {number} tries
 * @param {string} host
 * @returns {Promise<number>} the port that was free
 */
async function listen(server, port, tries, host) {
  for (let left = tries; ; left--, port++) {
    try {
      await /** @type {Promise<void>} */ (
        new Promise((resolve, reject) => {
          server.once("error", reject);
          server.listen(port, host, () => {
            server.off("error", reject);
            resolve();
          });
        })
      );
      const address = server.address();
      return typeof address === "object" && address ? address.port : port;
    } catch (error) {
      const taken = /** @type {NodeJS.ErrnoException} */ (error).code === "EADDRINUSE";
      if (!taken || left <= 1) throw error;
    }
  }
}

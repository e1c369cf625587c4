import { Refused } from "../refused.ts";

/** Names by which a machine calls itself. */
const LOOPBACK = /^(?:localhost|127\.0\.0\.1|\[::1\])(?::\d+)?$/i;

/** Where the pages of this server are read from. */
export interface Origins {
  /** As browsers write it, `https://shades.example`, where a proxy or TLS stands in front; else loopback alone. */
  named?: string;
}

/**
 * Refuses what did not come from a page of ours: names that others had pointed at this machine, and requests that a
 * page elsewhere made a browser send.
 * @throws {Refused}
 */
export function checkOrigin({ named }: Origins, request: Request): string {
  const host = request.headers.get("host") ?? "";
  const own = ownOrigin(named, host);
  if (own === undefined) throw new Refused(421, "This server does not answer to that name.");
  if (request.method === "GET" || request.method === "HEAD") return own;
  const site = request.headers.get("sec-fetch-site");
  if (request.headers.get("origin") !== own || (site !== null && site !== "same-origin")) {
    throw new Refused(403, "The request did not come from a page of this server.");
  }
  return own;
}

function ownOrigin(named: string | undefined, host: string): string | undefined {
  if (named !== undefined && new URL(named).host === host) return named;
  return LOOPBACK.test(host) ? `http://${host.toLowerCase()}` : undefined;
}

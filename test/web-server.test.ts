import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { get } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Serving, serve } from "../src/server/index.ts";

const folder = mkdtempSync(join(tmpdir(), "shadewright-web-"));
const site = join(folder, "site");
const SCRIPT = "export const a = 1;".repeat(100);
let serving: Serving;

beforeAll(async () => {
  mkdirSync(join(site, "assets"), { recursive: true });
  writeFileSync(join(folder, "secret.txt"), "secret");
  writeFileSync(join(site, "index.html"), "<!doctype html><title>The planner</title>");
  writeFileSync(join(site, "service-worker.js"), SCRIPT);
  writeFileSync(join(site, "assets/app-B4n0xYz1.js"), SCRIPT);
  writeFileSync(join(site, "assets/app-B4n0xYz1.js.gz"), gzipSync(SCRIPT));
  writeFileSync(join(site, "assets/part-B4n0xYz1.wasm"), "");
  writeFileSync(join(site, "manifest.webmanifest"), "{}");
  serving = await serve({ planner: site, port: 0 });
});

afterAll(async () => {
  await serving.close();
  rmSync(folder, { recursive: true });
});

const at = (path: string, init?: RequestInit) => fetch(new URL(path, serving.url), init);

describe("the planner's server", () => {
  test.each([
    ["/", "text/html"],
    ["/service-worker.js", "text/javascript"],
    ["/assets/app-B4n0xYz1.js", "text/javascript"],
    ["/assets/part-B4n0xYz1.wasm", "application/wasm"],
    ["/manifest.webmanifest", "application/manifest+json"],
  ])("%s is %s", async (path, type) => {
    const response = await at(path);
    expect(response.status).toBe(200);
    expect(response.headers.get("content-type")).toMatch(new RegExp(`^${type.replace("+", "\\+")}`));
    expect(response.headers.get("x-content-type-options")).toBe("nosniff");
  });

  test.each([
    ["/", "no-cache"],
    ["/service-worker.js", "no-cache"],
    ["/nothing.js", "no-cache"],
    ["/assets/gone-B4n0xYz1.js", "no-cache"],
    ["/assets/app-B4n0xYz1.js", "public, max-age=31536000, immutable"],
  ])("%s is cached as %s", async (path, wanted) => {
    expect((await at(path)).headers.get("cache-control")).toBe(wanted);
  });

  test("an unchanged page is not sent again", async () => {
    const tag = (await at("/")).headers.get("etag");
    expect(tag).not.toBeNull();
    expect((await at("/", { headers: { "If-None-Match": String(tag) } })).status).toBe(304);
  });

  test("a compressed file is sent as it lies there", async () => {
    const response = await at("/assets/app-B4n0xYz1.js", { headers: { "Accept-Encoding": "gzip" } });
    expect(response.headers.get("content-encoding")).toBe("gzip");
    expect(Number(response.headers.get("content-length"))).toBe(gzipSync(SCRIPT).length);
    expect(await response.text()).toBe(SCRIPT);
  });

  test("pages may load their own files alone, and no inline script", async () => {
    const policy = (await at("/")).headers.get("content-security-policy") ?? "";
    expect(policy).toContain("default-src 'self'");
    expect(policy).toMatch(/script-src 'self'(?! 'unsafe-inline')/);
    expect(policy).toContain("frame-ancestors 'none'");
  });

  test("an address inside the planner gets its page; a missing file does not", async () => {
    expect(await (await at("/job/a/shade/b")).text()).toContain("The planner");
    expect((await at("/missing.png")).status).toBe(404);
  });

  test.each(["/../secret.txt", "/assets/../../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt"])(
    "%s does not lead out of its folder",
    async (path) => {
      // `fetch` would tidy the address up first.
      const body = await new Promise<string>((done, fail) => {
        get({ host: "127.0.0.1", port: serving.port, path }, (response) => {
          let text = "";
          response.on("data", (chunk) => {
            text += chunk;
          });
          response.on("end", () => done(text));
        }).on("error", fail);
      });
      expect(body).not.toContain("secret");
    },
  );

  test("a port that is taken gives way to the next free one", async () => {
    const second = await serve({ planner: site, port: serving.port, tries: 20 });
    expect(second.port).toBeGreaterThan(serving.port);
    await second.close();
    await expect(serve({ planner: site, port: serving.port })).rejects.toThrow("EADDRINUSE");
  });
});

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { serve } from "./serve.ts";
import { embeddedDoor } from "./store/doors.ts";

const planner = mkdtempSync(join(tmpdir(), "shadewright-serve-"));
writeFileSync(join(planner, "index.html"), "<!doctype html><title>The planner</title>");
afterAll(() => rmSync(planner, { recursive: true }));

describe("where the server may be reached from", () => {
  test.each([
    ["everywhere", { host: "0.0.0.0" }, /read along/],
    ["a network by its address", { host: "192.0.2.1" }, /read along/],
    [
      "everywhere under a name, without TLS",
      { host: "0.0.0.0", origin: "https://shades.example" },
      /read along/,
    ],
    ["a name without TLS", { origin: "http://shades.example" }, /https:/],
    ["a name with a path", { origin: "https://shades.example/a" }, /https:/],
    ["a proxy by name", { origin: "https://shades.example", proxy: "proxy" }, /IP address/],
    ["a certificate without a name", { tls: { certificate: "", key: "" } }, /address/],
  ])("not %s", async (_where, options, why) => {
    await expect(serve({ planner, port: 0, ...options })).rejects.toThrow(why);
  });

  test("others than the proxy that was named get no answer", async () => {
    const behind = { origin: "https://shades.example", host: "0.0.0.0", proxy: "192.0.2.1" };
    const serving = await serve({ planner, port: 0, ...behind });
    await expect(fetch(`http://127.0.0.1:${serving.port}/`)).rejects.toThrow();
    await serving.close();
  });

  test("behind a proxy browsers are told to come over TLS from now on", async () => {
    const serving = await serve({ planner, port: 0, origin: "https://shades.example" });
    const { headers } = await fetch(`http://127.0.0.1:${serving.port}/`);
    expect(headers.get("strict-transport-security")).toMatch(/max-age=\d{7}/);
    await serving.close();
  });
});

describe("the planner with a workroom that nobody has made", () => {
  const folder = join(planner, "room");

  test("asks nothing of the machine: no database, no folder, no account", async () => {
    const door = embeddedDoor(folder);
    const serving = await serve({ planner, port: 0, door });
    const at = (path: string) => fetch(new URL(path, serving.url));
    expect(await (await at("/")).text()).toContain("The planner");
    expect(await (await at("/api/me")).json()).toEqual({ state: "new", needsCode: false });
    expect((await at("/api/jobs")).status).toBe(401);
    expect((await at("/api/nothing")).status).toBe(404);
    expect(door.ifOpen()).toBeUndefined();
    await serving.close();
  });

  test("without one the planner is told so, and there is nothing else below /api", async () => {
    const serving = await serve({ planner, port: 0 });
    expect((await fetch(new URL("/api/me", serving.url))).status).toBe(204);
    expect((await fetch(new URL("/api/jobs", serving.url))).status).toBe(404);
    await serving.close();
  });
});

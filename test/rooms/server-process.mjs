import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

/** A server in a process of its own, which its test kills. Says its port, once it listens. */
const folder = process.argv[2] ?? "";
const { bossQueue, roomDoor, serve } = await import(
  pathToFileURL(join(import.meta.dirname, "../../dist/server/index.js")).href
);
const planner = join(folder, "planner");
mkdirSync(planner, { recursive: true });
writeFileSync(join(planner, "index.html"), "<!doctype html><title>Planner</title>");
const door = roomDoor(join(folder, "room"));
/** As JSON: what makes papers, and how soon one is given to another worker. */
const papers = process.argv[3];
const queue = papers === undefined ? undefined : bossQueue(door, JSON.parse(papers));
const { port } = await serve({
  ...{ planner, port: 0, door, setUpCode: "code-of-the-tests", passwordCost: 10 },
  ...(queue && { queue }),
});
await queue?.start();
console.log(port);

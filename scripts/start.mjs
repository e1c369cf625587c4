import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ensureInstalled } from "./install.mjs";
import { checkNode } from "./node-version.mjs";
import { ROOT } from "./run.mjs";

checkNode();
ensureInstalled();
const { ensureWeb, WEB } = await import("./build-web.mjs");
ensureWeb();
const { ensureLib, SERVER_ENTRY } = await import("./build-lib.mjs");
ensureLib();

const wanted = process.env.PORT ?? "4173";
const port = Number(wanted);
if (!Number.isInteger(port) || port < 0 || port > 65_535) {
  console.error(`PORT is ${JSON.stringify(wanted)}; it wants a whole number from 0 to 65535.`);
  process.exit(2);
}
try {
  const { bossQueue, roomDoor, serve } = await import(pathToFileURL(SERVER_ENTRY).href);
  const host = process.env.HOST ?? "127.0.0.1";
  const door = roomDoor();
  const command = [process.execPath, join(ROOT, "bin/shadewright.mjs")];
  const queue = bossQueue(door, { workers: 1, command });
  const serving = await serve({ planner: WEB, port, tries: 20, host, door, queue });
  console.log(`Shadewright is ready: ${serving.url}`);
  if ((process.env.DATABASE_URL ?? "") === "") {
    console.log(
      "A workroom that you make is kept on this machine; what was written last does not outlive a power cut.",
    );
  }
  console.log("Press Ctrl+C to stop.");
  for (const signal of ["SIGINT", "SIGTERM"])
    process.once(signal, () => serving.close().then(() => process.exit(0)));
} catch (error) {
  console.error(`The planner could not be served: ${error instanceof Error ? error.message : error}`);
  process.exit(1);
}

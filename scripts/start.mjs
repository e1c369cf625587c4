import { ensureInstalled } from "./install.mjs";
import { checkNode } from "./node-version.mjs";

checkNode();
ensureInstalled();
const { ensureWeb, WEB } = await import("./build-web.mjs");
ensureWeb();

const { serveWeb } = await import("./web-server.mjs");
const wanted = process.env.PORT ?? "4173";
const port = Number(wanted);
if (!Number.isInteger(port) || port < 0 || port > 65_535) {
  console.error(`PORT is ${JSON.stringify(wanted)}; it wants a whole number from 0 to 65535.`);
  process.exit(2);
}
try {
  const serving = await serveWeb(WEB, { port, tries: 20, host: process.env.HOST ?? "127.0.0.1" });
  console.log(`Shadewright is ready: ${serving.url}`);
  console.log("Press Ctrl+C to stop.");
  for (const signal of ["SIGINT", "SIGTERM"])
    process.once(signal, () => serving.close().then(() => process.exit(0)));
} catch (error) {
  console.error(`The planner could not be served: ${error instanceof Error ? error.message : error}`);
  process.exit(1);
}

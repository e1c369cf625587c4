import { runCase } from "./run-case.ts";

/** Runs one text after the other, so that one that hangs can be ended from outside. */
process.on("message", async (text: string) => {
  try {
    await runCase(text);
    process.send?.("");
  } catch (error) {
    process.send?.(error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
});
process.send?.("ready");

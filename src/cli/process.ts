import { once } from "node:events";
import { main } from "./main.ts";
import { inColours, paints } from "./painted.ts";
import { keepHeapSmall } from "./small-heap.ts";

/** Runs the command line of this process. */
export async function runProcess(): Promise<void> {
  keepHeapSmall();
  for (const stream of [process.stdout, process.stderr]) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      // The reader has gone (`shadewright schema | head`): nobody is left to tell.
      process.exit(error.code === "EPIPE" ? 0 : 1);
    });
  }
  const isPainted = paints(process.stderr.isTTY === true, process.env);
  process.exitCode = await main(process.argv.slice(2), {
    stdin: process.stdin,
    out: (text) => process.stdout.write(text),
    outPart,
    err: (text) => process.stderr.write(isPainted ? inColours(text) : text),
    columns: Math.max(40, process.stderr.columns || 100),
    ...(process.stderr.isTTY ? { progress: overwrite } : {}),
    onInterrupt: (stop) => {
      process.once("SIGINT", stop);
      return () => process.off("SIGINT", stop);
    },
  });
}

/** Waits while the reader is behind. */
async function outPart(bytes: Uint8Array): Promise<void> {
  if (!process.stdout.write(bytes)) await once(process.stdout, "drain");
}

function overwrite(text: string): void {
  process.stderr.write(`\r\u001b[K${text}`);
}

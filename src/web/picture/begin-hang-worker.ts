import { KeptWorker } from "../workers/kept-worker.ts";
import type { HangService } from "./hang-worker.ts";

/** A worker that brings the cloth of a shade to rest; begun when it is first asked, and to be ended by who asks. */
export function beginHangWorker(): KeptWorker<HangService> {
  return new KeptWorker<HangService>(
    () => new Worker(new URL("./hang-worker.ts", import.meta.url), { type: "module" }),
  );
}

import { useEffect, useState } from "react";
import { type CommonNet, type HangingFrame, type HeightNews, withFrame } from "../../drape/index.ts";
import { drapeInput } from "../../drawing/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { useRaise } from "../state/raise.ts";
import { HANGS_MS } from "../workers/hangs.ts";
import type { KeptWorker } from "../workers/kept-worker.ts";
import { beginHangWorker } from "./begin-hang-worker.ts";
import { drapeKey } from "./drape-key.ts";
import type { HangService } from "./hang-worker.ts";

/** What is known so far of a shade at all heights. */
export interface KnownHeights {
  net: CommonNet;
  frames: readonly HangingFrame[];
  state: "working" | "done" | "failed";
}

/** Edits come in bursts: heights are worked out when the maker pauses. */
const PAUSE_MS = 200;

/** The shade at all heights, worked out in a worker of its own; an edit ends it and begins anew. */
export function useHeights(plan: ShadePlan): { heights?: KnownHeights; failed: boolean } {
  const [known, setKnown] = useState<KnownHeights>();
  const [failed, setFailed] = useState(false);
  const key = drapeKey(plan);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key tells when the cloth hangs otherwise
  useEffect(() => {
    let worker: KeptWorker<HangService> | undefined;
    let own: KnownHeights | undefined;
    const show = (next: KnownHeights) => {
      own = next;
      // Until the first height of a changed shade is there the one before stays.
      if (next.frames.length > 0) setKnown(next);
    };
    const begin = () => {
      const kept = beginHangWorker();
      worker = kept;
      const tell = (news: HeightNews) => {
        if ("net" in news) own = { net: news.net, frames: [], state: "working" };
        else if (own) show({ ...own, frames: withFrame(own.frames, news.frame) });
      };
      const end = (state: "done" | "failed") => {
        if (worker !== kept) return;
        kept.end();
        setFailed(state === "failed");
        if (own) show({ ...own, state });
      };
      const input = drapeInput(plan);
      kept
        .ask((service, hearing) => service.workOut(input, useRaise.getState(), hearing(tell)), HANGS_MS)
        .then(
          () => end("done"),
          () => end("failed"),
        );
    };
    const timer = setTimeout(begin, known === undefined ? 0 : PAUSE_MS);
    return () => {
      clearTimeout(timer);
      worker?.end();
      worker = undefined;
    };
  }, [key]);
  return known === undefined ? { failed } : { heights: known, failed };
}

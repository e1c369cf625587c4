import { useEffect, useState } from "react";
import type { ShadeWork, WorkChange } from "../../workroom/protocol/index.ts";
import { newUuid } from "../persistence/new-id.ts";
import { TurnedDown } from "./ask-server.ts";
import { keepChange, keptWork, meetWork } from "./kept-work.ts";
import { useRoom } from "./room-state.ts";
import { useDeed } from "./use-deed.ts";

type Wanted = Pick<WorkChange, "jobId" | "windowId" | "state" | "due" | "holder">;

/** Work in hand as the server has it, read again whenever it was changed by anyone; without it, as it was last. */
export function useWork(): {
  shades: readonly ShadeWork[];
  trouble: string | undefined;
  change(wanted: Wanted): void;
} {
  const [shades, setShades] = useState<readonly ShadeWork[]>(keptWork);
  const workNews = useRoom((room) => room.workNews);
  const isOnline = useRoom((room) => room.isOnline);
  const { trouble, run } = useDeed();
  const meet = () =>
    run(async () => {
      try {
        setShades(await meetWork());
      } catch (error) {
        setShades(keptWork());
        // No answer is no fault: what waits is sent when there is one.
        if (error instanceof TurnedDown) throw error;
      }
    });
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again when there are news, or a connection again
  useEffect(() => void meet(), [workNews, isOnline]);
  const change = (wanted: Wanted) => {
    keepChange({ ...wanted, id: newUuid(), at: new Date().toISOString() });
    setShades(keptWork());
    void meet();
  };
  return { shades, trouble, change };
}

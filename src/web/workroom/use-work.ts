import { useEffect, useState } from "react";
import type { ShadeWork, WorkChange } from "../../workroom/protocol/index.ts";
import { askServer } from "./ask-server.ts";
import { useRoom } from "./room-state.ts";
import { useDeed } from "./use-deed.ts";

type Wanted = Pick<WorkChange, "jobId" | "windowId" | "state" | "due" | "holder">;

/** Work in hand as the server has it, read again whenever it was changed by anyone. */
export function useWork(): {
  shades: readonly ShadeWork[];
  trouble: string | undefined;
  change(wanted: Wanted): void;
} {
  const [shades, setShades] = useState<readonly ShadeWork[]>([]);
  const workNews = useRoom((room) => room.workNews);
  const { trouble, run } = useDeed();
  const read = async () => setShades((await askServer<{ shades: ShadeWork[] }>("work")).shades);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again when there are news
  useEffect(() => void run(read), [workNews]);
  const change = (wanted: Wanted) => {
    const one = { ...wanted, id: crypto.randomUUID(), at: new Date().toISOString() };
    void run(async () => {
      await askServer("changeWork", { body: { changes: [one] } });
      await read();
    });
  };
  return { shades, trouble, change };
}

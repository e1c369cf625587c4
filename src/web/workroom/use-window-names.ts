import { useEffect, useState } from "react";
import type { HeldJob } from "../../workroom/protocol/index.ts";
import { readStoredJob } from "../persistence/job-shelf.ts";
import { askServer } from "./ask-server.ts";

/** Names of windows by their ids, from jobs on this device, or else from the server. */
export function useWindowNames(shades: readonly { jobId: string }[]): ReadonlyMap<string, string> {
  const [names, setNames] = useState<ReadonlyMap<string, string>>(new Map());
  const jobIds = [...new Set(shades.map(({ jobId }) => jobId))].sort().join(" ");
  useEffect(() => {
    let isWanted = true;
    void Promise.all(jobIds.split(" ").filter(Boolean).map(windowsOf)).then((found) => {
      if (isWanted) setNames(new Map(found.flat()));
    });
    return () => {
      isWanted = false;
    };
  }, [jobIds]);
  return names;
}

async function windowsOf(jobId: string): Promise<[string, string][]> {
  try {
    const stored = await readStoredJob(jobId);
    const job = stored?.job ?? (await askServer<HeldJob>("job", { params: { job: jobId } })).job;
    return job.rooms.flatMap((room) => room.windows.map(({ id, name }): [string, string] => [id, name]));
  } catch {
    return [];
  }
}

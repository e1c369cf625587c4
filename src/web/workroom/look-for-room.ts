import type { Me } from "../../workroom/protocol/index.ts";
import { rememberedMe, setMe, useRoom } from "./room-state.ts";

let looking: Promise<Me | undefined> | undefined;

/** Asks once whether a workroom answers at this address, and who is signed in there. */
export function foundRoom(): Promise<Me | undefined> {
  looking ??= look();
  return looking;
}

/** Asks again, after signing in or out. */
export function lookAgain(): Promise<Me | undefined> {
  looking = look();
  return looking;
}

async function look(): Promise<Me | undefined> {
  const me = navigator.onLine ? await askMe() : "silence";
  if (me === undefined) return undefined;
  if (me !== "silence") setMe(me);
  // Without the server, jobs on this device go on as they did; what waits is sent once it answers.
  else useRoom.setState({ me: rememberedMe(), isOnline: false });
  if (useRoom.getState().me?.state === "signed-in") {
    const { beginWork } = await import("./at-work.ts");
    beginWork();
  }
  return useRoom.getState().me;
}

/** Undefined where this address has no workroom. */
async function askMe(): Promise<Me | "silence" | undefined> {
  try {
    const response = await fetch("api/me", { headers: { Accept: "application/json" } });
    if (response.status >= 500) return "silence";
    const isJson = response.headers.get("Content-Type")?.startsWith("application/json") ?? false;
    return response.status === 200 && isJson ? ((await response.json()) as Me) : undefined;
  } catch {
    return "silence";
  }
}

/** What the tabs of one browser tell each other. */
export type TabMessage =
  /** A job was written; tabs that only read it follow. */
  | { kind: "saved"; jobId: string; revision: number }
  /** Another tab asks for the job. */
  | { kind: "yield"; jobId: string }
  /** A job was taken off the shelf, into the bin. */
  | { kind: "taken"; jobId: string; binId: string }
  /** Jobs were added to the shelf or taken off it. */
  | { kind: "shelf" }
  /** The parts bench was changed. */
  | { kind: "bench" };

const CHANNEL = "shadewright-tabs";

let channel: BroadcastChannel | undefined;

function openChannel(): BroadcastChannel | undefined {
  if (!("BroadcastChannel" in globalThis)) return undefined;
  channel ??= new BroadcastChannel(CHANNEL);
  return channel;
}

export function tellTabs(message: TabMessage): void {
  openChannel()?.postMessage(message);
}

/** Hears the other tabs until the returned function is called. */
export function hearTabs(listen: (message: TabMessage) => void): () => void {
  const open = openChannel();
  const onMessage = (event: MessageEvent<TabMessage>) => listen(event.data);
  open?.addEventListener("message", onMessage);
  return () => open?.removeEventListener("message", onMessage);
}

import type { News, Person, ShelvedJob } from "../../workroom/protocol/index.ts";
import { PRESENCE_EVERY_S, SHOP_ID } from "../../workroom/protocol/index.ts";
import { usePlanner } from "../state/store.ts";
import { askServer, TurnedDown } from "./ask-server.ts";
import { meetWork } from "./kept-work.ts";
import { openTable } from "./open-table.ts";
import { useRoom } from "./room-state.ts";
import { sendWhatWaits } from "./send-what-waits.ts";
import { meetServer, settle } from "./shared-table.ts";

/** So long after a keystroke an edit is sent, ms. */
const PAUSE_MS = 250;
/** How often the server is asked where its stream of news does not come through, ms. */
const ASK_EVERY_MS = 4000;

/** What the server could not keep is sent again after so long, ms. */
const TRY_AGAIN_MS = 10_000;

let begun = false;

/** Begins to keep this device and the workroom together, for as long as the page is open. */
export function beginWork(): void {
  if (begun) return;
  begun = true;
  hearEdits();
  hearNews();
  tellWhereIAm();
  addEventListener("online", () => void catchUp());
  void catchUp();
}

/** All that a device that was away has to do. */
export async function catchUp(): Promise<void> {
  if (useRoom.getState().me?.state !== "signed-in") return;
  try {
    const { people } = await askServer<{ people: Person[] }>("people");
    useRoom.setState({ people });
    await readRoomShelf();
    await meetOpen();
    await sendWhatWaits();
    await meetWork();
  } catch {
    // It is tried again with the next news.
  }
}

/** Reads the workroom's shelf. */
export async function readRoomShelf(): Promise<void> {
  const { jobs } = await askServer<{ jobs: ShelvedJob[] }>("shelf");
  useRoom.setState({ jobs });
}

let meeting: Promise<void> | undefined;
let again = false;

/** Brings the open job and the server's together; what is asked for meanwhile is done after. */
export async function meetOpen(): Promise<void> {
  if (meeting) {
    again = true;
    return meeting;
  }
  const { job, room } = usePlanner.getState();
  if (!job || !room || useRoom.getState().me?.state !== "signed-in") return;
  meeting = meetServer(openTable(job.id))
    .then(() => useRoom.setState({ notKept: undefined }))
    .catch(sayNotKept)
    .finally(() => {
      meeting = undefined;
    });
  await meeting;
  if (!again) return;
  again = false;
  await meetOpen();
}

let trying: ReturnType<typeof setTimeout> | undefined;

/** Says why the server did not keep what was sent; it stays in the outbox, and is sent again by itself. */
function sayNotKept(error: unknown): void {
  if (!(error instanceof TurnedDown) || error.status === 401) return;
  useRoom.setState({ notKept: error.message });
  clearTimeout(trying);
  trying = setTimeout(() => void meetOpen(), TRY_AGAIN_MS);
}

/** Settles a conflict of the open job with what stands on the table now. */
export async function settleOpen(conflictId: string): Promise<void> {
  const { job } = usePlanner.getState();
  if (!job) return;
  settle(openTable(job.id), conflictId);
  await meetOpen();
}

function hearEdits(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  usePlanner.subscribe((planner, before) => {
    if (planner.room === undefined || planner.job === before.job) return;
    if (planner.job?.id !== before.job?.id) void meetOpen();
    if (planner.job === planner.room.shown) return;
    clearTimeout(timer);
    timer = setTimeout(() => void meetOpen(), PAUSE_MS);
  });
}

let heardAt = new Date().toISOString();

function hearNews(): void {
  const stream = new EventSource("api/news/stream");
  stream.onmessage = (event: MessageEvent<string>) => void hear(JSON.parse(event.data) as News);
  stream.onopen = () => {
    if (!useRoom.getState().isOnline) void catchUp();
    useRoom.setState({ isOnline: true });
  };
  stream.onerror = () => useRoom.setState({ isOnline: false });
  setInterval(() => {
    if (stream.readyState !== EventSource.OPEN) void askForNews();
  }, ASK_EVERY_MS);
}

async function askForNews(): Promise<void> {
  if (!navigator.onLine || useRoom.getState().me?.state !== "signed-in") return;
  try {
    const wasOnline = useRoom.getState().isOnline;
    const news = await askServer<News>("news", { query: { since: heardAt } });
    await (wasOnline ? hear(news) : catchUp());
  } catch {
    // Asked again in its turn.
  }
}

async function hear({ now, jobs, isShelfChanged, isWorkChanged, here }: News): Promise<void> {
  heardAt = now;
  const { workNews, shopNews } = useRoom.getState();
  useRoom.setState({
    here,
    ...(isWorkChanged ? { workNews: workNews + 1 } : {}),
    ...(jobs.some(({ id }) => id === SHOP_ID) ? { shopNews: shopNews + 1 } : {}),
  });
  const { job, room } = usePlanner.getState();
  const isOpenChanged = jobs.some(
    ({ id, version }) => id === job?.id && version > (room?.version ?? version),
  );
  if (isOpenChanged) void meetOpen();
  if (isShelfChanged || jobs.length > 0) await readRoomShelf().catch(() => {});
}

/** Tells the others which job and window is open here. */
function tellWhereIAm(): void {
  const tell = () => {
    if (document.visibilityState === "hidden" || useRoom.getState().me?.state !== "signed-in") return;
    const [, page, jobId, windowId] = location.hash.slice(1).split("/");
    const isShared = page === "job" && usePlanner.getState().room !== undefined;
    const body = isShared && jobId ? { jobId, ...(windowId ? { windowId } : {}) } : {};
    askServer("presence", { body }).catch(() => {});
  };
  addEventListener("hashchange", tell);
  usePlanner.subscribe((planner, before) => {
    if (planner.job?.id !== before.job?.id) tell();
  });
  setInterval(tell, PRESENCE_EVERY_S * 1000);
  tell();
}

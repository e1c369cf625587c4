import type { Job } from "../../job/index.ts";
import {
  postEdits,
  type Replica,
  sameJson,
  takeIn,
  withBase,
  withoutOperation,
} from "../../workroom/merge/index.ts";
import {
  type HeldJob,
  MOST_OPERATIONS,
  type NumberedOperation,
  type OperationAnswers,
  type OperationsPage,
} from "../../workroom/protocol/index.ts";
import { newUuid } from "../persistence/new-id.ts";
import { askServer } from "./ask-server.ts";
import { useRoom } from "./room-state.ts";

/** Where a shared job lies: open in this tab, or on this device's shelf. */
export interface SharedTable {
  jobId: string;
  /** What lies there now; undefined once it does not any more. */
  look(): { job: Job; room: Replica; mayEdit: boolean } | undefined;
  /** @param taken what came in from others, in order */
  lay(room: Replica, job: Job, taken: readonly NumberedOperation[]): void;
  /** Resolves once what was laid is on disk. */
  kept(): Promise<void>;
}

/**
 * Brings a shared job and the server's together: sends what waits, takes in what came. Edits go on meanwhile.
 * @throws where the server does not answer
 */
export async function meetServer(table: SharedTable): Promise<void> {
  while (true) {
    post(table);
    const waiting = table.look()?.room.outbox.slice(0, MOST_OPERATIONS) ?? [];
    if (waiting.length > 0) {
      // Written down before it is sent: after a power cut the same operation is sent, not another like it.
      await table.kept();
      await send(table, waiting);
    }
    await takeInAll(table);
    const left = table.look();
    if (left === undefined || (left.room.outbox.length === 0 && sameJson(left.job, left.room.shown))) return;
    if (!left.mayEdit) return;
  }
}

/** Puts the edits on the table into the outbox. */
function post(table: SharedTable, settles: readonly string[] = []): void {
  const here = table.look();
  if (!here?.mayEdit) return;
  const posted = postEdits(here.room, here.job, { ...newStamp(), settles });
  if (posted !== here.room) table.lay(posted, here.job, []);
}

/** Says of a conflict that what is on the table now is what shall be. */
export function settle(table: SharedTable, conflictId: string): void {
  post(table, [conflictId]);
}

function newStamp(): { id: string; at: string } {
  return { id: newUuid(), at: new Date().toISOString() };
}

async function send(table: SharedTable, operations: Replica["outbox"]): Promise<void> {
  const { answers } = await askServer<OperationAnswers>("sendOperations", {
    params: { job: table.jobId },
    body: { operations },
  });
  for (const answer of answers) {
    if (answer.ok) continue;
    letGo(table, answer.id, answer.issues.map(({ field, wanted }) => `${field} wants ${wanted}`).join("; "));
  }
}

function letGo(table: SharedTable, id: string, why: string): void {
  post(table);
  const here = table.look();
  if (!here) return;
  const room = withoutOperation(here.room, id);
  table.lay(room, room.shown, []);
  useRoom.setState({ turnedDown: why });
}

async function takeInAll(table: SharedTable): Promise<void> {
  for (let more = true; more; ) {
    const after = table.look()?.room.version;
    if (after === undefined) return;
    const page = await askServer<OperationsPage>("operations", {
      params: { job: table.jobId },
      query: { after: String(after) },
    });
    more = page.more;
    post(table);
    const here = table.look();
    if (!here || page.operations.length === 0) return;
    await takeInPage(table, here.room, here.job, page.operations);
  }
}

async function takeInPage(
  table: SharedTable,
  room: Replica,
  job: Job,
  operations: readonly NumberedOperation[],
): Promise<void> {
  const own = new Set(room.outbox.map(({ id }) => id));
  try {
    const next = takeIn(room, operations);
    const taken = operations.filter(({ id, version }) => version > room.version && !own.has(id));
    table.lay(next, sameJson(next.shown, job) ? job : next.shown, taken);
  } catch {
    // What is here does not fit: the job is fetched whole, and what waits is done to it.
    const held = await askServer<HeldJob>("job", { params: { job: table.jobId } });
    post(table);
    const here = table.look();
    if (!here) return;
    const next = withBase(here.room, held);
    table.lay(next, next.shown, operations);
  }
}

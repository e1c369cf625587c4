import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Job, openJob } from "../../src/job/index.ts";
import {
  applyChanges,
  postEdits,
  type Replica,
  rebase,
  replicaOf,
  takeIn,
} from "../../src/workroom/merge/index.ts";
import type { Conflict, NumberedOperation, Operation } from "../../src/workroom/protocol/index.ts";
import { jobWith } from "../job-with.ts";
import { pinned } from "../pinned.ts";
import { choices, editedTowards, openedJob } from "./drawn-edits.ts";
import { leafPathOf, leavesAt, leavesOf, listsOfTwins } from "./leaves.ts";

const AT = "2026-01-01T00:00:00.000Z";
const PERSON = "00000000-0000-4000-8000-000000000000";

/** A server as the protocol has it: one log of one job, each operation numbered once. */
class OneJobServer {
  job: Job;
  log: NumberedOperation[] = [];
  /** The version that an operation was made from, by its id. */
  readonly seenBy = new Map<string, number>();
  /** The values that an operation was made from, by its id. */
  readonly knownTo = new Map<string, ReadonlyMap<string, string>>();

  constructor(job: Job) {
    this.job = job;
  }

  send(operation: Operation): void {
    if (this.log.some(({ id }) => id === operation.id)) return;
    const rebased = rebase(this.job, operation, this.log.slice(operation.baseVersion));
    if (!rebased.ok) throw new Error(`refused: ${JSON.stringify(rebased.issues)}`);
    const version = this.log.length + 1;
    this.seenBy.set(operation.id, operation.baseVersion);
    const known = operation.changes.flatMap(({ path, from }) => [...leavesAt(path, from)]);
    this.knownTo.set(operation.id, new Map(known));
    const conflicts: Conflict[] = rebased.conflicts.map(({ theirVersion: _, ...sides }, n) => ({
      ...sides,
      id: `${version}-${n}`,
      version,
      person: PERSON,
    }));
    const { changes } = rebased;
    this.log.push({
      id: operation.id,
      jobId: this.job.id,
      version,
      person: PERSON,
      at: AT,
      changes,
      conflicts,
      settles: operation.settles ?? [],
    });
    this.job = rebased.job;
  }
}

/** A device: what is on its table, and its side of the shared job. */
class Device {
  table: Job;
  replica: Replica;
  #posted = 0;
  readonly #name: string;

  constructor(name: string, job: Job) {
    this.#name = name;
    this.table = job;
    this.replica = replicaOf({ version: 0, job, conflicts: [] });
  }

  edit(other: Job, chosen: readonly boolean[]): void {
    this.table = editedTowards(this.table, other, chosen);
  }

  post(): void {
    this.replica = postEdits(this.replica, this.table, { id: `${this.#name}-${this.#posted++}`, at: AT });
  }

  pull(server: OneJobServer): void {
    this.post();
    this.replica = takeIn(this.replica, server.log.slice(this.replica.version));
    this.table = this.replica.shown;
  }

  /** @param twice an answer was lost on its way: everything is sent again */
  push(server: OneJobServer, twice: boolean): void {
    this.post();
    for (const operation of [...this.replica.outbox, ...(twice ? this.replica.outbox : [])])
      server.send(operation);
  }

  /** Killed and started again: only what was written down is left. */
  restart(): void {
    this.replica = JSON.parse(JSON.stringify(this.replica));
    this.table = JSON.parse(JSON.stringify(this.table));
  }
}

const DEEDS = ["edit", "post", "push", "push-twice", "pull", "restart"] as const;
const deed = fc.record({
  who: fc.integer({ min: 0, max: 2 }),
  what: fc.constantFrom(...DEEDS, "edit", "edit"),
  other: fc.integer({ min: 0, max: 2 }),
  chosen: choices,
});

describe("three devices, each offline as long as it likes", () => {
  const agreeing =
    "end with one job that opens, whatever came in what order, and no edit of theirs is gone untold";
  test(agreeing, () => {
    fc.assert(
      fc.property(
        openedJob,
        fc.tuple(openedJob, openedJob, openedJob),
        fc.array(deed, { maxLength: 14 }),
        (start, others, deeds) => {
          const server = new OneJobServer(start);
          const devices = ["a", "b", "c"].map((name) => new Device(name, start));
          const [first, second, third] = devices as [Device, Device, Device];
          for (const { who, what, other, chosen } of deeds) {
            const device = devices[who] ?? first;
            if (what === "edit") device.edit(others[other] ?? start, chosen);
            else if (what === "post") device.post();
            else if (what === "push") device.push(server, false);
            else if (what === "push-twice") device.push(server, true);
            else if (what === "pull") device.pull(server);
            else device.restart();
          }
          for (const device of devices) device.push(server, false);
          for (const device of devices) device.pull(server);
          expect([second.table, third.table, server.job]).toEqual([first.table, first.table, first.table]);
          expect(devices.map(({ replica }) => replica.outbox)).toEqual([[], [], []]);
          expect(openJob(JSON.parse(JSON.stringify(server.job)))).toMatchObject({ ok: true });
          expect(server.log.reduce((job, { changes }) => applyChanges(job, changes), start)).toEqual(
            server.job,
          );
          const ids = server.log.map(({ id }) => id);
          expect(new Set(ids).size).toBe(ids.length);
          expect(goneUntold(server, start)).toEqual([]);
        },
      ),
      {
        numRuns: 20,
        examples: pinned(import.meta.url, `three devices, each offline as long as it likes > ${agreeing}`),
      },
    );
  });
});

/**
 * Values that a device wrote over although another had put them there unseen, without a conflict that tells of it. Where
 * both had written the same, the value is known to either.
 */
function goneUntold(server: OneJobServer, start: Job): string[] {
  const writers = new Map<string, { device: string; version: number }>();
  let job = start;
  return server.log.flatMap(({ id, version, changes, conflicts }) => {
    const [before, device] = [leavesOf(job), id.slice(0, 1)];
    job = applyChanges(job, changes);
    const after = leavesOf(job);
    const seen = server.seenBy.get(id) ?? 0;
    const known = server.knownTo.get(id);
    const told = [
      ...conflicts.map(({ path }) => leafPathOf(path)),
      ...listsOfTwins(before),
      ...listsOfTwins(after),
    ];
    const changed = [...new Set([...before.keys(), ...after.keys()])].filter(
      (leaf) => before.get(leaf) !== after.get(leaf),
    );
    const gone = changed.filter((leaf) => {
      const writer = writers.get(leaf);
      const isOthers = writer !== undefined && writer.device !== device && writer.version > seen;
      const isUnseen = isOthers && known?.get(leaf) !== before.get(leaf);
      return isUnseen && !told.some((path) => leaf === path || leaf.startsWith(`${path}/`));
    });
    for (const leaf of changed) writers.set(leaf, { device, version });
    return gone;
  });
}

test("an edit made while another's comes in stays on the table, and is told as a conflict where both are of one field", () => {
  const start = jobWith({});
  const server = new OneJobServer(start);
  const [ann, ben] = [new Device("ann", start), new Device("ben", start)];
  ann.table = { ...ann.table, name: "Hall" };
  ann.push(server, false);
  ben.table = { ...ben.table, name: "Stairs", client: "Client" };
  ben.pull(server);
  expect([ben.table.name, ben.table.client]).toEqual(["Stairs", "Client"]);
  ben.push(server, false);
  ann.pull(server);
  ben.pull(server);
  expect([ann.table.name, ann.table.client]).toEqual(["Stairs", "Client"]);
  expect(ann.replica.conflicts).toMatchObject([{ base: "Test job", mine: "Stairs", theirs: "Hall" }]);
  expect(ben.replica.conflicts).toEqual(ann.replica.conflicts);
});

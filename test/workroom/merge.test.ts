import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Job, newWindow, openJob } from "../../src/job/index.ts";
import {
  applyChanges,
  changesBetween,
  type FieldConflict,
  type FieldPath,
  ORDER,
  rebase,
} from "../../src/workroom/merge/index.ts";
import { jobWith } from "../job-with.ts";
import { pinned } from "../pinned.ts";
import { choices, editedTowards, openedJob } from "./drawn-edits.ts";
import { leafPathOf, leavesOf, listsOfTwins } from "./leaves.ts";

const FIRST: FieldPath = ["rooms", { id: "room-1" }, "windows", { id: "window-1" }];
const start = jobWith({ ticks: ["cut"] });

type Windows = Job["rooms"][number]["windows"];
const withWindows = (job: Job, change: (windows: Windows) => Windows): Job => ({
  ...job,
  rooms: job.rooms.map((room) => ({ ...room, windows: change(room.windows) })),
});
const withFirst = (job: Job, change: Partial<Windows[number]>): Job =>
  withWindows(job, ([first, ...rest]) => (first ? [{ ...first, ...change }, ...rest] : rest));
const window = (id: string) => newWindow({ id, name: id, widthMm: 900, heightMm: 1500 });
const namesOf = (job: Job) => job.rooms.flatMap((room) => room.windows.map(({ name }) => name));

/** What comes of it when one saved `theirs` first and the other then sends `mine`, both made of `base`. */
function met(base: Job, theirs: Job, mine: Job) {
  const later = [{ version: 1, changes: changesBetween(base, theirs) }];
  const rebased = rebase(theirs, { changes: changesBetween(base, mine) }, later);
  if (!rebased.ok) throw new Error(`invalid edit: ${JSON.stringify(rebased.issues)}`);
  return rebased;
}

describe("two people at one job", () => {
  test("who edit different fields both have what they wrote", () => {
    const { job, conflicts } = met(start, { ...start, name: "Hall" }, withFirst(start, { name: "Bay" }));
    expect([job.name, ...namesOf(job)]).toEqual(["Hall", "Bay"]);
    expect(conflicts).toEqual([]);
  });

  test("who edit one field: the later stands, and both are kept", () => {
    const { job, conflicts } = met(start, { ...start, name: "Hall" }, { ...start, name: "Stairs" });
    expect(job.name).toBe("Stairs");
    expect(conflicts).toEqual([
      { path: ["name"], base: "Test job", mine: "Stairs", theirs: "Hall", theirVersion: 1 },
    ]);
  });

  test("who write the same have no conflict", () => {
    const { changes, conflicts } = met(start, { ...start, name: "Hall" }, { ...start, name: "Hall" });
    expect([changes, conflicts]).toEqual([[], []]);
  });

  test("who both add a window have both, and a window before does not move the edit to its neighbour", () => {
    const theirs = withWindows(start, (all) => [window("theirs"), ...all]);
    const mine = withFirst(
      withWindows(start, (all) => [...all, window("mine")]),
      { name: "Bay" },
    );
    expect(namesOf(met(start, theirs, mine).job)).toEqual(["theirs", "Bay", "mine"]);
    expect(namesOf(met(start, mine, theirs).job)).toEqual(["theirs", "Bay", "mine"]);
  });

  test("who both tick steps have ticked them all, even the first and even where one unticks the last", () => {
    const none = withFirst(start, { ticks: undefined });
    const ticks = (ids: string[] | undefined) => withFirst(start, { ticks: ids });
    const ticked = ({ job }: { job: Job }) => job.rooms[0]?.windows[0]?.ticks;
    expect(ticked(met(none, ticks(["cut"]), ticks(["sew"])))).toEqual(["cut", "sew"]);
    expect(ticked(met(start, ticks(["cut", "sew"]), none))).toEqual(["sew"]);
    expect(ticked(met(start, none, ticks(["cut", "sew"])))).toEqual(["sew"]);
  });

  test("one of whom takes a window away that the other edits: it stays, as a conflict", () => {
    const gone = withWindows(start, () => []);
    const edited = withFirst(start, { name: "Bay" });
    const [was] = start.rooms[0]?.windows ?? [];
    const [is] = edited.rooms[0]?.windows ?? [];
    const kept = met(start, edited, gone);
    expect(namesOf(kept.job)).toEqual(["Bay"]);
    expect(kept.conflicts).toEqual([{ path: FIRST, base: was, theirs: is, theirVersion: 1 }]);
    const back = met(start, gone, edited);
    expect(namesOf(back.job)).toEqual(["Bay"]);
    expect(back.conflicts).toEqual([{ path: FIRST, base: was, mine: is, theirVersion: 1 }]);
  });

  test("one of whom takes a whole room away: an edit in it brings the room back", () => {
    const edited = withFirst(start, { name: "Bay" });
    const { job, conflicts } = met(start, { ...start, rooms: [] }, edited);
    expect(namesOf(job)).toEqual(["Bay"]);
    expect(conflicts.map(({ path }) => path)).toEqual([["rooms", { id: "room-1" }]]);
  });

  test("one of whom takes settings back while the other adds one: each setting for itself", () => {
    const making = (value: Windows[number]["shade"]["making"]) =>
      withWindows(start, (all) => all.map((one) => ({ ...one, shade: { ...one.shade, making: value } })));
    const had = making({ hems: { sideTurnMm: 30 } });
    const { job, conflicts } = met(
      had,
      making({ hems: { sideTurnMm: 30 }, fold: { rows: 5 } }),
      making(undefined),
    );
    expect(job.rooms[0]?.windows[0]?.shade.making).toEqual({ fold: { rows: 5 } });
    expect(conflicts).toEqual([]);
  });

  test("one of whom makes a cloth plain while the other measures its repeat: it stays whole, as a conflict", () => {
    const cloth = { id: "c", name: "Cloth", usableWidthMm: 1370, massGsm: 200 };
    const withRepeat = (repeat?: { verticalMm: number; match: "straight"; horizontalMm?: number }) =>
      jobWith({}, { cloths: [{ ...cloth, ...(repeat ? { repeat } : {}) }] });
    const had = { verticalMm: 320, match: "straight" as const };
    const { job, conflicts } = met(
      withRepeat(had),
      withRepeat({ ...had, horizontalMm: 640 }),
      withRepeat(undefined),
    );
    expect(job.cloths[0]?.repeat).toEqual({ ...had, horizontalMm: 640 });
    expect(conflicts.map(({ path }) => path)).toEqual([["cloths", { id: "c" }, "repeat"]]);
  });

  test("who both put windows in order: the later order stands", () => {
    const three = withWindows(start, () => ["a", "b", "c"].map(window));
    const order = (...ids: string[]) => withWindows(start, () => ids.map(window));
    const { job, conflicts } = met(three, order("b", "a", "c"), order("c", "a", "b"));
    expect(namesOf(job)).toEqual(["c", "a", "b"]);
    expect(conflicts.map(({ path }) => path)).toEqual([["rooms", { id: "room-1" }, "windows", ORDER]]);
  });

  test("whose windows got one id in two rooms: mine does not go in, and waits in the conflict", () => {
    const rooms = (...windows: Windows[]): Job => ({
      ...start,
      rooms: windows.map((all, at) => ({ id: `room-${at + 1}`, name: "Room", windows: all })),
    });
    const two = rooms([], []);
    const { job, conflicts } = met(two, rooms([window("w")], []), rooms([], [window("w")]));
    expect(job.rooms.map((room) => room.windows.length)).toEqual([1, 0]);
    expect(conflicts.map(({ mine }) => mine)).toEqual([window("w")]);
  });
});

describe("changes that no job takes", () => {
  test.each([
    ["a field that jobs do not have", { path: ["colour"], to: "red" }, "colour"],
    ["a name that every object has", { path: ["rates", "__proto__"], to: { x: 1 } }, "rates.__proto__"],
    ["a value of another kind", { path: ["name"], from: "Test job", to: 5 }, "name"],
    ["a needed field taken away", { path: ["name"], from: "Test job" }, "name"],
    ["another id of the job", { path: ["id"], from: "test-job", to: "other" }, "id"],
    ["a version of before", { path: ["version"], from: 1, to: 0 }, "version"],
    ["a window under another id", { path: [...FIRST], to: { id: "x" } }, "rooms[room-1].windows[window-1]"],
    ["a key of an item", { path: [...FIRST, "id"], to: "x" }, "rooms[room-1].windows[window-1].id"],
    [
      "a window in a room that is not there",
      { path: ["rooms", { id: "no" }, "name"], to: "x" },
      "rooms[no].name",
    ],
    ["the whole job", { path: [], to: {} }, "(job)"],
  ])("are turned down by field: %s", (_what, change, field) => {
    const rebased = rebase(start, { changes: [change] }, []);
    expect(rebased.ok ? [] : rebased.issues.map((issue) => issue.field)).toEqual([field]);
  });

  test("an id that two windows would have is named as the job's own check names it", () => {
    const twice = rebase(
      { ...start, rooms: [...start.rooms, { id: "room-2", name: "Other", windows: [] }] },
      {
        changes: [
          {
            path: ["rooms", { id: "room-2" }, "windows", { id: "window-1" }],
            to: { ...window("window-1") } as never,
          },
        ],
      },
      [],
    );
    expect(twice.ok ? "" : twice.issues[0]?.wanted).toContain("an id of its own");
  });

  test("numbered changes of another state of the job are not done to this one", () => {
    const changes = [{ path: ["name"], from: "Another", to: "Third" }];
    expect(() => applyChanges(start, changes)).toThrow("name");
  });
});

const numRuns = 50;

describe("for any jobs", () => {
  const doing = "the changes between two jobs make the one of the other";
  test(doing, () => {
    fc.assert(
      fc.property(openedJob, openedJob, (before, after) => {
        expect(applyChanges(before, changesBetween(before, after))).toEqual(after);
        const rebased = rebase(before, { changes: changesBetween(before, after) }, []);
        expect(rebased).toMatchObject({ ok: true, conflicts: [] });
        if (rebased.ok) expect(rebased.job).toEqual(after);
      }),
      { numRuns, examples: pinned(import.meta.url, `for any jobs > ${doing}`) },
    );
  });

  const meeting =
    "a merged job opens; what one alone touched is as they left it; what both touched is in a conflict";
  test(meeting, () => {
    fc.assert(
      fc.property(openedJob, openedJob, openedJob, choices, choices, (base, a, b, chosenA, chosenB) => {
        const [theirs, mine] = [editedTowards(base, a, chosenA), editedTowards(base, b, chosenB)];
        const { job, changes, conflicts } = met(base, theirs, mine);
        expect(openJob(JSON.parse(JSON.stringify(job)))).toMatchObject({ ok: true });
        expect(applyChanges(theirs, changes)).toEqual(job);
        expect(strayLeaves(base, theirs, mine, job, conflicts)).toEqual([]);
      }),
      { numRuns, examples: pinned(import.meta.url, `for any jobs > ${meeting}`) },
    );
  });
});

/** Values of the merged job that are neither what one alone made of them nor told of in a conflict. */
function strayLeaves(
  base: Job,
  theirs: Job,
  mine: Job,
  job: Job,
  conflicts: readonly FieldConflict[],
): string[] {
  const [was, ofThem, ofMe, is] = [base, theirs, mine, job].map(leavesOf) as [Leaves, Leaves, Leaves, Leaves];
  const told = conflicts.map(({ path }) => leafPathOf(path));
  const twins = [was, ofThem, ofMe].flatMap(listsOfTwins);
  const isTold = (leaf: string) =>
    [...told, ...twins].some((path) => leaf === path || leaf.startsWith(`${path}/`));
  const all = new Set([was, ofThem, ofMe, is].flatMap((leaves) => [...leaves.keys()]));
  return [...all].filter((leaf) => {
    if (isTold(leaf)) return false;
    const [b, t, m, j] = [was.get(leaf), ofThem.get(leaf), ofMe.get(leaf), is.get(leaf)];
    if (t === b) return j !== m;
    if (m === b) return j !== t;
    return !(t === m && j === m);
  });
}
type Leaves = Map<string, string>;

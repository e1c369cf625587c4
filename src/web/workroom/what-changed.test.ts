import { describe, expect, test } from "vitest";
import { newJob, newWindow } from "../../job/index.ts";
import { changesBetween } from "../../workroom/merge/index.ts";
import { changeWords, inAll } from "./what-changed.ts";

const job = (() => {
  const made = newJob({ id: "one", name: "Bay", system: "imperial" });
  const window = newWindow({ id: "w1", name: "East", widthMm: 863.6, heightMm: 1473.2 });
  return { ...made, rooms: made.rooms.map((room) => ({ ...room, name: "Hall", windows: [window] })) };
})();

function renamed(name: string) {
  return {
    ...job,
    rooms: job.rooms.map((room) => ({
      ...room,
      windows: room.windows.map((window) => ({ ...window, name })),
    })),
  };
}

describe("what was changed, in words", () => {
  test("names the field by what it belongs to, with what stood there and what stands there now", () => {
    const wider = {
      ...job,
      note: "Ring first",
      rooms: job.rooms.map((room) => ({
        ...room,
        windows: room.windows.map((window) => ({
          ...window,
          opening: { ...window.opening, sillAboveFloorMm: 914.4 },
        })),
      })),
    };
    const words = changeWords(wider, inAll(changesBetween(job, wider)));
    expect(words).toContainEqual({ field: "note", before: "nothing", after: "Ring first" });
    expect(words).toContainEqual({
      field: "Hall · East · sill above floor",
      before: "nothing",
      after: expect.stringMatching(/^36/),
    });
  });

  test("several changes of one field are one, and what was taken back is none", () => {
    const [one, two] = [renamed("West"), renamed("North")];
    const changes = [...changesBetween(job, one), ...changesBetween(one, two)];
    expect(changeWords(two, inAll(changes))).toEqual([
      { field: "Hall · North · name", before: "East", after: "North" },
    ]);
    expect(inAll([...changesBetween(job, one), ...changesBetween(one, job)])).toEqual([]);
  });

  test("what came and what went bear their names, and fields of what came are told with it", () => {
    const more = newWindow({ id: "w2", name: "Door", widthMm: 900, heightMm: 2100 });
    const [room] = job.rooms;
    if (!room) throw new Error("a job without a room");
    const added = { ...job, rooms: [{ ...room, windows: [...room.windows, more] }] };
    const named = { ...job, rooms: [{ ...room, windows: [...room.windows, { ...more, name: "Gate" }] }] };
    const both = inAll([...changesBetween(job, added), ...changesBetween(added, named)]);
    expect(changeWords(named, both)[0]).toEqual({ field: "Hall · Gate", before: "", after: "added" });
    const gone = { ...job, rooms: [{ ...room, windows: [] }] };
    expect(changeWords(gone, inAll(changesBetween(job, gone)))[0]).toEqual({
      field: "Hall · East",
      before: "",
      after: "taken away",
    });
  });
});

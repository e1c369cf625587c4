import { expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { plan } from "../../plan/index.ts";
import { jobWorkings } from "./workings.ts";

test("a job of one shade that costs what its shade costs has no second page of the same sums", () => {
  const job = jobWith({});
  const one = plan(job);
  expect(one.workings.map(({ id }) => id)).toContain("cost.total");
  expect(jobWorkings(one, one.shades)).toEqual([]);
  const [room] = job.rooms;
  const [window] = room?.windows ?? [];
  if (room === undefined || window === undefined) throw new Error("no window");
  const two = plan({ ...job, rooms: [{ ...room, windows: [window, { ...window, id: "other" }] }] });
  expect(jobWorkings(two, two.shades).map(({ id }) => id)).toEqual(
    expect.arrayContaining(two.workings.map(({ id }) => id)),
  );
});

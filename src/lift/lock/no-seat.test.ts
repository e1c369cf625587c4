import { expect, it } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { plannedLock, resolvedShadesOf, rigInput } from "../../../test/rig-inputs.ts";
import type { Job, ResolvedMaking } from "../../job/index.ts";

type Wish = { seat?: ResolvedMaking["lift"]["seat"]; straightRunMm?: number };

/** Ten columns on 600 mm stand 55 mm apart, the outer eye 48 mm from the end of the board; eyes are 12 mm across. */
function crowded(lift: Wish, lockMm = 30, locks: object[] = []): Job {
  const own = {
    id: "mine",
    name: "My lock",
    housingLengthMm: lockMm,
    housingWidthMm: 22,
    housingHeightMm: 24,
  };
  return jobWith(
    {
      opening: { widthsMm: [600], heightsMm: [1500] },
      shade: { mount: "to-size", making: { columns: { count: 10 }, lift: { lock: "mine", ...lift } } },
    },
    {
      units: { system: "metric", ruler: "1 mm" },
      hardware: { locks: [{ ...own, dividerWires: 5, cordsMax: 12, cordNominalMm: 1.4 }, ...locks] as never },
    },
  );
}

function noSeat(job: Job) {
  const findings = resolvedShadesOf(job).flatMap((shade) => plannedLock(rigInput(shade)).findings);
  const found = findings.find(({ id }) => id === "rig.no-seat");
  const plain = (text = "") => text.replaceAll("\u00a0", " ");
  return { text: plain(found?.text), labels: found?.remedies.map(({ label }) => plain(label)) ?? [] };
}

/** A lock of 30 mm with 12 mm of straight cord needs 30 + 2 · (6 + 12) mm between two eyes, 30 + 6 + 12 + 3 outside. */
it("tells of the places that the maker’s wish leaves, with what is needed and what is there", () => {
  const between = "between the last two eyes it needs 66 mm and has 55 mm";
  const outside = "outside the last eye it needs 51 mm of board and has 48 mm";
  const start = "There is no place for “My lock”:";
  const end = ". It is drawn where it misses by least.";
  expect(noSeat(crowded({ seat: "auto" })).text).toBe(`${start} ${between}; ${outside}${end}`);
  expect(noSeat(crowded({ seat: "between" })).text).toBe(`${start} ${between}${end}`);
  expect(noSeat(crowded({ seat: "outside" })).text).toBe(`${start} ${outside}${end}`);
});

it("offers a shorter straight run by the place that is wished for: 12 − 11 / 2 mm between, 12 − 3 mm outside", () => {
  const run = (seat: Wish["seat"]) =>
    noSeat(crowded({ seat })).labels.filter((label) => label.includes("straight"));
  const only = (mm: number) => [`Let the cords run straight for only ${mm} mm`];
  expect(run("between")).toEqual(only(6));
  expect(run("outside")).toEqual(only(8));
  expect(run("auto")).toEqual(only(8));
});

it("offers fewer columns where a bay will do, a board or an inset where the end of the board will", () => {
  const { labels: between } = noSeat(crowded({ seat: "between" }));
  expect(between).toContain("Use 8 columns");
  expect(between.join()).not.toMatch(/edge columns|board/);
  const { labels: outside } = noSeat(crowded({ seat: "outside" }));
  expect(outside.join()).not.toContain("columns,");
  expect(outside).toContain("Set the edge columns in by 55 mm");
});

it("says what to do where nothing can be pressed", () => {
  const { text, labels } = noSeat(crowded({ seat: "between", straightRunMm: 6 }, 490));
  expect(labels).toEqual([]);
  expect(text).toMatch(
    /It is drawn where it misses by least\. Use fewer columns, a shorter lock, or an inset that leaves it room\.$/,
  );
});

it("offers the shorter of the maker’s locks that take the cords and find room, two at the most", () => {
  const more = (id: string, housingLengthMm: number, cordsMax = 12) => ({
    ...{ id, name: id, housingLengthMm, housingWidthMm: 22, housingHeightMm: 24, dividerWires: 5 },
    ...{ cordsMax, cordNominalMm: 1.4 },
  });
  const { labels } = noSeat(
    crowded({ seat: "between" }, 30, [
      ...[more("as-long", 30), more("too-long", 20), more("few", 15, 4)],
      ...[more("short", 19), more("shorter", 15), more("shortest", 12)],
    ]),
  );
  expect(labels.filter((label) => label.includes("shorter “"))).toEqual([
    "Use the shorter “short”",
    "Use the shorter “shorter”",
  ]);
});

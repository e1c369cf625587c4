import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { emptyFolder, typed } from "./typed.ts";

const DEMO = "examples/lantern-row.json";

/** Two locks and two cords of a workroom: one lock without a capacity, one given by its slots. */
const PARTS = {
  format: "shadewright-parts",
  version: 1,
  locks: [
    {
      id: "brass",
      name: "Brass lock",
      supplier: "A shop",
      measuredOn: "2026-05-31",
      slots: 4,
      housingLengthMm: 33,
      housingWidthMm: 28,
      housingHeightMm: 23,
      cordsMax: 8,
      cordMinMm: 1.2,
      cordMaxMm: 1.6,
      known: { slots: "measured", cordsMax: "stated" },
    },
    { id: "drawer", name: "Lock from the drawer", dividerWires: 2, tests: { gap: { gapMm: 1 } } },
  ],
  cords: [
    { id: "white", name: "White braid", diameterMm: 1.4 },
    { id: "thin", name: "Thin braid", diameterMm: 0.9 },
  ],
};

function partsFile(parts: object = PARTS): string {
  const path = join(emptyFolder(), "parts.json");
  writeFileSync(path, JSON.stringify(parts));
  return path;
}

const flat = (text: string) => text.replaceAll("\u00a0", " ").replace(/\s+/g, " ");

describe("a parts file", () => {
  test("ask lock answers from it alone, cord by cord, without a diameter and without a job", async () => {
    const { code, out } = await typed(["ask", "lock", "--cords", "7", "--parts", partsFile()]);
    expect(code).toBe(0);
    expect(flat(out)).toMatch(/White braid, 1\.4 mm Thin braid, 0\.9 mm/);
    expect(flat(out)).toMatch(/Brass lock fits jams/);
    expect(flat(out)).toMatch(/Lock from the drawer not known not known/);
    expect(flat(out)).toMatch(/Brass lock with Thin braid: it is made for cord of 1\.2 mm to 1\.6 mm/);
    expect(out).not.toMatch(/-slot lock/);
  });

  test("ask lock with one diameter judges its locks", async () => {
    const { out } = await typed(["ask", "lock", "--cords", "9", "--diameter", "1.4", "--parts", partsFile()]);
    expect(flat(out)).toMatch(/Brass lock: does not\. The lock takes at most 8 cords; you have 9\./);
  });

  test("ask fit lays its locks by its cords for one shade of a job", async () => {
    const { code, out } = await typed(["ask", "fit", DEMO, "--parts", partsFile(), "--json"]);
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    expect(answer.format).toBe("shadewright-fit");
    expect(answer.rows.map(({ lock }: { lock: { id: string } }) => lock.id)).toEqual(["brass", "drawer"]);
  });

  test("check plans with it: no lock of the catalogue stands in", async () => {
    const job = join(emptyFolder(), "job.json");
    await typed(["new", "--width", "36", "--length", "60", "--out", job]);
    const document = JSON.parse(readFileSync(job, "utf8"));
    document.rooms[0].windows[0].shade.making = { lift: { kind: "cord-lock", cord: "thin" } };
    writeFileSync(job, JSON.stringify(document));
    const only = { ...PARTS, locks: [PARTS.locks[0]] };
    const { out } = await typed(["check", job, "--parts", partsFile(only), "--json"]);
    const { findings } = JSON.parse(out);
    const refused = findings.find(({ id }: { id: string }) => id === "lift.no-own-lock");
    expect(refused).toMatchObject({ severity: "stop" });
    expect(refused.text).toMatch(/“Brass lock” is made for/);
    expect(out).not.toMatch(/lift\.demo-lock/);
  });

  test("a job keeps its own copy of a part, and it is said where the file holds another", async () => {
    const document = JSON.parse(readFileSync(DEMO, "utf8"));
    document.hardware = { ...document.hardware, cords: [{ ...PARTS.cords[0], breakingN: 300 }] };
    const job = join(emptyFolder(), "job.json");
    writeFileSync(job, JSON.stringify(document));
    const { err } = await typed(["ask", "fit", job, "--parts", partsFile()]);
    expect(flat(err)).toMatch(
      /“White braid” is another in .*parts\.json than in the job: breakingN\. The job keeps its own copy\./,
    );
  });

  test.each([
    [{ ...PARTS, format: "shadewright-job" }, /format.*"shadewright-parts"/],
    [{ ...PARTS, cords: [{ id: "x", name: "X", diameterMm: 60 }] }, /cords\[0\]\.diameterMm/],
    [{ ...PARTS, cords: [PARTS.cords[0], PARTS.cords[0]] }, /cords\[1\]\.id.*an id of its own/],
  ])("one that cannot be used is refused by field", async (parts, wanted) => {
    const { code, err } = await typed(["ask", "lock", "--cords", "4", "--parts", partsFile(parts)]);
    expect(code).toBe(2);
    expect(flat(err)).toMatch(wanted);
  });

  test("its schema is printed", async () => {
    const { out } = await typed(["schema", "parts"]);
    expect(JSON.parse(out).$id).toBe("shadewright-parts-1.schema.json");
  });
});

test("plan writes the job with the parts in it, which plans alike without the file", async () => {
  const [job, folder] = [join(emptyFolder(), "job.json"), emptyFolder()];
  await typed([
    "new",
    "--name",
    "Own",
    "--width",
    "900",
    "--length",
    "1500",
    "--units",
    "metric",
    "--out",
    job,
  ]);
  const asked = JSON.parse(readFileSync(job, "utf8"));
  asked.rooms[0].windows[0].shade.making = {
    ...asked.rooms[0].windows[0].shade.making,
    lift: { kind: "cord-lock" },
  };
  writeFileSync(job, JSON.stringify(asked));
  const options = ["--out", folder, "--print", "shopping", "--allow-findings"];
  const { code, err } = await typed(["plan", job, "--parts", partsFile(), ...options]);
  expect(code).toBe(0);
  expect(err).toContain("planned-job.json");
  // Again into the same folder: only the job that was read, and jobs of others, are kept.
  expect((await typed(["plan", job, "--parts", partsFile(), ...options])).code).toBe(0);
  const planned = JSON.parse(readFileSync(join(folder, "planned-job.json"), "utf8"));
  const own = await typed(["plan", join(folder, "planned-job.json"), "--parts", partsFile(), ...options]);
  expect([own.code, own.err]).toEqual([2, expect.stringContaining("a job file is there")]);
  // Lock and cord of the file; no eye of one's own is in it.
  expect(planned.rooms[0].windows[0].shade.making.lift).toEqual({
    kind: "cord-lock",
    cord: "white",
    lock: "brass",
  });
  const again = emptyFolder();
  await typed([
    "plan",
    join(folder, "planned-job.json"),
    "--out",
    again,
    "--print",
    "shopping",
    "--allow-findings",
  ]);
  const read = (from: string) => JSON.parse(readFileSync(join(from, "plan.json"), "utf8")).shades[0].lift;
  expect(read(again)).toEqual(read(folder));
  expect(read(again)).toMatchObject({ lockId: "brass", cordId: "white" });
});

describe("bench-test", () => {
  test("without readings it says how, with formula and source", async () => {
    const { code, out } = await typed(["bench-test", "friction"]);
    expect(code).toBe(0);
    expect(flat(out)).toMatch(/quarter turn.*--raises --lowers.*ln\(R \/ S\) \/ π.*Source: /);
  });

  test.each([
    [["gap", "--gap", "0.6"], /gap 0\.6 mm/],
    // A luggage scale reads kg: 6 kg are 58.8 N.
    [["hold", "--readings", "6.2,6 kg,14 lb", "--cord-diameter", "1.4"], /the least is 58\.8 N/],
    [["turns", "--turns", "20", "--width", "28"], /diameter 1\.4 mm/],
    [["stretch", "--length", "2 m", "--grew", "9.8", "--pull", "9.8 N"], /stretch 0\.5 % under 10 N/],
    // e^(0.25·π/2) = 1.48097 (Morton & Hearle, equation 25.2).
    [
      ["friction", "--raises", "1.48097", "--lowers", "0.67523"],
      /friction 0\.25; as a pulley it passes on 68 %/,
    ],
  ])("%j", async (words, wanted) => {
    const { code, out, err } = await typed(["bench-test", ...words]);
    expect([code, err]).toEqual([0, ""]);
    expect(flat(out)).toMatch(wanted);
  });

  test.each([
    [["turns", "--turns", "20"], /--width/],
    [["turns", "--turns", "20", "--width", "400"], /readings that such a part can give/],
    [["hold", "--readings", "heavy", "--cord-diameter", "1.4"], /--readings.*6\.2 kg, 13 lb or 60 N/],
    [["friction", "--raises", "1", "--lowers", "2"], /readings that such a part can give/],
    [["gap", "--gap", "0.6", "--part", "brass"], /--parts/],
  ])("%j is refused, naming what is wanted", async (words, wanted) => {
    const { code, err } = await typed(["bench-test", ...words]);
    expect(code).toBe(2);
    expect(flat(err)).toMatch(wanted);
  });

  test("a result is kept with the part, and the planning takes it", async () => {
    const path = partsFile();
    const ask = ["ask", "lock", "--cords", "2", "--parts", path];
    expect(flat((await typed(ask)).out)).toMatch(/Brass lock fits jams/);
    const words = ["bench-test", "turns", "--turns", "20", "--width", "26", "--on", "2026-06-01"];
    const { code, out } = await typed([...words, "--parts", path, "--part", "thin"]);
    expect([code, flat(out)]).toEqual([0, "Diameter of a cord: diameter 1.3 mm. Kept with Thin braid. "]);
    expect(JSON.parse(readFileSync(path, "utf8")).cords[1].tests.turns).toEqual({
      turns: 20,
      widthMm: 26,
      on: "2026-06-01",
    });
    expect(flat((await typed(ask)).out)).toMatch(/Brass lock fits fits/);
  });
});

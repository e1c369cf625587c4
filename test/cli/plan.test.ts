import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { type Job, jobText, newJob, newWindow } from "../../src/job/index.ts";
import { planAndCut, proveRemedies } from "../../src/plan/index.ts";
import { readDxf } from "../dxf-reader.ts";
import { emptyFolder, launched, typed } from "./typed.ts";

function twoWindows(): Job {
  const job = newJob({ id: "job", name: "Two windows", system: "metric", place: "gb", purpose: "own-home" });
  const windows = ["East", "West"].map((name) =>
    newWindow({ id: name.toLowerCase(), name, widthMm: 900, heightMm: 1400 }),
  );
  return { ...job, rooms: [{ id: "room", name: "Room", windows }] };
}

/** Measured above the floor, each with a sill of its own. */
function atHeight(window: Job["rooms"][number]["windows"][number], i: number): typeof window {
  const sillAboveFloorMm = 900 - 110 * i;
  return { ...window, opening: { ...window.opening, heightsMm: [1200 + 110 * i], sillAboveFloorMm } };
}

function jobFolder(job: Job = twoWindows()) {
  const folder = emptyFolder();
  const file = join(folder, "job.json");
  writeFileSync(file, jobText(job));
  return { folder, file, out: join(folder, "out") };
}

const filesIn = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));

async function planned(file: string, out: string, more: string[]): Promise<string> {
  await typed(["plan", file, "--out", out, "--quiet", ...more]);
  return out;
}

describe("shadewright plan", () => {
  test("--surface tells where the cloth as it hangs differs from the plan, in the plan and on the screen; else nobody asks", async () => {
    const job = twoWindows();
    const window = newWindow({ id: "bay", name: "Bay", widthMm: 900, heightMm: 1200 });
    const rooms = [
      {
        id: "room",
        name: "Room",
        windows: [{ ...window, shade: { style: "festoon" as const, mount: "outside" as const } }],
      },
    ];
    const { file } = jobFolder({ ...job, rooms });
    const asked = await typed(["plan", file, "--json", "--surface"]);
    const ids = (text: string): string[] =>
      JSON.parse(text)
        .shades[0].findings.map(({ id }: { id: string }) => id)
        .filter((id: string) => id.startsWith("drape."));
    expect(ids(asked.out)).toContain("drape.differs");
    expect(asked.err.replace(/\s+/g, " ")).toMatch(
      /As the cloth comes to rest, the shade [a-z ]+ reaches .+ stands out by .+ where the plan has/,
    );
    expect(ids((await typed(["plan", file, "--json", "--quiet"])).out)).toEqual([]);
  });

  test("--no-drawings leaves out the drawings as files of their own, and nothing else", async () => {
    const { file, out } = jobFolder();
    const all = filesIn(await planned(file, out, []));
    const rest = filesIn(await planned(file, join(out, "rest"), ["--no-drawings"]));
    const isDrawing = (path: string) => /^(?:drawings|rooms)\//.test(path);
    const named = (files: string[], base: string) => files.map((path) => path.slice(base.length + 1)).sort();
    const allNamed = named(all, out);
    expect(allNamed.filter(isDrawing).length).toBeGreaterThan(40);
    expect(named(rest, join(out, "rest"))).toEqual(allNamed.filter((path) => !isDrawing(path)));
  });

  test("the board’s DXF has its true length and depth in millimetres, as the plan beside it tells them", async () => {
    const { file, out } = jobFolder();
    expect((await typed(["plan", file, "--out", out])).code).toBe(0);
    const { board } = JSON.parse(readFileSync(join(out, "plan.json"), "utf8")).shades[0];
    const { header, entities } = readDxf(readFileSync(join(out, "drawings/east/board.dxf"), "utf8"));
    // Group 70 of $INSUNITS: 4 is millimetres (DXF reference, header section).
    expect(header.$INSUNITS).toBe(4);
    const corners = entities.flatMap(({ layer, vertices }) => (layer === "BOARD" ? (vertices ?? []) : []));
    const span = (values: number[]) => Math.max(...values) - Math.min(...values);
    expect(span(corners.map(({ x }) => x))).toBeCloseTo(board.lengthMm, 4);
    expect(span(corners.map(({ y }) => y))).toBeCloseTo(board.depthMm, 4);
  });

  test("writes plan, workbook, lists, and drawings of each shade, and nothing beside them", async () => {
    const { folder, file, out } = jobFolder();
    const { code, err } = await typed(["plan", file, "--out", out]);
    expect(code).toBe(0);
    expect(err).toContain("2 shades planned");
    expect(readdirSync(folder).sort()).toEqual(["job.json", "out"]);
    expect(readdirSync(out).sort()).toEqual([
      "cutting",
      "cutting.json",
      "drawings",
      "lists",
      "plan.json",
      "rooms",
      "workbook.pdf",
    ]);
    expect(readdirSync(join(out, "rooms/room")).sort()).toEqual([
      "room-half.dxf",
      "room-half.svg",
      "room-raised.dxf",
      "room-raised.svg",
      "room.dxf",
      "room.svg",
    ]);
    expect(readdirSync(join(out, "drawings")).sort()).toEqual(["east", "west"]);
    const drawings = readdirSync(join(out, "drawings/east"));
    expect(drawings).toContain("front.svg");
    expect(drawings).toContain("front.dxf");
    expect(readFileSync(join(out, "workbook.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
    expect(readdirSync(join(out, "lists")).length).toBeGreaterThanOrEqual(6);
    for (const path of filesIn(out)) expect(readFileSync(path).length, path).toBeGreaterThan(0);
  });

  test("plan.json is the plan, and follows the published schema", async () => {
    const { file, out } = jobFolder();
    await typed(["plan", file, "--out", out]);
    const written = JSON.parse(readFileSync(join(out, "plan.json"), "utf8"));
    const proven = proveRemedies(twoWindows(), planAndCut(twoWindows()).plan);
    expect(written).toEqual(JSON.parse(JSON.stringify(proven)));
    const follows = new Ajv2020({ strictTuples: false }).compile(
      JSON.parse(readFileSync("schema/shadewright-plan-2.schema.json", "utf8")),
    );
    follows(written);
    expect(follows.errors).toBeNull();
  });

  test("--json prints the plan, and needs no folder", async () => {
    const { code, out } = await typed(["plan", "-", "--json"], jobText(twoWindows()));
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ format: "shadewright-plan", version: 2, jobId: "job" });
  });

  test("--shade plans one window alone", async () => {
    const { file, out } = jobFolder();
    expect((await typed(["plan", file, "--out", out, "--shade", "west"])).code).toBe(0);
    expect(readdirSync(join(out, "drawings"))).toEqual(["west"]);
    const { shades } = JSON.parse(readFileSync(join(out, "plan.json"), "utf8"));
    expect(shades.map(({ shadeId }: { shadeId: string }) => shadeId)).toEqual(["west"]);
  });

  test("a window that is not there is refused with the nearest", async () => {
    const { file, out } = jobFolder();
    const { code, err } = await typed(["plan", file, "--out", out, "--shade", "wets"]);
    expect([code, err]).toEqual([2, expect.stringMatching(/--shade[\s\S]*"wets"[\s\S]*west/)]);
    expect(existsSync(out)).toBe(false);
  });

  test("findings stand on standard error in words, with their severity and source", async () => {
    const job = twoWindows();
    const [window] = job.rooms[0]?.windows ?? [];
    if (window) window.opening.diagonalsMm = [1660, 1720];
    const { err, out } = await typed(["check", "-", "--json"], jobText(job));
    const { findings } = JSON.parse(out);
    expect(findings.length).toBeGreaterThan(0);
    const words = err.replace(/\s+/g, " ");
    for (const { severity, text } of findings) {
      expect(words).toContain(`${severity} ${text}`.replace(/\s+/g, " "));
    }
    expect(err).toContain("Source: ");
  });

  test("the paper is as asked, else as the units have it", async () => {
    // Page size in points: US Letter 8 1/2 × 11 in, A4 210 × 297 mm (ISO 216), 72 points to the inch.
    const { file, folder } = jobFolder();
    const boxOf = (out: string) =>
      /\/MediaBox \[0 0 ([\d.]+)/.exec(readFileSync(join(out, "workbook.pdf"), "latin1"));
    await typed(["plan", file, "--out", join(folder, "a4"), "--shade", "east"]);
    await typed(["plan", file, "--out", join(folder, "letter"), "--shade", "east", "--paper", "letter"]);
    expect(Number(boxOf(join(folder, "a4"))?.[1])).toBeCloseTo((210 / 25.4) * 72, 1);
    expect(Number(boxOf(join(folder, "letter"))?.[1])).toBeCloseTo(8.5 * 72, 1);
  });

  test("one shade of a room in line still follows its neighbours", async () => {
    const job = twoWindows();
    const [room] = job.rooms;
    if (room === undefined) throw new Error("invalid test job: no room");
    const aligned = { ...job, rooms: [{ ...room, inLine: {}, windows: room.windows.map(atHeight) }] };
    const { file } = jobFolder(aligned);
    const alone = await typed(["plan", file, "--json", "--shade", "west"]);
    const whole = await typed(["plan", file, "--json"]);
    const [west] = JSON.parse(alone.out).shades;
    expect(west.grid).toEqual(JSON.parse(whole.out).shades[1].grid);
    expect(west.workings.map(({ id }: { id: string }) => id)).toContain("align.first-row");
  });

  test("a second run takes the place of the first and says what is left of it", async () => {
    const { file, out } = jobFolder();
    await typed(["plan", file, "--out", out]);
    const again = await typed(["plan", file, "--out", out, "--shade", "west"]);
    expect(again.code).toBe(0);
    expect(again.err).toContain("From an earlier run");
    expect(again.err).toContain("drawings/east/");
  });

  test("without --out or --json it is refused", async () => {
    const { file } = jobFolder();
    expect(await typed(["plan", file])).toMatchObject({ code: 2, err: expect.stringContaining("--out") });
  });

  test("the same through the command itself, from standard input", async () => {
    const { out } = jobFolder();
    const ending = await launched(["plan", "-", "--out", out], jobText(twoWindows()));
    expect([ending.code, ending.out]).toEqual([0, ""]);
    expect(existsSync(join(out, "workbook.pdf"))).toBe(true);
  });
});

describe("files are never lost", () => {
  test("a job that is called like the plan is kept", async () => {
    const folder = emptyFolder();
    const file = join(folder, "plan.json");
    writeFileSync(file, jobText(twoWindows()));
    const { code, err } = await typed(["plan", file, "--out", folder]);
    expect([code, err]).toEqual([2, expect.stringContaining("job file")]);
    expect(readFileSync(file, "utf8")).toBe(jobText(twoWindows()));
    expect(readdirSync(folder)).toEqual(["plan.json"]);
  });

  test("another job in the folder is kept too, even a broken one", async () => {
    const { file, out } = jobFolder();
    mkdirSync(out);
    const broken = `{ "format" : "shadewright-job", "version": 1, `;
    writeFileSync(join(out, "plan.json"), broken);
    expect((await typed(["plan", file, "--out", out])).code).toBe(2);
    expect(readFileSync(join(out, "plan.json"), "utf8")).toBe(broken);
    expect(readdirSync(out)).toEqual(["plan.json"]);
  });

  test("a job that is reached by a link is kept", async () => {
    const { file, folder, out } = jobFolder();
    mkdirSync(join(out, "lists"), { recursive: true });
    const listed = readdirSync(join(folder));
    expect(listed).toContain("job.json");
    symlinkSync(file, join(out, "plan.json"));
    expect((await typed(["plan", file, "--out", out])).code).toBe(2);
    expect(readFileSync(file, "utf8")).toBe(jobText(twoWindows()));
  });

  test.each([
    ["a folder that is a file", (folder: string) => join(folder, "job.json")],
    ["a folder inside a file", (folder: string) => join(folder, "job.json", "out")],
    ["a name with a zero byte", (folder: string) => join(folder, "a\u0000b")],
    ["a name that is too long", (folder: string) => join(folder, "x".repeat(300))],
  ])("%s is refused by its option", async (_what, outOf) => {
    const { folder, file } = jobFolder();
    const { code, err } = await typed(["plan", file, "--out", outOf(folder)]);
    expect([code, err]).toEqual([2, expect.stringContaining("--out")]);
    expect(readdirSync(folder)).toEqual(["job.json"]);
  });

  test.each([
    ["that is not there", (folder: string) => join(folder, "none.json"), "exists"],
    ["that is a folder", (folder: string) => folder, "folder"],
  ])("a job %s is refused", async (_what, fileOf, word) => {
    const { folder } = jobFolder();
    const { code, err } = await typed(["check", fileOf(folder)]);
    expect([code, err]).toEqual([2, expect.stringContaining(word)]);
  });
});

// The widest type at hand has Latin, Greek and Cyrillic letters: what else a name is written in is told of.
test("letters that cannot be printed are named, and the others are not", async () => {
  const folder = emptyFolder();
  const job = (name: string) => {
    const windows = [{ id: "w", name, opening: { widthsMm: [900], heightsMm: [1400] } }];
    return JSON.stringify({
      format: "shadewright-job",
      version: 1,
      id: "j",
      name: "Job",
      rooms: [{ id: "r", name: "R", windows }],
    });
  };
  const plain = await typed(
    ["plan", "-", "--out", folder, "--print", "tag"],
    job("Küche, Спальня, Phòng ngủ, Ελλάδα"),
  );
  expect(plain.err).not.toContain("no shape");
  const other = await typed(["plan", "-", "--out", folder, "--print", "tag"], job("寝室 חדר"));
  expect(other.err.replace(/\s+/g, " ")).toContain(
    "no shape for: 寝 室 ח ד ר. On paper and in drawings each is □",
  );
});

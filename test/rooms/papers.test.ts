import { type ChildProcess, spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { bossQueue, openPostgres } from "../../src/server/index.ts";
import { STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

const COMMAND = [process.execPath, resolve("bin/shadewright.mjs")];

describe.each(STORES)("papers on $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("made by a worker", () => {
    let here: TestWorkroom;
    let owner: TestPerson;
    let queue: ReturnType<typeof bossQueue>;
    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom();
      queue = bossQueue(here.room.door, { workers: 1, command: COMMAND });
      here.room.queue = queue;
    });
    afterAll(async () => {
      await queue.close();
      await here.close();
    });

    const done = async (job: string, paper: string) => {
      for (;;) {
        const { papers } = (await owner.ask("papers", { params: { job } }, 200)).body;
        const one = papers.find(({ id }: { id: string }) => id === paper);
        if (one.state === "done" || one.state === "failed") return one;
        await new Promise((go) => setTimeout(go, 200));
      }
    };

    test("a workbook comes as PDF, once however often it is asked for; pictures for the client as one, too; a cutting plan as JSON", async () => {
      const { id } = await owner.makeJob();
      const [workbook, pictures, cutting] = [randomUUID(), randomUUID(), randomUUID()];
      for (const one of [workbook, workbook]) {
        await owner.ask("askForPaper", { params: { job: id }, body: { id: one, kind: "workbook" } }, 201);
      }
      for (const [one, kind] of [
        [pictures, "pictures"],
        [cutting, "cutting"],
      ])
        await owner.ask("askForPaper", { params: { job: id }, body: { id: one, kind } }, 201);
      expect(await done(id, workbook)).toMatchObject({ state: "done", version: 0 });
      const pdf = await owner.ask("paperFile", { params: { paper: workbook } }, 200);
      expect(pdf.headers.get("content-type")).toBe("application/pdf");
      expect(pdf.body.slice(0, 5)).toBe("%PDF-");
      expect(await done(id, pictures)).toMatchObject({ state: "done" });
      const shown = await owner.ask("paperFile", { params: { paper: pictures } }, 200);
      expect(shown.headers.get("content-disposition")).toContain(`${id}-pictures.pdf`);
      expect(shown.body.slice(0, 5)).toBe("%PDF-");
      expect(shown.body.length).toBeLessThan(pdf.body.length);
      expect(await done(id, cutting)).toMatchObject({ state: "done" });
      const plan = await owner.ask("paperFile", { params: { paper: cutting } }, 200);
      expect(plan.body).toMatchObject({ format: "shadewright-cutting", jobId: id });
      const { papers } = (await owner.ask("papers", { params: { job: id } }, 200)).body;
      expect(papers.length).toBe(3);
    });
  });
});

describe("a worker that is killed", () => {
  const folder = mkdtempSync(join(tmpdir(), "shadewright-papers-"));
  const children = new Set<ChildProcess>();
  afterAll(() => {
    for (const child of children) child.kill("SIGKILL");
    rmSync(folder, { recursive: true, force: true });
  });

  /** A server process with one worker, whose papers are made by a program that notes when it begins. */
  async function worker(name: string, isSlow: boolean): Promise<ChildProcess> {
    const program = join(folder, `${name}.mjs`);
    const begun = JSON.stringify(join(folder, "begun"));
    writeFileSync(
      program,
      `import { appendFileSync, writeFileSync } from "node:fs";
      appendFileSync(${begun}, "${name}\\n");
      writeFileSync(${begun} + "-with", Object.keys(process.env).join(" "));
      process.stdin.resume();
      const { ppid } = process;
      setInterval(() => { if (process.ppid !== ppid) process.exit(1); }, 200).unref();
      setTimeout(() => { writeFileSync("workbook.pdf", "%PDF- by ${name}"); process.exit(0); }, ${isSlow ? 600_000 : 50});`,
    );
    const papers = { workers: 1, command: [process.execPath, program], expiresS: 3, lookEveryS: 1 };
    const child = spawn(
      process.execPath,
      [resolve("test/rooms/server-process.mjs"), join(folder, name), JSON.stringify(papers)],
      { env: { ...process.env, DATABASE_URL: inject("postgresUrl") }, stdio: ["ignore", "pipe", "inherit"] },
    );
    children.add(child);
    await new Promise((done) => child.stdout?.once("data", done));
    return child;
  }
  const begun = () => {
    try {
      return readFileSync(join(folder, "begun"), "utf8").trim().split("\n");
    } catch {
      return [];
    }
  };

  test.skipIf(inject("postgresUrl") === "")(
    "on PostgreSQL: its paper is taken up by another and made, once",
    async () => {
      const first = await worker("killed", true);
      const here = new TestWorkroom(await openPostgres(inject("postgresUrl")));
      const queue = bossQueue(here.room.door, { workers: 0, command: [], expiresS: 3, lookEveryS: 1 });
      here.room.queue = queue;
      const owner = await here.workroom();
      const { id } = await owner.makeJob();
      const paper = randomUUID();
      const body = { id: paper, kind: "workbook" };
      await owner.ask("askForPaper", { params: { job: id }, body }, 201);
      while (!begun().includes("killed")) await new Promise((go) => setTimeout(go, 50));
      first.kill("SIGKILL");
      const paperNow = async () => (await owner.ask("papers", { params: { job: id } }, 200)).body.papers;
      expect((await paperNow())[0].state).toBe("in-hand");
      await worker("other", false);
      while ((await paperNow())[0].state !== "done") await new Promise((go) => setTimeout(go, 200));
      const file = await owner.ask("paperFile", { params: { paper } }, 200);
      expect(file.body).toBe("%PDF- by other");
      expect(begun()).toEqual(["killed", "other"]);
      // Neither the address of the database nor anything else of the server's surroundings.
      const given = readFileSync(join(folder, "begun-with"), "utf8").split(" ");
      expect(given.filter((name) => !["PATH", "NODE_OPTIONS"].includes(name))).toEqual([]);
      expect((await paperNow()).length).toBe(1);
      await queue.close();
      await here.close();
    },
  );
});

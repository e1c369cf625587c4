import { randomUUID } from "node:crypto";
import { resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bossQueue } from "../../src/server/index.ts";
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

    test("a workbook comes as PDF, once however often it is asked for; a cutting plan as JSON", async () => {
      const { id } = await owner.makeJob();
      const [workbook, cutting] = [randomUUID(), randomUUID()];
      for (const one of [workbook, workbook]) {
        await owner.ask("askForPaper", { params: { job: id }, body: { id: one, kind: "workbook" } }, 201);
      }
      await owner.ask("askForPaper", { params: { job: id }, body: { id: cutting, kind: "cutting" } }, 201);
      expect(await done(id, workbook)).toMatchObject({ state: "done", version: 0 });
      const pdf = await owner.ask("paperFile", { params: { paper: workbook } }, 200);
      expect(pdf.headers.get("content-type")).toBe("application/pdf");
      expect(pdf.body.slice(0, 5)).toBe("%PDF-");
      expect(await done(id, cutting)).toMatchObject({ state: "done" });
      const plan = await owner.ask("paperFile", { params: { paper: cutting } }, 200);
      expect(plan.body).toMatchObject({ format: "shadewright-cutting", jobId: id });
      const { papers } = (await owner.ask("papers", { params: { job: id } }, 200)).body;
      expect(papers.length).toBe(2);
    });
  });
});

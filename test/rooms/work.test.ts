import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openJobText } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { SHOP_ID, type WorkChange } from "../../src/workroom/protocol/index.ts";
import { nameOf, STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

describe.each(STORES)("work in hand, stock and clients on $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("the contract", () => {
    let here: TestWorkroom;
    let owner: TestPerson;
    let fitter: TestPerson;
    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom();
      fitter = await here.joined(owner, "fitter");
    });
    afterAll(() => here.close());

    const changeOf = (jobId: string, change: Partial<WorkChange>): WorkChange => ({
      id: randomUUID(),
      jobId,
      windowId: "w1",
      at: "2026-01-31T08:00:00.000Z",
      ...change,
    });

    test("state, due day and who has it: what is left out stays, null takes away, twice is once", async () => {
      const { id } = await owner.makeJob();
      const first = changeOf(id, { state: "cut", due: "2026-05-31", holder: fitter.id });
      await owner.ask("changeWork", { body: { changes: [first] } }, 200);
      const second = changeOf(id, { state: "sewn", due: null });
      await fitter.ask("changeWork", { body: { changes: [second, first, second] } }, 200);
      const { shades } = (await owner.ask("work", {}, 200)).body;
      const one = shades.find(({ jobId }: { jobId: string }) => jobId === id);
      expect(one).toEqual({
        jobId: id,
        windowId: "w1",
        state: "sewn",
        holder: fitter.id,
        changedBy: fitter.id,
        changedAt: expect.any(String),
      });
      const { entries } = (await owner.ask("workOfShade", { params: { job: id, window: "w1" } }, 200)).body;
      expect(entries.map(({ person, state }: { person: string; state: string }) => [person, state])).toEqual([
        [fitter.id, "sewn"],
        [owner.id, "cut"],
      ]);
    });

    test("a state that there is not, or a holder from elsewhere, is refused by field", async () => {
      const { id } = await owner.makeJob();
      const strange = await owner.ask("changeWork", {
        body: { changes: [changeOf(id, { holder: randomUUID() })] },
      });
      expect([strange.status, strange.body.issues[0].field]).toEqual([400, "holder"]);
      const none = await owner.ask("changeWork", {
        body: { changes: [{ ...changeOf(id, {}), state: "lost" }] },
      });
      expect([none.status, none.body.issues[0].field]).toEqual([400, "changes[0].state"]);
    });

    test("the code on a label leads to its shade, the same for all who ask, for who may see the job alone", async () => {
      const { id } = await owner.makeJob();
      const labels = async (person: TestPerson, windows: string[]) =>
        (await person.ask("makeLabels", { params: { job: id }, body: { windows } }, 201)).body.labels;
      const [first, again] = [await labels(owner, ["w1"]), await labels(fitter, ["w2", "w1", "gone"])];
      expect(first).toEqual([{ code: expect.stringMatching(/^[2-9a-z]{6}$/), jobId: id, windowId: "w1" }]);
      expect(again).toContainEqual(first[0]);
      expect(new Set(again.map(({ code }: { code: string }) => code)).size).toBe(2);
      const typed = `${first[0].code.slice(0, 3)} ${first[0].code.slice(3)}`.toUpperCase();
      expect((await fitter.ask("label", { params: { code: typed } }, 200)).body).toEqual(first[0]);
      const pupil = await here.joined(owner, "class");
      const elsewhere = await here.workroom();
      expect((await elsewhere.ask("label", { params: { code: first[0].code } })).status).toBe(404);
      expect((await (await here.nobody()).ask("label", { params: { code: first[0].code } })).status).toBe(
        401,
      );
      expect((await pupil.ask("label", { params: { code: first[0].code } })).status).toBe(200);
      expect((await owner.ask("label", { params: { code: "none" } })).status).toBe(404);
      await owner.ask("binJob", { params: { job: id } }, 200);
      expect((await owner.ask("label", { params: { code: first[0].code } })).status).toBe(410);
    });

    describe("the shop's stock", () => {
      const bolt = { id: "bolt-1", cloth: "plain-cotton", lengthMm: 5000 };
      const remnant = { id: "remnant-1", cloth: "plain-cotton", widthMm: 900, lengthMm: 1200 };
      beforeAll(async () => {
        const shop = (await owner.ask("job", { params: { job: SHOP_ID } }, 200)).body;
        const { answers } = await owner.send(SHOP_ID, shop.version, {
          path: ["stock", "cloth"],
          to: [bolt, remnant],
        });
        expect(answers[0]).toMatchObject({ ok: true });
      });

      const reserve = async (jobId: string, items: unknown[]) =>
        await owner.ask("reserve", { params: { job: jobId }, body: { items } });

      test("two jobs that want one remnant at once: one gets it", async () => {
        const jobs = [await owner.makeJob(), await owner.makeJob(), await owner.makeJob()];
        const told = await Promise.all(jobs.map(({ id }) => reserve(id, [{ stock: "remnant-1" }])));
        expect(told.map(({ status }) => status).sort()).toEqual([200, 409, 409]);
        const refused = told.find(({ status }) => status === 409);
        const winner = jobs[told.findIndex(({ status }) => status === 200)];
        expect(refused?.body.issues[0]).toMatchObject({ field: "items[0].lengthMm", given: "1200 mm" });
        expect(refused?.body.issues[0].wanted).toContain(winner?.id);
        await reserve(String(winner?.id), []);
      });

      test("a bolt is shared by length up to its end, and what a job gives up is free again", async () => {
        const [one, two] = [await owner.makeJob(), await owner.makeJob()];
        expect((await reserve(one.id, [{ stock: "bolt-1", lengthMm: 3000 }])).status).toBe(200);
        expect((await reserve(two.id, [{ stock: "bolt-1", lengthMm: 2000.5 }])).status).toBe(409);
        expect((await reserve(two.id, [{ stock: "bolt-1", lengthMm: 2000 }])).status).toBe(200);
        expect((await reserve(one.id, [{ stock: "bolt-1", lengthMm: 3001 }])).status).toBe(409);
        const { reservations } = (await owner.ask("reservations", {}, 200)).body;
        expect(
          reservations
            .map(({ jobId, lengthMm }: { jobId: string; lengthMm: number }) => [jobId, lengthMm])
            .sort(),
        ).toEqual(
          [
            [one.id, 3000],
            [two.id, 2000],
          ].sort(),
        );
        await owner.ask("binJob", { params: { job: one.id } }, 200);
        expect((await reserve(two.id, [{ stock: "bolt-1" }])).status).toBe(200);
        await reserve(two.id, []);
      });

      test("what the shop does not have is promised to nobody", async () => {
        const { id } = await owner.makeJob();
        const told = await reserve(id, [{ stock: "no-such-bolt" }]);
        expect([told.status, told.body.issues[0].field]).toEqual([409, "items[0].stock"]);
      });
    });

    describe("a client's page", () => {
      let job: { id: string };
      beforeAll(async () => {
        const opened = openJobText(readFileSync("examples/lantern-row.json", "utf8"));
        if (!opened.ok) throw new Error("the demonstration does not open");
        const demo = opened.job;
        const prices = Object.fromEntries(plan(demo).cost.shopping.map(({ id }) => [id, 7]));
        job = await owner.makeJob({
          ...demo,
          id: "for-a-client",
          note: "INTERNAL NOTE",
          rates: { ...demo.rates, prices },
          offer: { ...demo.offer, markUpShare: 0.371_93, maker: "Maker" },
        });
      });
      const linkOf = async () =>
        (await owner.ask("makeClientLink", { params: { job: job.id }, body: {} }, 201)).body;
      const look = async (token: string) =>
        await (await here.nobody()).ask("clientLook", { body: { token } });

      test("shows each shade with picture and price, cautions about cords, and nothing internal", async () => {
        const { body } = await look((await linkOf()).token);
        expect(body.shades.length).toBeGreaterThan(2);
        for (const { svg, price } of body.shades) {
          expect(svg).toMatch(/^<svg /);
          // How it was drawn is its maker's.
          expect(svg).not.toMatch(/<text[^>]*>(?:Picture|As it hangs)/);
          expect(price).toMatch(/^\d+\.\d\d/);
        }
        expect(body.cautions.join(" ")).toMatch(/cord/i);
        const text = JSON.stringify(body);
        for (const inner of [
          "INTERNAL NOTE",
          "0.37193",
          owner.id,
          owner.workroomId,
          "labour",
          "workings",
          "finding",
        ]) {
          expect(text).not.toContain(inner);
        }
      });

      test("stays as it was when the job goes on, and is accepted once", async () => {
        const { token, link } = await linkOf();
        const before = (await look(token)).body;
        const held = (await owner.ask("job", { params: { job: job.id } }, 200)).body;
        const room = held.job.rooms[0];
        const window = room.windows[0];
        const change = {
          ...nameOf(window.id, window.name, "Renamed"),
          path: ["rooms", { id: room.id }, "windows", { id: window.id }, "name"],
        };
        await owner.send(job.id, held.version, change);
        expect((await look(token)).body).toEqual(before);
        const accept = async (name: string) =>
          (await (await here.nobody()).ask("clientAccept", { body: { token, name } }, 200)).body;
        expect((await accept("A. Client")).acceptedBy).toBe("A. Client");
        expect((await accept("Someone else")).acceptedBy).toBe("A. Client");
        const { links } = (await owner.ask("clientLinks", { params: { job: job.id } }, 200)).body;
        expect(links.find(({ id }: { id: string }) => id === link.id).acceptedBy).toBe("A. Client");
      });

      test("goes when its link is taken back, and with the job into the bin", async () => {
        const { token, link } = await linkOf();
        await owner.ask("takeBackClientLink", { params: { link: link.id } }, 200);
        expect((await look(token)).status).toBe(404);
        const other = await linkOf();
        await owner.ask("binJob", { params: { job: job.id } }, 200);
        expect((await look(other.token)).status).toBe(404);
        await owner.ask("putBackJob", { params: { job: job.id } }, 200);
      });

      test("is not made where something has no price", async () => {
        const { id } = await owner.makeJob();
        const told = await owner.ask("makeClientLink", { params: { job: id }, body: {} });
        expect([told.status, told.body.refused]).toEqual([409, expect.stringContaining("price")]);
      });
    });
  });
});

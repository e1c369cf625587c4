import { randomUUID } from "node:crypto";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Job } from "../../src/job/index.ts";
import type { FieldChange, Json, Reservation } from "../../src/workroom/protocol/index.ts";
import { SHOP_ID } from "../../src/workroom/protocol/index.ts";
import { STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

const BOLT_MM = 5000;

/** What a job says that it has cut off a bolt, in place of what it said before. */
function cutOf(bolt: string, from: number | undefined, cutMm: number | undefined): FieldChange {
  const of = (mm: number) => ({
    cloth: "plain-cotton",
    boughtMm: 0,
    pieces: [],
    bolts: [{ bolt, cutMm: mm }],
  });
  return {
    path: ["cutCloth", { id: "plain-cotton" }],
    ...(from === undefined ? {} : { from: of(from) }),
    ...(cutMm === undefined ? {} : { to: of(cutMm) }),
  };
}

describe.each(STORES)("stock of the shop on $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("promised by length", () => {
    let here: TestWorkroom;
    let there: TestWorkroom;
    let owner: TestPerson;
    beforeAll(async () => {
      here = new TestWorkroom(await open());
      // Two server processes where the database takes two.
      there = here.store.kind === "postgres" ? new TestWorkroom(await open()) : here;
      owner = await here.workroom();
    });
    afterAll(async () => {
      if (there !== here) await there.close();
      await here.close();
    });

    /** A bolt and a remnant of their own, in the shop. */
    async function stocked(): Promise<{ bolt: string; remnant: string }> {
      const [bolt, remnant] = [`bolt-${randomUUID().slice(0, 8)}`, `end-${randomUUID().slice(0, 8)}`];
      const shop = await shopNow();
      const made: ({ id: string } & { [key: string]: Json })[] = [
        { id: bolt, cloth: "plain-cotton", lengthMm: BOLT_MM },
        { id: remnant, cloth: "plain-cotton", lengthMm: 1200, widthMm: 900 },
      ];
      const { answers } = await owner.send(
        SHOP_ID,
        shop.version,
        ...made.map((to): FieldChange => ({ path: ["stock", "cloth", { id: to.id }], to })),
      );
      expect(answers[0]).toMatchObject({ ok: true });
      return { bolt, remnant };
    }
    const shopNow = async (): Promise<{ job: Job; version: number }> =>
      (await owner.ask("job", { params: { job: SHOP_ID } }, 200)).body;
    const lengthOf = async (id: string) =>
      (await shopNow()).job.stock.cloth?.find((piece) => piece.id === id)?.lengthMm;
    const reserve = async (jobId: string, items: unknown[], by = owner) =>
      (await by.ask("reserve", { params: { job: jobId }, body: { items } })).status;
    const promisesOf = async (stock: string): Promise<Reservation[]> =>
      (await owner.ask("reservations", {}, 200)).body.reservations.filter(
        (one: Reservation) => one.stock === stock,
      );

    test("a remnant is not shared by length, nor is cloth whose flaws or pattern have their place", async () => {
      const { remnant } = await stocked();
      const shop = await shopNow();
      const flawed = {
        id: `flawed-${randomUUID().slice(0, 8)}`,
        cloth: "plain-cotton",
        lengthMm: BOLT_MM,
        flaws: [{ fromMm: 700, lengthMm: 20 }],
      };
      await owner.send(SHOP_ID, shop.version, { path: ["stock", "cloth", { id: flawed.id }], to: flawed });
      const { id } = await owner.makeJob();
      expect(await reserve(id, [{ stock: remnant, lengthMm: 500 }])).toBe(409);
      expect(await reserve(id, [{ stock: flawed.id, lengthMm: 500 }])).toBe(409);
      expect(await reserve(id, [{ stock: remnant }, { stock: flawed.id }])).toBe(200);
    });

    test("what a job cuts off its bolt is gone from the shop's, and there again when that is undone", async () => {
      const { bolt } = await stocked();
      const [one, two] = [await owner.makeJob(), await owner.makeJob()];
      expect(await reserve(one.id, [{ stock: bolt, lengthMm: 2000 }])).toBe(200);
      expect(await reserve(two.id, [{ stock: bolt, lengthMm: 3000 }])).toBe(200);
      await owner.send(one.id, 0, cutOf(bolt, undefined, 1500));
      expect(await lengthOf(bolt)).toBe(3500);
      expect((await promisesOf(bolt)).map(({ lengthMm }) => lengthMm).sort()).toEqual([3000, 500]);
      // The same length is nobody's twice: what is cut counts no more, what is left of the promises does.
      expect(await reserve(one.id, [{ stock: bolt, lengthMm: 501 }])).toBe(409);
      expect(await reserve(one.id, [])).toBe(200);
      expect((await promisesOf(bolt)).map(({ jobId }) => jobId)).toEqual([two.id]);
      await owner.send(one.id, 1, cutOf(bolt, 1500, undefined));
      expect(await lengthOf(bolt)).toBe(5000);
      expect(await reserve(one.id, [{ stock: bolt, lengthMm: 2000 }])).toBe(200);
    });

    test("a cut is taken off once, however often its edit is sent, and a restored state gives it back", async () => {
      const { bolt } = await stocked();
      const { id } = await owner.makeJob();
      await reserve(id, [{ stock: bolt, lengthMm: 4000 }]);
      const at = "2026-01-31T08:00:00.000Z";
      const operation = {
        id: randomUUID(),
        jobId: id,
        baseVersion: 0,
        at,
        changes: [cutOf(bolt, undefined, 1000)],
      };
      for (let time = 0; time < 3; time++) await owner.sendAll(id, [operation]);
      expect(await lengthOf(bolt)).toBe(4000);
      await owner.ask(
        "restoreJob",
        { params: { job: id }, body: { operation: randomUUID(), version: 0 } },
        200,
      );
      expect(await lengthOf(bolt)).toBe(5000);
    });

    test("a piece that is used up leaves the shop, and a job of which nothing is promised cuts nothing off it", async () => {
      const { bolt, remnant } = await stocked();
      const [one, two] = [await owner.makeJob(), await owner.makeJob()];
      await reserve(one.id, [{ stock: remnant }]);
      await owner.send(one.id, 0, cutOf(remnant, undefined, 1200));
      expect(await lengthOf(remnant)).toBeUndefined();
      await owner.send(two.id, 0, cutOf(bolt, undefined, 1200));
      expect(await lengthOf(bolt)).toBe(BOLT_MM);
    });

    test("what is left when all of a job is cut lies in the shop with its cloth, and is gone again once that is undone", async () => {
      const { bolt, remnant } = await stocked();
      const [one, two] = [await owner.makeJob(), await owner.makeJob()];
      const cloth = { id: `own-${randomUUID().slice(0, 8)}`, name: "Own cloth" };
      const end = { id: `left-${randomUUID().slice(0, 8)}`, cloth: cloth.id, lengthMm: 700, lot: "7" };
      await reserve(one.id, [{ stock: bolt, lengthMm: 2000 }, { stock: remnant }]);
      const { job } = (await owner.ask("job", { params: { job: one.id } }, 200)).body;
      const { answers } = await owner.send(
        one.id,
        0,
        { path: ["cloths", { id: cloth.id }], to: cloth },
        { path: ["stock", "cloth"], ...(job.stock.cloth && { from: job.stock.cloth }), to: [] },
        {
          path: ["cutCloth", { id: "plain-cotton" }],
          to: {
            ...{ cloth: "plain-cotton", boughtMm: 0, pieces: [] },
            bolts: [
              { bolt, cutMm: 1500 },
              { bolt: remnant, cutMm: 1200 },
            ],
          },
        },
        { path: ["leftOver"], to: { cloth: [end] } },
      );
      expect(answers[0]).toMatchObject({ ok: true });
      expect([await lengthOf(bolt), await lengthOf(remnant), await lengthOf(end.id)]).toEqual([
        ...[3500, undefined, 700],
      ]);
      expect((await shopNow()).job.cloths).toContainEqual(expect.objectContaining(cloth));
      // It is a piece like any other: another job can have it, and keeps it when the cut is undone.
      expect(await reserve(two.id, [{ stock: end.id }])).toBe(200);
      const restore = (operation: string) =>
        owner.ask("restoreJob", { params: { job: one.id }, body: { operation, version: 0 } }, 200);
      await restore(randomUUID());
      expect([await lengthOf(bolt), await lengthOf(end.id)]).toEqual([5000, 700]);
      await owner.ask(
        "restoreJob",
        { params: { job: one.id }, body: { operation: randomUUID(), version: 1 } },
        200,
      );
      expect(await reserve(two.id, [])).toBe(200);
      await restore(randomUUID());
      expect(await lengthOf(end.id)).toBeUndefined();
    });

    test("however requests fall together, no length and no remnant is promised twice", async () => {
      const step = fc.record({
        job: fc.nat(3),
        isThere: fc.boolean(),
        lengthMm: fc.option(fc.integer({ min: 1, max: 6000 }), { nil: undefined }),
        withRemnant: fc.boolean(),
        isNothing: fc.boolean(),
      });
      const jobs = await Promise.all(Array.from({ length: 4 }, () => owner.makeJob()));
      const far = owner.from(there);
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.array(step, { minLength: 2, maxLength: 6 }), { maxLength: 4 }),
          async (batches) => {
            const { bolt, remnant } = await stocked();
            for (const batch of batches) {
              const told = await Promise.all(
                batch.map(({ job, isThere: isFar, lengthMm, withRemnant, isNothing }) => {
                  const items = [
                    { stock: bolt, ...(lengthMm === undefined ? {} : { lengthMm }) },
                    ...(withRemnant ? [{ stock: remnant }] : []),
                  ];
                  return reserve(jobs[job]?.id ?? "", isNothing ? [] : items, isFar ? far : owner);
                }),
              );
              expect(told.every((status) => status === 200 || status === 409)).toBe(true);
              const sum = (await promisesOf(bolt)).reduce((mm, one) => mm + (one.lengthMm ?? BOLT_MM), 0);
              expect(sum).toBeLessThanOrEqual(BOLT_MM);
              expect((await promisesOf(remnant)).length).toBeLessThanOrEqual(1);
            }
            for (const { id } of jobs) await reserve(id, []);
          },
        ),
        { numRuns: 12 },
      );
    });
  });
});

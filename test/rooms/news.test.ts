import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type News, SHOP_ID } from "../../src/workroom/protocol/index.ts";
import { nameOf, STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

/** What a browser hears of the stream, as it comes. */
class Ear {
  readonly heard: { news: News; atMs: number }[] = [];
  isOver = false;
  #stop = () => {};

  async listen(person: TestPerson): Promise<void> {
    const aborting = new AbortController();
    this.#stop = () => aborting.abort();
    const response = await person.at.app.request("http://localhost/api/news/stream", {
      headers: { host: "localhost", cookie: person.cookie },
      signal: aborting.signal,
    });
    expect([response.status, response.headers.get("content-type")]).toEqual([200, "text/event-stream"]);
    void this.#read(response);
    await this.until(({ heard }) => heard.length > 0);
  }

  async #read(response: Response): Promise<void> {
    let text = "";
    try {
      for await (const part of response.body as unknown as AsyncIterable<Uint8Array>) {
        text += new TextDecoder().decode(part);
        const events = text.split("\n\n");
        text = events.pop() ?? "";
        for (const event of events) {
          if (event.startsWith("data:"))
            this.heard.push({ news: JSON.parse(event.slice(5)), atMs: Date.now() });
        }
      }
    } catch {}
    this.isOver = true;
  }

  async until(is: (ear: Ear) => boolean): Promise<void> {
    while (!is(this)) await new Promise((go) => setTimeout(go, 10));
  }

  has(jobId: string, version: number): boolean {
    return this.heard.some(({ news }) =>
      news.jobs.some((one) => one.id === jobId && one.version === version),
    );
  }

  stop(): void {
    this.#stop();
  }
}

describe.each(STORES)("news on $title", ({ title, isThere, open }) => {
  describe.skipIf(!isThere)("reach other screens", () => {
    let here: TestWorkroom;
    let there: TestWorkroom;
    let owner: TestPerson;
    let maker: TestPerson;
    beforeAll(async () => {
      here = new TestWorkroom(await open());
      // On PostgreSQL a second process; the embedded database has one.
      there = new TestWorkroom(title === "PostgreSQL" ? await open() : here.store);
      owner = await here.workroom();
      maker = (await here.joined(owner, "maker")).from(there);
    });
    afterAll(async () => {
      there.room.news.close();
      if (there.store !== here.store) await there.store.close();
      await here.close();
    });

    test("an edit is told to the other process within a second, and to nobody of another workroom", async () => {
      const { id } = await owner.makeJob();
      const stranger = await there.workroom();
      const [ear, strange] = [new Ear(), new Ear()];
      await ear.listen(maker);
      await strange.listen(stranger);
      await ear.until(() => ear.has(id, 0));
      const sentMs = Date.now();
      await owner.send(id, 0, nameOf("w1", "Window 1", "East"));
      await ear.until(() => ear.has(id, 1));
      // Slow machines take longer over the edit itself: the poll behind, at five seconds, is what it must not wait for.
      expect(Date.now() - sentMs).toBeLessThan(3000);
      expect(JSON.stringify(strange.heard)).not.toContain(id);
      ear.stop();
      strange.stop();
    });

    test("a job that comes, is binned and put back changes the shelf; work in hand is told; so is who is here", async () => {
      const ear = new Ear();
      await ear.listen(maker);
      const { id } = await owner.makeJob();
      await ear.until(({ heard }) =>
        heard.some(({ news }) => news.isShelfChanged && news.jobs.some((one) => one.id === id)),
      );
      const from = ear.heard.length;
      await owner.ask("binJob", { params: { job: id } }, 200);
      await ear.until(({ heard }) => heard.slice(from).some(({ news }) => news.isShelfChanged));
      await owner.ask("putBackJob", { params: { job: id } }, 200);
      const at = "2026-01-31T08:00:00.000Z";
      const change = {
        id: "00000000-0000-4000-8000-000000000001",
        jobId: id,
        windowId: "w1",
        at,
        state: "cut",
      };
      await owner.ask("changeWork", { body: { changes: [change] } }, 200);
      await ear.until(({ heard }) => heard.some(({ news }) => news.isWorkChanged));
      const bolt = { id: "bolt-1", cloth: "plain-cotton", lengthMm: 5000 };
      const shop = (await owner.ask("job", { params: { job: SHOP_ID } }, 200)).body;
      await owner.send(SHOP_ID, shop.version, { path: ["stock", "cloth"], to: [bolt] });
      await ear.until(({ heard }) => heard.some(({ news }) => news.jobs.some((one) => one.id === SHOP_ID)));
      for (const items of [[{ stock: bolt.id }], []]) {
        const from = ear.heard.length;
        await owner.ask("reserve", { params: { job: id }, body: { items } }, 200);
        await ear.until(({ heard }) =>
          heard.slice(from).some(({ news }) => news.jobs.some((one) => one.id === SHOP_ID)),
        );
      }
      await owner.ask("presence", { body: { jobId: id, windowId: "w1" } }, 200);
      const here = { session: owner.session, person: owner.id, jobId: id, windowId: "w1" };
      await ear.until(({ heard }) =>
        heard.some(({ news }) => news.here.some((one) => one.windowId === "w1")),
      );
      expect(ear.heard.at(-1)?.news.here).toEqual([here]);
      ear.stop();
    });

    test("a stream ends with its session", async () => {
      const viewer = (await here.joined(owner, "viewer")).from(there);
      const ear = new Ear();
      await ear.listen(viewer);
      await owner.ask("endSession", { params: { session: viewer.session } }, 200);
      await ear.until(({ isOver }) => isOver);
    });

    test("where no stream gets through, the same is told to who asks", async () => {
      const { now } = (await maker.ask("news", {}, 200)).body;
      const { id } = await owner.makeJob();
      const { body } = await maker.ask("news", { query: { since: now } }, 200);
      expect(body.jobs).toContainEqual({ id, version: 0 });
      expect((await maker.ask("news", { query: { since: "yesterday" } })).status).toBe(400);
    });
  });
});

import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  may,
  PERSON_ROLES,
  type PersonRole,
  ROUTES,
  type Route,
  type RouteName,
  SHOP_ID,
} from "../../src/workroom/protocol/index.ts";
import {
  type Asking,
  jobOf,
  nameOf,
  operationOf,
  PASSWORD,
  STORES,
  type TestPerson,
  TestWorkroom,
} from "./room-for-tests.ts";

/** Everything that a route could be asked about, of the first workroom. */
interface Things {
  job: string;
  binned: string;
  person: string;
  session: string;
  invitation: string;
  link: string;
  code: string;
  paper: string;
}

/** A request of each route that would go through, from who may do it. */
const REQUESTS: Record<Exclude<RouteName, OpenRoute>, (things: Things, self: TestPerson) => Asking> = {
  signOut: () => ({}),
  password: () => ({ body: { current: PASSWORD, password: PASSWORD } }),
  recoveryCodes: () => ({}),
  sessions: () => ({}),
  endSession: (_things, self) => ({ params: { session: self.session } }),
  passkeys: () => ({}),
  passkeyOptions: () => ({}),
  addPasskey: () => ({ body: { challenge: randomUUID(), name: "Key", response: { id: "x" } } }),
  removePasskey: () => ({ params: { passkey: "none" } }),
  people: () => ({}),
  changePerson: ({ person }) => ({ params: { person }, body: { name: "Another name" } }),
  recoverPerson: ({ person }) => ({ params: { person } }),
  invitations: () => ({}),
  invite: () => ({ body: { role: "viewer" } }),
  takeBackInvitation: ({ invitation }) => ({ params: { invitation } }),
  audit: () => ({}),
  shelf: () => ({}),
  bin: () => ({}),
  wholeShelf: () => ({}),
  makeJob: () => ({ body: { request: randomUUID(), job: jobOf() } }),
  job: ({ job }) => ({ params: { job } }),
  copyJob: ({ job }) => ({
    params: { job },
    body: { request: randomUUID(), id: `copy-${randomUUID().slice(0, 8)}`, name: "Copy" },
  }),
  binJob: ({ job }) => ({ params: { job } }),
  putBackJob: ({ binned }) => ({ params: { job: binned } }),
  operations: ({ job }) => ({ params: { job } }),
  sendOperations: ({ job }) => ({
    params: { job },
    body: { operations: [operationOf(job, 0, [nameOf("w1", "Window 1", "East")])] },
  }),
  jobHistory: ({ job }) => ({ params: { job } }),
  jobAt: ({ job }) => ({ params: { job, version: "0" } }),
  restoreJob: ({ job }) => ({ params: { job }, body: { operation: randomUUID(), version: 0 } }),
  reservations: () => ({}),
  reserve: ({ job }) => ({ params: { job }, body: { items: [] } }),
  work: () => ({}),
  changeWork: ({ job }) => ({
    body: {
      changes: [{ id: randomUUID(), jobId: job, windowId: "w1", at: "2026-01-31T08:00:00Z", state: "cut" }],
    },
  }),
  workOfShade: ({ job }) => ({ params: { job, window: "w1" } }),
  makeLabels: ({ job }) => ({ params: { job }, body: { windows: ["w1"] } }),
  label: ({ code }) => ({ params: { code } }),
  clientLinks: ({ job }) => ({ params: { job } }),
  makeClientLink: ({ job }) => ({ params: { job }, body: {} }),
  takeBackClientLink: ({ link }) => ({ params: { link } }),
  papers: ({ job }) => ({ params: { job } }),
  askForPaper: ({ job }) => ({ params: { job }, body: { id: randomUUID(), kind: "workbook" } }),
  paperFile: ({ paper }) => ({ params: { paper } }),
  news: () => ({}),
  newsStream: () => ({}),
  presence: () => ({ body: {} }),
};
type OpenRoute = { [K in RouteName]: (typeof ROUTES)[K]["who"] extends "anyone" ? K : never }[RouteName];

/** Allowed, and turned down all the same for another reason, which is then not the role. */
const OTHERWISE: Partial<Record<RouteName, number>> = {
  addPasskey: 400,
  removePasskey: 404,
  paperFile: 404,
  makeClientLink: 409,
};
/** What a class may do with copies of its own alone. */
const OWN_ALONE: readonly RouteName[] = ["binJob", "putBackJob"];
/** Routes after which the same request would be answered otherwise. */
const USES_UP: readonly RouteName[] = ["binJob", "putBackJob", "takeBackInvitation", "makeClientLink"];
/** Routes about one thing, by its id: what another workroom must not reach. */
const NAMES_A_THING = (path: string, route: RouteName) =>
  /:(?:job|person|invitation|link|paper|session|code)/.test(path) || route === "changeWork";

const guarded = Object.keys(REQUESTS) as (keyof typeof REQUESTS)[];

describe.each(STORES)("who may what on $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("every route", () => {
    let here: TestWorkroom;
    let owner: TestPerson;
    let stranger: TestPerson;
    const people = {} as Record<PersonRole, TestPerson>;

    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom("First");
      stranger = await here.workroom("Second");
      for (const role of PERSON_ROLES) people[role] = await here.joined(owner, role);
    });
    afterAll(() => here.close());

    let shared: Promise<Things> | undefined;
    /** What the requests of a route need: new where it uses something up. */
    function thingsFor(route: RouteName): Promise<Things> {
      if (USES_UP.includes(route)) return things();
      shared ??= things();
      return shared;
    }

    async function things(): Promise<Things> {
      const job = await owner.makeJob();
      const binned = await owner.makeJob();
      await owner.ask("binJob", { params: { job: binned.id } }, 200);
      const invitation = await owner.ask("invite", { body: { role: "viewer" } }, 201);
      const link = randomUUID();
      const own = { workroom_id: owner.workroomId, made_by: owner.id, job_id: job.id };
      await here.store.db
        .insertInto("client_links")
        .values({ ...own, id: link, secret: Buffer.from(link), version: 0, until: new Date("2099-01-01") })
        .execute();
      const paper = randomUUID();
      await owner.ask("askForPaper", { params: { job: job.id }, body: { id: paper, kind: "workbook" } }, 201);
      const { labels } = (
        await owner.ask("makeLabels", { params: { job: job.id }, body: { windows: ["w1"] } }, 201)
      ).body;
      return {
        code: labels[0].code,
        job: job.id,
        binned: binned.id,
        person: people.viewer.id,
        session: owner.session,
        invitation: invitation.body.invitation.id,
        link,
        paper,
      };
    }

    test.each(guarded)("%s is not for who is not signed in, nor by a cookie that ended", async (route) => {
      const nobody = await here.nobody();
      expect((await nobody.ask(route, REQUESTS[route](await thingsFor(route), owner))).status).toBe(401);
      nobody.cookie = owner.cookie.replace(/.{4}$/, "AAAA");
      expect((await nobody.ask(route, REQUESTS[route](await thingsFor(route), owner))).status).toBe(401);
    });

    describe.each(PERSON_ROLES)("%s", (role) => {
      test.each(guarded.filter((route) => !["signOut", "endSession", "newsStream"].includes(route)))(
        "%s",
        async (route) => {
          const { who } = ROUTES[route] as Route;
          const isAllowed = who === "signed-in" || may(role, who as never);
          const { status } = await people[role].ask(
            route,
            REQUESTS[route](await thingsFor(route), people[role]),
          );
          if (!isAllowed) expect(status).toBe(403);
          else if (role === "class" && OWN_ALONE.includes(route)) expect(status).toBe(403);
          else if (OTHERWISE[route] !== undefined) expect(status).toBe(OTHERWISE[route]);
          else expect(status).toBeLessThan(300);
        },
      );
    });

    test.each(guarded.filter((route) => NAMES_A_THING(ROUTES[route].path, route)))(
      "%s does not reach what another workroom has",
      async (route) => {
        const made = await thingsFor(route);
        const before = await here.dump(owner.workroomId);
        const asked = REQUESTS[route](made, owner);
        const { status, body } = await stranger.ask(route, asked);
        expect(status).toBe(404);
        expect(JSON.stringify(body)).not.toContain("Window 1");
        expect(await here.dump(owner.workroomId)).toEqual(before);
      },
    );

    test.each([
      "shelf",
      "bin",
      "people",
      "sessions",
      "invitations",
      "audit",
      "work",
      "reservations",
      "news",
      "wholeShelf",
    ] as const)("%s tells nothing of another workroom", async (route) => {
      const made = await things();
      await owner.ask("changeWork", REQUESTS.changeWork(made, owner), 200);
      const { body } = await stranger.ask(route, {}, 200);
      const text = JSON.stringify(body);
      for (const id of [...Object.values(made), owner.id, owner.workroomId]) expect(text).not.toContain(id);
    });

    test("a class changes its own copies and nothing else", async () => {
      const { job } = await things();
      const sent = { operations: [operationOf(job, 0, [nameOf("w1", "Window 1", "Mine")])] };
      const refused = (await people.class.ask("sendOperations", { params: { job }, body: sent }, 200)).body;
      expect(refused).toMatchObject({ version: 0, answers: [{ ok: false }] });
      const id = `copy-${randomUUID().slice(0, 8)}`;
      await people.class.ask(
        "copyJob",
        { params: { job }, body: { request: randomUUID(), id, name: "My copy" } },
        201,
      );
      expect((await people.class.send(id, 0, nameOf("w1", "Window 1", "Mine"))).version).toBe(1);
      const pupil = await here.joined(owner, "class");
      expect((await pupil.ask("job", { params: { job: id } })).status).toBe(404);
      expect(JSON.stringify((await pupil.ask("shelf", {}, 200)).body)).not.toContain(id);
      expect((await owner.ask("job", { params: { job: id } })).status).toBe(200);
      const body = { operation: randomUUID(), version: 0 };
      const restored = await people.class.ask("restoreJob", { params: { job }, body }, 200);
      expect(restored.body.answers[0].ok).toBe(false);
    });

    test("a fitter measures, ticks and notes, and leaves the plan and the prices alone", async () => {
      const { job } = await things();
      const window = ["rooms", { id: "room-1" }, "windows", { id: "w1" }];
      const measured = await people.fitter.send(job, 0, {
        path: [...window, "opening", "widthsMm"],
        from: [900],
        to: [902],
      });
      expect(measured.answers[0]).toMatchObject({ ok: true });
      const noted = await people.fitter.send(job, 1, {
        path: [...window, "shade", "note"],
        to: "Tight at the left",
      });
      expect(noted.answers[0]).toMatchObject({ ok: true });
      for (const change of [
        { path: [...window, "shade", "style"], from: "flat", to: "hobbled" },
        { path: ["rates", "labourPerHour"], to: 1 },
        nameOf("w1", "Window 1", "Mine"),
      ]) {
        expect((await people.fitter.send(job, 2, change)).answers[0]).toMatchObject({ ok: false });
      }
    });

    test("the shop is changed by who may, has no windows, and is not binned or copied", async () => {
      const change = { path: ["rates", "labourPerHour"], to: 40 };
      const { body } = await owner.ask("job", { params: { job: SHOP_ID } }, 200);
      expect((await people.class.send(SHOP_ID, body.version, change)).answers[0]).toMatchObject({
        ok: false,
      });
      expect((await people.maker.send(SHOP_ID, body.version, change)).answers[0]).toMatchObject({ ok: true });
      const room = { id: "r", name: "R", windows: [] };
      const windows = await owner.send(SHOP_ID, body.version + 1, { path: ["rooms", { id: "r" }], to: room });
      expect(windows.answers[0]).toMatchObject({ ok: false });
      expect((await owner.ask("binJob", { params: { job: SHOP_ID } })).status).toBe(403);
    });
  });
});

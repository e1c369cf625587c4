import { randomUUID } from "node:crypto";
import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { PASSWORD, SET_UP_CODE, STORES, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

const OTHER_PASSWORD = "another password that is long";

describe.each(STORES)("people on $title", ({ isThere, open }) => {
  describe.skipIf(!isThere)("come, stay and go", () => {
    let here: TestWorkroom;
    let owner: TestPerson;
    beforeAll(async () => {
      here = new TestWorkroom(await open());
      owner = await here.workroom("Nähstube");
    });
    afterAll(() => here.close());

    const signIn = async (person: TestPerson, password: string) => {
      const browser = await here.nobody();
      const body = { workroom: owner.shortName, signInName: person.signInName, password };
      return { browser, told: await browser.ask("signIn", { body }) };
    };

    test("the first owner needs the code of the server, and a password that is long enough", async () => {
      const nobody = await here.nobody();
      const body = { workroom: "W", name: "N", signInName: "n", password: PASSWORD };
      expect((await nobody.ask("signUp", { body })).status).toBe(403);
      expect((await nobody.ask("signUp", { body: { ...body, code: "wrong" } })).status).toBe(403);
      const short = await nobody.ask("signUp", { body: { ...body, password: "short", code: SET_UP_CODE } });
      expect([short.status, short.body.issues[0].field]).toEqual([400, "password"]);
      expect(JSON.stringify(short.body)).not.toContain('short"');
    });

    test("a password that is known, or made of what is known of its owner, is refused wherever one is set", async () => {
      const nobody = await here.nobody();
      const password = "passwordpassword1";
      const body = { workroom: "W", name: "N", signInName: "n", password, code: SET_UP_CODE };
      const { browser } = await signIn(owner, PASSWORD);
      const told = [
        await nobody.ask("signUp", { body }),
        await browser.ask("password", { body: { current: PASSWORD, password } }),
        await nobody.ask("recover", {
          body: { workroom: owner.shortName, signInName: owner.signInName, code: "ABCD-EFGH", password },
        }),
      ];
      for (const { status, body } of told) {
        expect([status, body.issues?.[0]?.field]).toEqual([400, "password"]);
      }
    });

    test("signs in with name and password, and is told who they are", async () => {
      const { browser, told } = await signIn(owner, PASSWORD);
      expect(told.status).toBe(200);
      expect((await browser.ask("me")).body).toMatchObject({
        state: "signed-in",
        workroom: { name: "Nähstube", shortName: owner.shortName },
        person: { id: owner.id, role: "owner" },
      });
    });

    test("the cookie is out of reach of scripts and other sites", async () => {
      const set = (await signIn(owner, PASSWORD)).told.headers.get("set-cookie") ?? "";
      expect(set).toMatch(/; HttpOnly/);
      expect(set).toMatch(/; SameSite=Strict/);
      expect(set).toMatch(/; Path=\//);
    });

    test("a wrong password and a name that there is not are answered alike", async () => {
      const wrong = (await signIn(owner, OTHER_PASSWORD)).told;
      const nobody = await here.nobody();
      const none = await nobody.ask("signIn", {
        body: { workroom: owner.shortName, signInName: "nobody", password: PASSWORD },
      });
      const elsewhere = await nobody.ask("signIn", {
        body: { workroom: "no-such-workroom", signInName: "nobody", password: PASSWORD },
      });
      expect([wrong.status, none.status, elsewhere.status]).toEqual([401, 401, 401]);
      expect(none.body).toEqual(wrong.body);
      expect(elsewhere.body).toEqual(wrong.body);
    });

    test("nothing that is kept is the password or the cookie itself", async () => {
      const dump = JSON.stringify(await here.dump(owner.workroomId));
      expect(dump).not.toContain(PASSWORD);
      expect(dump).not.toContain(owner.cookie.split(".")[1]);
      expect(dump).toContain("scrypt$");
    });

    test("ten wrong passwords of a name, and it is closed for a quarter of an hour, whoever asks", async () => {
      const maker = await here.joined(owner, "maker");
      for (let i = 0; i < 10; i++) expect((await signIn(maker, OTHER_PASSWORD)).told.status).toBe(401);
      expect((await signIn(maker, PASSWORD)).told.status).toBe(429);
      expect((await signIn(owner, PASSWORD)).told.status).toBe(200);
      await here.store.db
        .updateTable("attempts")
        .set({ until: sql<Date>`now() - interval '1 second'` })
        .execute();
      expect((await signIn(maker, PASSWORD)).told.status).toBe(200);
    });

    test("signing out, and the end of a session by its owner, close it at once", async () => {
      const { browser } = await signIn(owner, PASSWORD);
      await browser.learn();
      const { body } = await owner.ask("sessions", {}, 200);
      expect(body.sessions.find(({ id }: { id: string }) => id === browser.session).isThis).toBe(false);
      await owner.ask("endSession", { params: { session: browser.session } }, 200);
      expect((await browser.ask("shelf")).status).toBe(401);
      const again = (await signIn(owner, PASSWORD)).browser;
      const { cookie } = again;
      await again.ask("signOut", {}, 200);
      again.cookie = cookie;
      expect((await again.ask("shelf")).status).toBe(401);
    });

    test("nobody ends another's session but the owner", async () => {
      const maker = await here.joined(owner, "maker");
      const viewer = await here.joined(owner, "viewer");
      expect((await maker.ask("endSession", { params: { session: viewer.session } })).status).toBe(404);
      expect((await viewer.ask("shelf")).status).toBe(200);
      await owner.ask("endSession", { params: { session: viewer.session } }, 200);
      expect((await viewer.ask("shelf")).status).toBe(401);
    });

    test("a session ends by itself: after ninety days, or fourteen without use", async () => {
      for (const set of [
        { until: new Date("2020-01-01") },
        { seen_at: new Date(Date.now() - 15 * 86_400_000) },
      ]) {
        const viewer = await here.joined(owner, "viewer");
        await here.store.db.updateTable("sessions").set(set).where("id", "=", viewer.session).execute();
        expect((await viewer.ask("shelf")).status).toBe(401);
      }
    });

    test("an invitation is used once, taken back, or too old", async () => {
      const invite = async () =>
        (await owner.ask("invite", { body: { role: "fitter", name: "Kim" } }, 201)).body;
      const join = async (token: string) => {
        const body = {
          token,
          name: "Kim",
          signInName: `kim-${randomUUID().slice(0, 8)}`,
          password: PASSWORD,
        };
        return (await (await here.nobody()).ask("join", { body })).status;
      };
      const first = await invite();
      const look = await (await here.nobody()).ask("joinLook", { body: { token: first.token } }, 200);
      expect(look.body).toEqual({ workroom: "Nähstube", kind: "join", role: "fitter", name: "Kim" });
      expect([await join(first.token), await join(first.token)]).toEqual([201, 404]);
      const second = await invite();
      await owner.ask("takeBackInvitation", { params: { invitation: second.invitation.id } }, 200);
      expect(await join(second.token)).toBe(404);
      const third = await invite();
      await here.store.db
        .updateTable("invitations")
        .set({ until: new Date("2020-01-01") })
        .where("id", "=", third.invitation.id)
        .execute();
      expect(await join(third.token)).toBe(404);
      expect(await join(`${randomUUID()}.${"A".repeat(32)}`)).toBe(404);
      expect(await join(`${owner.workroomId}.${"A".repeat(32)}`)).toBe(404);
    });

    test("a name to sign in with belongs to one person", async () => {
      const { body } = await owner.ask("invite", { body: { role: "maker" } }, 201);
      const taken = {
        token: body.token,
        name: "N",
        signInName: owner.signInName.toUpperCase(),
        password: PASSWORD,
      };
      const { status, body: told } = await (await here.nobody()).ask("join", { body: taken });
      expect([status, told.issues[0].field]).toEqual([409, "signInName"]);
      // The invitation is not used up by that.
      await (await here.nobody()).ask("join", { body: { ...taken, signInName: "own-name" } }, 201);
    });

    test("a recovery code sets a new password once and ends the sessions of before", async () => {
      const maker = await here.joined(owner, "maker");
      const { codes } = (await maker.ask("recoveryCodes", {}, 201)).body;
      expect(new Set(codes).size).toBe(8);
      const recover = async (code: string) => {
        const body = {
          workroom: owner.shortName,
          signInName: maker.signInName,
          code,
          password: OTHER_PASSWORD,
        };
        return (await (await here.nobody()).ask("recover", { body })).status;
      };
      expect(await recover("aaaaa-aaaaa-aaaaa-aaaaa")).toBe(401);
      expect([await recover(codes[0].toUpperCase().replaceAll("-", " ")), await recover(codes[0])]).toEqual([
        200, 401,
      ]);
      expect((await maker.ask("shelf")).status).toBe(401);
      expect((await signIn(maker, PASSWORD)).told.status).toBe(401);
      expect((await signIn(maker, OTHER_PASSWORD)).told.status).toBe(200);
    });

    test("a link of the owner's sets a new password for who lost it", async () => {
      const maker = await here.joined(owner, "maker");
      const { token } = (await owner.ask("recoverPerson", { params: { person: maker.id } }, 201)).body;
      const look = (await (await here.nobody()).ask("joinLook", { body: { token } }, 200)).body;
      expect(look).toMatchObject({ kind: "recovery", signInName: maker.signInName });
      await (await here.nobody()).ask("join", { body: { token, password: OTHER_PASSWORD } }, 201);
      expect((await signIn(maker, OTHER_PASSWORD)).told.status).toBe(200);
    });

    test("a new password wants the old one and ends the other sessions", async () => {
      const maker = await here.joined(owner, "maker");
      const { browser } = await signIn(maker, PASSWORD);
      expect(
        (await maker.ask("password", { body: { current: "wrong", password: OTHER_PASSWORD } })).status,
      ).toBe(403);
      await maker.ask("password", { body: { current: PASSWORD, password: OTHER_PASSWORD } }, 200);
      expect([(await maker.ask("shelf")).status, (await browser.ask("shelf")).status]).toEqual([200, 401]);
    });

    test("who leaves is out at once; a new role counts at once; one owner stays", async () => {
      const maker = await here.joined(owner, "maker");
      await owner.ask("changePerson", { params: { person: maker.id }, body: { role: "viewer" } }, 200);
      expect((await maker.ask("makeJob", { body: {} })).status).toBe(403);
      await owner.ask("changePerson", { params: { person: maker.id }, body: { isHere: false } }, 200);
      expect((await maker.ask("shelf")).status).toBe(401);
      expect((await signIn(maker, PASSWORD)).told.status).toBe(401);
      const last = await owner.ask("changePerson", { params: { person: owner.id }, body: { role: "maker" } });
      expect(last.status).toBe(409);
      expect((await owner.ask("me")).body.person.role).toBe("owner");
    });

    test("the audit log has who did what, and failed attempts", async () => {
      await signIn(owner, OTHER_PASSWORD);
      const { entries } = (await owner.ask("audit", {}, 200)).body;
      expect(entries[0]).toMatchObject({ action: "failed to sign in", subject: owner.signInName });
      const actions = entries.map(({ action }: { action: string }) => action);
      expect(actions).toEqual(
        expect.arrayContaining(["signed in", "invited", "joined", "changed a person", "ended a session"]),
      );
    });

    test("passkeys: options are bound to this address, and a made-up answer opens nothing", async () => {
      const { body } = await owner.ask("passkeyOptions", {}, 200);
      expect(body.options).toMatchObject({
        rp: { id: "localhost" },
        authenticatorSelection: { userVerification: "required" },
      });
      const response = {
        id: "AA",
        rawId: "AA",
        type: "public-key",
        response: {},
        clientExtensionResults: {},
      };
      const add = { challenge: body.challenge, name: "Key", response };
      expect((await owner.ask("addPasskey", { body: add })).status).toBe(400);
      const nobody = await here.nobody();
      const options = await nobody.ask("passkeySignInOptions", { body: { workroom: owner.shortName } }, 200);
      const signing = { challenge: options.body.challenge, response };
      expect((await nobody.ask("passkeySignIn", { body: signing })).status).toBe(401);
      // Its challenge is used up.
      expect((await nobody.ask("passkeySignIn", { body: signing })).status).toBe(400);
    });
  });
});

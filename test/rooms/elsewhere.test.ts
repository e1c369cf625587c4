import { afterAll, beforeAll, expect, test } from "vitest";
import { openEmbedded } from "../../src/server/index.ts";
import { PASSWORD, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

let here: TestWorkroom;
let owner: TestPerson;
beforeAll(async () => {
  here = new TestWorkroom(await openEmbedded());
  owner = await here.workroom();
});
afterAll(() => here.close());

test.each([
  ["no origin", { origin: "" }, 403],
  ["another site's origin", { origin: "https://elsewhere.example" }, 403],
  ["another port's origin", { origin: "http://localhost:1" }, 403],
  ["another site, says the browser", { "sec-fetch-site": "cross-site" }, 403],
  ["another name for this machine", { host: "elsewhere.example", origin: "http://elsewhere.example" }, 421],
  ["a form", { "content-type": "application/x-www-form-urlencoded" }, 415],
])("a request with %s is refused", async (_what, headers, status) => {
  const told = await owner.ask("presence", { body: {}, headers: headers as Record<string, string> });
  expect(told.status).toBe(status);
});

test.each([
  ["no JSON", "{", 400],
  ["brackets without end", "[".repeat(100_000), 400],
  ["a field too many", JSON.stringify({ role: "viewer", more: 1 }), 400],
  ["a role that there is not", JSON.stringify({ role: "king" }), 400],
  ["more than a request needs", JSON.stringify({ role: "viewer", name: "x".repeat(300_000) }), 413],
  ["a key of objects themselves", '{"role":"viewer","__proto__":{"a":1}}', 400],
])("a body with %s is refused", async (_what, body, status) => {
  expect((await owner.ask("invite", { body })).status).toBe(status);
});

test("answers are not kept by anything on the way", async () => {
  expect((await owner.ask("shelf")).headers.get("cache-control")).toBe("no-store");
});

test("one address has so many requests a minute, fewer before it has signed in", async () => {
  here.address = "192.0.2.7";
  const nobody = await here.nobody();
  const ask = async () => (await nobody.ask("me")).status;
  const answers: number[] = [];
  for (let i = 0; i < 70; i++) answers.push(await ask());
  expect([answers.filter((one) => one === 200).length, answers.at(-1)]).toEqual([60, 429]);
  expect((await owner.ask("me")).status).toBe(200);
  here.address = undefined;
});

test("a cookie that belongs to no session counts for nothing, and no more of them are looked up", async () => {
  here.address = "192.0.2.9";
  const nobody = await here.nobody();
  const answers: number[] = [];
  for (let i = 0; i < 70; i++) {
    nobody.cookie = owner.cookie.replace(/.{6}$/, String(100_000 + i));
    answers.push((await nobody.ask("shelf")).status);
  }
  expect([answers.filter((one) => one === 401).length, answers.at(-1)]).toEqual([60, 429]);
  // Who was known at that address before stays so; who signed out is not.
  here.address = "192.0.2.10";
  const maker = await here.joined(owner, "maker");
  for (let i = 0; i < 70; i++) expect((await maker.ask("me")).status).toBe(200);
  const { cookie } = maker;
  await maker.ask("signOut", {}, 200);
  maker.cookie = cookie;
  const after: number[] = [];
  for (let i = 0; i < 70; i++) after.push((await maker.ask("shelf")).status);
  expect(after.at(-1)).toBe(429);
  here.address = undefined;
});

test("one address guesses at many names no longer than at one", async () => {
  const nobody = await here.nobody();
  const answers: number[] = [];
  for (let i = 0; i < 52; i++) {
    here.address = "192.0.2.8";
    const body = { workroom: owner.shortName, signInName: `name-${i}`, password: PASSWORD };
    answers.push((await nobody.ask("signIn", { body })).status);
    await here.store.db.deleteFrom("attempts").where("key", "like", "name %").execute();
  }
  here.address = undefined;
  expect([answers.filter((one) => one === 401).length, answers.at(-1)]).toEqual([50, 429]);
});

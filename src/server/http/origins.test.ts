import { describe, expect, test } from "vitest";
import { Refused } from "../refused.ts";
import { checkOrigin } from "./origins.ts";

const NAMED = "https://shades.example";
const request = (method: string, headers: Record<string, string>) =>
  new Request("http://localhost/", { method, headers });
const statusOf = (named: string | undefined, method: string, headers: Record<string, string>) => {
  try {
    return checkOrigin(named === undefined ? {} : { named }, request(method, headers));
  } catch (error) {
    return error instanceof Refused ? error.status : error;
  }
};

describe("whom the server answers", () => {
  test.each([
    ["this machine by name", undefined, "GET", { host: "localhost:4173" }, "http://localhost:4173"],
    ["this machine by number", undefined, "GET", { host: "127.0.0.1:4173" }, "http://127.0.0.1:4173"],
    ["this machine by its longer number", undefined, "GET", { host: "[::1]:1" }, "http://[::1]:1"],
    ["a name that was pointed at this machine", undefined, "GET", { host: "rebound.example" }, 421],
    ["no name", undefined, "GET", {}, 421],
    ["its own name", NAMED, "GET", { host: "shades.example" }, NAMED],
    ["another name", NAMED, "GET", { host: "shades.example.elsewhere.example" }, 421],
    ["its own page", NAMED, "POST", { host: "shades.example", origin: NAMED }, NAMED],
    [
      "its own page without TLS",
      NAMED,
      "POST",
      { host: "shades.example", origin: "http://shades.example" },
      403,
    ],
    ["a page that hides where it is from", NAMED, "POST", { host: "shades.example", origin: "null" }, 403],
    ["nobody's page", NAMED, "DELETE", { host: "shades.example" }, 403],
    [
      "a sister site",
      NAMED,
      "POST",
      { host: "shades.example", origin: NAMED, "sec-fetch-site": "same-site" },
      403,
    ],
  ])("%s", (_who, named, method, headers, wanted) => {
    expect(statusOf(named, method, headers as Record<string, string>)).toBe(wanted);
  });
});

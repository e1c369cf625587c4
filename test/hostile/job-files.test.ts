import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LARGEST_JOB_CHARS, openJobText } from "../../src/job/index.ts";
import { type Ending, launched, STACK_LINE, typed } from "../cli/typed.ts";
import { mutated } from "./mutated.ts";

const DOCUMENT = readFileSync("test/documents/job-v1.json", "utf8");
const parsed = () => JSON.parse(DOCUMENT);

/** Ended as planned, with or without a stamp, or as bad input, in words. */
function expectCivil({ code, out, err }: Ending): void {
  expect([0, 2, 3]).toContain(code);
  expect(err).not.toMatch(STACK_LINE);
  expect(err.trim()).not.toBe("");
  if (code === 2) {
    expect(out).toBe("");
    expect(err).toMatch(/given .+\n\s+wants ./);
  }
}

describe("job files that are not what they should be", () => {
  test("spoilt anywhere, in any way (fuzzed)", async () => {
    await fc.assert(
      fc.asyncProperty(mutated(DOCUMENT), async (text) => {
        expectCivil(await typed(["check", "-"], text));
      }),
      { numRuns: 400 },
    );
  });

  test("cut short at any byte", async () => {
    const bytes = new TextEncoder().encode(DOCUMENT.trimEnd());
    for (let length = 0; length < bytes.length; length += 37) {
      const ending = await typed(["check", "-"], bytes.subarray(0, length));
      expectCivil(ending);
      expect(ending.code).toBe(2);
    }
  });

  test("any bytes at all", async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
        const ending = await typed(["check", "-"], bytes);
        expectCivil(ending);
        expect(ending.code).toBe(2);
      }),
      { numRuns: 300 },
    );
  });

  test.each<[string, string, string]>([
    ["nothing", "", "nothing"],
    ["blanks", " \n\t ", "nothing"],
    ["no JSON", "hello", "not JSON"],
    ["a number", "7", "an object"],
    ["a list", "[]", "an object"],
    ["NaN", DOCUMENT.replace("912", "NaN"), "not JSON"],
    ["another format", JSON.stringify({ ...parsed(), format: "else" }), "format"],
    ["no version", JSON.stringify({ ...parsed(), version: undefined }), "version"],
    ["version 0", JSON.stringify({ ...parsed(), version: 0 }), "version"],
    ["version 1.5", JSON.stringify({ ...parsed(), version: 1.5 }), "version"],
    ["a version in words", JSON.stringify({ ...parsed(), version: "1" }), "version"],
    ["a version to come", JSON.stringify({ ...parsed(), version: 999 }), "newer"],
    ["a version beyond numbers", DOCUMENT.replace('"version": 1', '"version": 1e999'), "version"],
    ["brackets without end", "[".repeat(200_000), "deep"],
    ["objects without end", '{"a":'.repeat(200_000), "deep"],
    [
      "deep in a field",
      JSON.stringify({ ...parsed(), note: null }).replace("null", `${"[".repeat(5000)}${"]".repeat(5000)}`),
      "deep",
    ],
    [
      "the same key twice, the last one wrong",
      DOCUMENT.replace("{", '{"id":"a",').replace('"lantern-mill-3f2a"', "7"),
      "id",
    ],
  ])("%s", async (_what, text, word) => {
    const ending = await typed(["check", "-"], text);
    expectCivil(ending);
    expect([ending.code, ending.err]).toEqual([2, expect.stringContaining(word)]);
  });

  test("UTF-16 is named as what it is not", async () => {
    const { code, err } = await typed(["check", "-"], Buffer.from(`\ufeff${DOCUMENT}`, "utf16le"));
    expect([code, err]).toEqual([2, expect.stringContaining("UTF-8")]);
  });

  test("a byte order mark does no harm", async () => {
    const plain = await typed(["check", "-"], DOCUMENT);
    expect(await typed(["check", "-"], `\ufeff${DOCUMENT}`)).toEqual(plain);
  });

  test("a field that is wrong is named, with what it held and what would do", async () => {
    const document = parsed();
    document.rooms[0].windows[0].opening.widthsMm[1] = "35 3/8";
    const { code, err } = await typed(["check", "-"], JSON.stringify(document));
    expect(code).toBe(2);
    expect(err).toContain("rooms[0].windows[0].opening.widthsMm[1]");
    expect(err).toContain('"35 3/8"');
    expect(err).toContain("898.525");
  });

  test("--json says the same to machines", async () => {
    const { code, out } = await typed(["check", "-", "--json"], JSON.stringify({ ...parsed(), id: "a b" }));
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({
      format: "shadewright-issues",
      issues: [{ field: "id", given: '"a b"' }],
    });
  });

  test("nothing of a document reaches the prototypes of objects", () => {
    openJobText(
      DOCUMENT.replace("{", '{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}},'),
    );
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  test("control characters and direction marks of a document do not reach the screen", async () => {
    const text = JSON.stringify({ ...parsed(), "\u001b[2J\u202e": 1, id: "\u001b]0;title\u0007" });
    const { code, err } = await typed(["check", "-"], text);
    expect(code).toBe(2);
    expect(err.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\u202a-\u202e]/u);
  });
});

describe("a file larger than any job", () => {
  test("is refused before it is read whole", async () => {
    const megabyte = new Uint8Array(1_000_000).fill(0x20);
    let taken = 0;
    async function* endless() {
      for (; taken < 1000; taken++) yield megabyte;
    }
    const { code, err } = await typed(["check", "-"], endless());
    expect([code, err]).toEqual([2, expect.stringContaining("split the job")]);
    expect(taken).toBeLessThanOrEqual(LARGEST_JOB_CHARS / 1_000_000 + 1);
  });

  test("50 MB through the command itself", async () => {
    const ending = await launched(["check", "-"], DOCUMENT.trimEnd() + " ".repeat(50_000_000));
    expectCivil(ending);
    expect(ending.code).toBe(2);
  });

  test("one name of 15 MB", async () => {
    const ending = await typed(["check", "-"], JSON.stringify({ ...parsed(), name: "x".repeat(15_000_000) }));
    expectCivil(ending);
    expect(ending.code).toBe(2);
    expect(ending.err.length).toBeLessThan(2000);
  });
});

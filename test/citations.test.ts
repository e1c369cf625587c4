import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { SOURCES } from "../src/sources/index.ts";
import { citationsOf, guessLines } from "./citations.ts";
import { sourceFiles, textsOf } from "./source-tree.ts";

/** What nobody could look up, with its place. Written anew by `UPDATE_GUESSES=1`; read the difference. */
const GUESS_LIST = "test/guesses.txt";

const files = sourceFiles();
const citations = files.flatMap(citationsOf);

describe("citations", () => {
  test("every guess stands in the committed list, so that a new one shows in review", () => {
    const text = `${guessLines(citations).join("\n")}\n`;
    if (process.env.UPDATE_GUESSES) writeFileSync(GUESS_LIST, text);
    expect(text).toBe(readFileSync(GUESS_LIST, "utf8"));
  });

  test("no source is listed that nothing cites", () => {
    const used = new Set<string>(citations.map(({ source }) => source));
    expect(Object.keys(SOURCES).filter((id) => !used.has(id))).toEqual([]);
  });

  test("a guess is seen in each way that it can be written", () => {
    const text = `
      const a = cite("common-practice", "hems");
      const b = cite("from-memory");
      const c = { source: "from-memory", at: "bars" };
      const d = cite("common-practice", "hems");
      const e = cite("nist-sp-811");`;
    expect(guessLines(citationsOf({ path: "src/cloth/a.ts", text }))).toEqual([
      "src/cloth/a.ts · common-practice · hems (2 times)",
      "src/cloth/a.ts · from-memory",
      `src/cloth/a.ts · from-memory · const c = { source: "from-memory", at: "bars" };`,
    ]);
  });
});

/** A plan cannot know that a window covering is any of these, so no word of ours says so. */
const CLAIMS = /(?<![\w-])(?:child-)?(?:safe|safely|compliant|approved|certified)(?![\w-])/i;

describe("words", () => {
  test("nothing that is shown to people claims that a shade is safe or follows a rule", () => {
    const claims = files.flatMap((file) =>
      textsOf(file)
        .filter((text) => CLAIMS.test(text))
        .map((text) => `${file.path}: ${text}`),
    );
    expect(claims).toEqual([]);
  });

  test.each([
    `export const a = "This shade is safe.";`,
    "export const a = () => `It is compliant`;",
    `export const a = { text: 'Child-safe cords' };`,
  ])("a claim is seen in %s", (text) => {
    expect(textsOf({ path: "src/plan/a.ts", text }).some((words) => CLAIMS.test(words))).toBe(true);
  });

  test("a claim is seen on a page, and not in a comment", () => {
    const text = "// safe\nexport const A = () => <p>Approved by us</p>;";
    expect(textsOf({ path: "src/web/a.tsx", text }).filter((words) => CLAIMS.test(words))).toEqual([
      "Approved by us",
    ]);
  });
});

// “The Encyclopaedia, pp. 98, 108, 116–119, pp. 116–119”: a title with pages, and a citation that names its own.
test("no citation names pages twice", () => {
  const paged = (text: string | undefined) => text !== undefined && /\bpp?\.\s*\d/.test(text);
  const twice = citations.filter(
    ({ source, at }) => paged(SOURCES[source as keyof typeof SOURCES]?.title) && paged(at),
  );
  expect(twice).toEqual([]);
});

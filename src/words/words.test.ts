import { describe, expect, test } from "vitest";
import {
  americanSpeller,
  britishIn,
  counted,
  firstSentence,
  listed,
  runsText,
  slugOf,
  withArticle,
} from "./index.ts";

describe("words", () => {
  test("a list has an “and” before its last and no comma there", () => {
    expect([[], ["a"], ["a", "b"], ["a", "b", "c"]].map(listed)).toEqual(["", "a", "a and b", "a, b and c"]);
  });

  test("a count is one of a thing, or many", () => {
    expect([0, 1, 35].map((n) => counted(n, "ring"))).toEqual(["0 rings", "1 ring", "35 rings"]);
    expect(counted(2, "box", "boxes")).toBe("2 boxes");
  });

  test("three numbers and more that follow one another are a run", () => {
    expect([[], [3], [1, 2], [1, 2, 3, 4], [7, 9, 10, 1, 2, 3]].map(runsText)).toEqual([
      "",
      "3",
      "1 and 2",
      "1 to 4",
      "1 to 3, 7, 9 and 10",
    ]);
  });

  test("a vowel takes “an”", () => {
    expect(["flat", "Austrian"].map(withArticle)).toEqual(["a flat", "an Austrian"]);
  });

  test("a first sentence ends where a new one begins, not within a number", () => {
    expect(firstSentence("Rows are 7.5 in apart. Sew them closer.")).toBe("Rows are 7.5 in apart.");
    expect(firstSentence("Which lock? One of three.")).toBe("Which lock?");
    expect(firstSentence("no stop at all")).toBe("no stop at all");
  });

  test("a slug has letters, digits and single hyphens alone", () => {
    expect(slugOf("  Café, 2nd floor! ")).toBe("cafe-2nd-floor");
    expect(slugOf("…")).toBe("");
  });

  test("words of the United States keep their case, and ids, files and parts of words stay", () => {
    const spell = americanSpeller(["Cloth & Co. (grey)"]);
    // Pairs as both dictionaries have them, recalled from memory.
    expect(spell("Cloth, COLOUR and cots; centred, mitred, metres.")).toBe(
      "Fabric, COLOR and cribs; centered, mitered, meters.",
    );
    const left = "cloth.face-length lists/cloth.csv clothes cottage centrepiece cloth_a Cloth & Co. (grey)";
    expect(spell(left)).toBe(left);
    expect(spell(spell("grey cloth"))).toBe("gray fabric");
    expect(britishIn(["a cot", "a cottage", "a cot"])).toEqual(["a cot"]);
  });
});

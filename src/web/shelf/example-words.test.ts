import { describe, expect, it } from "vitest";
import { exampleWords } from "./example-words.ts";

const NONE = { text: "", read: false };
const WRONG = { text: "34 or so", read: false };
const OWN = { text: "34", read: true };

describe("the caption of the first drawing", () => {
  it("says what of it is only an example", () => {
    expect(exampleWords(NONE, NONE)).toBe("An example, until you type your own.");
    expect(exampleWords(OWN, NONE)).toBe("With an example length, until you type your own.");
    expect(exampleWords(NONE, OWN)).toBe("With an example width, until you type your own.");
    expect(exampleWords(OWN, OWN)).toBeUndefined();
  });

  it("never passes an example off as what was typed", () => {
    expect(exampleWords(WRONG, OWN)).toBe("Drawn with an example: the width that you typed cannot be read.");
    expect(exampleWords(WRONG, WRONG)).toMatch(/the width and the length that you typed/);
  });
});

import { describe, expect, it } from "vitest";
import { QUESTIONS } from "../../answers/index.ts";
import { SYMPTOMS } from "../../diagnose/index.ts";
import { sheetOfQuestion } from "./sheet-of-question.ts";

/** A place's law is drawn nowhere, and what a symptom comes from is told by its causes. */
const DRAWN_NOWHERE = new Set<string>(["may-i-sell", ...SYMPTOMS]);

describe("the sheet of a question", () => {
  it("is there for every question that a drawing shows", () => {
    const without = QUESTIONS.filter(({ id }) => sheetOfQuestion(id, "lock") === undefined);
    expect(without.map(({ id }) => id).filter((id) => !DRAWN_NOWHERE.has(id))).toEqual([]);
    expect(without.length).toBe(DRAWN_NOWHERE.size);
  });

  it("is no lock where none is", () => {
    expect(sheetOfQuestion("which-side-out", "lock")).toBe("lock");
    expect(sheetOfQuestion("which-side-out", "tube")).toBeUndefined();
    expect(sheetOfQuestion("rows-apart", "tube")).toBe("back");
  });
});

import { expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { LIFT_KINDS, STYLES } from "../job/index.ts";
import { plan } from "../plan/index.ts";

const LENGTH = /\d+(?:\.\d+)? mm(?![\p{L}\d])/gu;
const plain = (text: string) => text.replaceAll("\u00a0", " ");
/** Steps whose several figures stand in a table of their own, or are for every cord. */
const IN_TABLES = /^(?:board-eyes|make-(?:pleat-)?columns|level-knots|string-cut|make-soft-hem|train-fold)$/;

test.each(STYLES)(
  "%s: figures at a glance are those of the words, and never several without words",
  (style) => {
    let briefs = 0;
    const bare = new Set<string>();
    for (const kind of LIFT_KINDS)
      for (const mount of ["outside", "inside"] as const) {
        const job = jobWith(
          { shade: { style, mount, making: { lift: { kind } } } },
          { units: { system: "metric", ruler: "1 mm" } },
        );
        const [shade] = plan(job).shades;
        if (shade === undefined) throw new Error("no shade");
        const { cloth, board, lift, cost, steps } = shade;
        // Figures in names of what is bought are no measures of this shade.
        const names = [
          ...cloth.layers.map(({ clothName }) => clothName),
          board.sectionName,
          board.barName ?? "",
          lift.cordName,
          ...cost.shopping.map(({ label }) => label),
        ].sort((a, b) => b.length - a.length);
        for (const { id, chapter, text: whole, brief } of steps) {
          if (chapter === "measure" || chapter === "cut") continue;
          const text = names.reduce((words, name) => words.replaceAll(name || "\n", ""), whole);
          if (brief === undefined) {
            const found = new Set(plain(text).match(LENGTH));
            if (found.size > 1 && found.size < 5 && !IN_TABLES.test(id)) bare.add(`${id}: ${text}`);
            continue;
          }
          briefs += 1;
          for (const length of plain(brief).match(LENGTH) ?? []) expect(plain(text), id).toContain(length);
          // Words stand with every figure.
          for (const part of plain(brief).split(" · "))
            expect(part.replaceAll(LENGTH, ""), id).toMatch(/\p{L}{2}/u);
          // “support 1 1 1/8 in” is read as eleven and an eighth.
          expect(plain(brief), id).not.toMatch(/\d \d/);
        }
      }
    expect([...bare]).toEqual([]);
    expect(briefs).toBeGreaterThan(20);
  },
);

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clearPatch, setPatch, valueAt } from "../../figures/index.ts";
import { applyEdit, type Edit, EMPTY_HISTORY, MOST_CHANGES, redo, undo } from "./history.ts";

const start = { name: "a", making: undefined as unknown, list: [1, 2, 3] };
const rename = (value: string, joins?: string): Edit => ({
  label: "Name",
  patch: [{ op: "replace", path: "/name", value }],
  ...(joins === undefined ? {} : { joins }),
});

describe("history", () => {
  it("takes an edit back and does it again", () => {
    const edited = applyEdit(start, EMPTY_HISTORY, rename("b"));
    expect(edited.document.name).toBe("b");
    const undone = undo(edited.document, edited.history);
    expect(undone.document).toEqual(start);
    expect(redo(undone.document, undone.history).document).toEqual(edited.document);
  });

  it("makes one change of the keystrokes in one field", () => {
    let { document, history } = applyEdit(start, EMPTY_HISTORY, rename("b", "field-1"));
    ({ document, history } = applyEdit(document, history, rename("bc", "field-1")));
    ({ document, history } = applyEdit(document, history, rename("bcd", "field-1")));
    expect(history.past).toHaveLength(1);
    expect(undo(document, history).document.name).toBe("a");
  });

  it("keeps two fields, and a field left and entered again, apart", () => {
    let { document, history } = applyEdit(start, EMPTY_HISTORY, rename("b", "field-1"));
    ({ document, history } = applyEdit(document, history, rename("c", "field-2")));
    expect(history.past).toHaveLength(2);
    expect(undo(document, history).document.name).toBe("b");
  });

  it("joins nothing to a change that was taken back and done again", () => {
    let { document, history } = applyEdit(start, EMPTY_HISTORY, rename("b", "field-1"));
    ({ document, history } = undo(document, history));
    ({ document, history } = redo(document, history));
    ({ document, history } = applyEdit(document, history, rename("c", "field-1")));
    expect(history.past).toHaveLength(2);
  });

  it("forgets what was undone once something new is done, and the oldest beyond its limit", () => {
    let { document, history } = applyEdit(start, EMPTY_HISTORY, rename("b"));
    ({ document, history } = undo(document, history));
    ({ document, history } = applyEdit(document, history, rename("c")));
    expect(history.future).toHaveLength(0);
    for (let n = 0; n < MOST_CHANGES + 5; n++)
      ({ document, history } = applyEdit(document, history, rename(`${n}`)));
    expect(history.past).toHaveLength(MOST_CHANGES);
  });

  it("returns to the first document from any run of edits, and forward again", () => {
    const keys = fc.constantFrom("/making/fold/rows", "/making/fold/rule", "/making/lift/cord", "/name");
    const step = fc.record({ key: keys, value: fc.option(fc.integer(), { nil: undefined }) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        let document: unknown = { name: "a" };
        let history = EMPTY_HISTORY;
        for (const { key, value } of steps) {
          const patch = value === undefined ? clearPatch(document, key) : setPatch(document, key, value);
          if (patch.length === 0) continue;
          ({ document, history } = applyEdit(document, history, { label: key, patch }));
          expect(valueAt(document, key)).toEqual(value);
        }
        const last = document;
        const done = history.past.length;
        for (let n = 0; n < done; n++) ({ document, history } = undo(document, history));
        expect(document).toEqual({ name: "a" });
        for (let n = 0; n < done; n++) ({ document, history } = redo(document, history));
        expect(document).toEqual(last);
      }),
      { seed: 7 },
    );
  });
});

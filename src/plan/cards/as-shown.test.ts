import { describe, expect, it } from "vitest";
import { type Finding, type Severity, severityCounts } from "../../figures/index.ts";
import { asShown } from "./as-shown.ts";

function finding(severity: Severity, cause?: string): Finding {
  const found = { id: "a.b", stage: "safety", severity, text: "", citations: [], remedies: [] };
  return (cause === undefined ? found : { ...found, cause: { id: cause, says: "" } }) as unknown as Finding;
}

describe("what a list shows", () => {
  it("is one card for a cause, as grave as the gravest of it", () => {
    const rules = [finding("note", "cords"), finding("fix", "cords"), finding("fix", "cords")];
    expect(severityCounts(rules)).toBe("2 to fix, 1 to note");
    expect(severityCounts(asShown(rules))).toBe("1 to fix");
  });

  it("is each finding without a cause by itself, alike or not", () => {
    const shown = asShown([finding("note"), finding("note"), finding("fix", "cords"), finding("fix", "hem")]);
    expect(severityCounts(shown)).toBe("2 to fix, 2 to note");
  });
});

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { expect } from "vitest";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

interface Axe {
  run(options: object): Promise<{
    violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[];
    passes: unknown[];
  }>;
}

/** What axe finds against WCAG 2.2 AA on the page as it stands. */
export async function violations(page: Page): Promise<string[]> {
  // Colours on the move have no contrast to judge.
  await page.waitForTimeout(150);
  await page.evaluate(AXE);
  const result = await page.evaluate(
    (tags) => (globalThis as unknown as { axe: Axe }).axe.run({ runOnly: { type: "tag", values: tags } }),
    RULES,
  );
  expect(result.passes.length).toBeGreaterThan(10);
  return result.violations.map(
    ({ id, nodes }) => `${id}: ${nodes.length} × ${nodes[0]?.html.slice(0, 160)} ${nodes[0]?.failureSummary}`,
  );
}

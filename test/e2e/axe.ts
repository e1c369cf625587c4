import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { expect } from "vitest";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Node {
  html: string;
  /** How it is found in the page. */
  target: string[];
  failureSummary?: string;
}

interface Axe {
  run(options: object): Promise<{ violations: { id: string; nodes: Node[] }[]; passes: unknown[] }>;
}

interface Rules {
  type: "tag" | "rule";
  values: string[];
}

const EVERYTHING: Rules = {
  type: "tag",
  values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
};

/** What the size of the screen alone changes: where targets stand, and what has to be scrolled to. */
const OF_LAYOUT: Rules = { type: "rule", values: ["target-size", "scrollable-region-focusable"] };

/** What a theme alone changes. */
const OF_COLOUR: Rules = { type: "rule", values: ["color-contrast"] };

/** What axe finds against WCAG 2.2 AA on the page as it stands. */
export function violations(page: Page): Promise<string[]> {
  return judge(page, EVERYTHING);
}

/**
 * What axe finds on a page that is shown at one size and in one theme after the other. Where it showed all that it
 * shows now before, only what the size itself changes is judged anew; in another theme than the first, colours alone.
 */
export async function newViolations(page: Page, theme: string, isFirst: boolean): Promise<string[]> {
  const isNew = await showsMore(page, theme);
  if (!isFirst) return isNew ? judge(page, OF_COLOUR) : [];
  return judge(page, isNew ? EVERYTHING : OF_LAYOUT);
}

async function judge(page: Page, rules: Rules): Promise<string[]> {
  // Colours on the move have no contrast to judge.
  await page.waitForTimeout(150);
  await page.evaluate(AXE);
  const { violations, passes } = await run(page, rules);
  if (rules === EVERYTHING) expect(passes.length).toBeGreaterThan(10);
  const targets = violations.find(({ id }) => id === "target-size");
  if (targets !== undefined) targets.nodes = await smallWherever(page, targets.nodes);
  return violations
    .filter(({ nodes }) => nodes.length > 0)
    .map(
      ({ id, nodes }) =>
        `${id}: ${nodes.length} × ${nodes[0]?.html.slice(0, 160)} ${nodes[0]?.failureSummary}`,
    );
}

function run(page: Page, runOnly: Rules): ReturnType<Axe["run"]> {
  return page.evaluate(
    (only) => (globalThis as unknown as { axe: Axe }).axe.run({ runOnly: only, resultTypes: ["violations"] }),
    runOnly,
  );
}

/** Of targets that are too small those that still are where they stand amid the screen: a bar may lie over the rest. */
async function smallWherever(page: Page, nodes: Node[]): Promise<Node[]> {
  const small: Node[] = [];
  for (const node of nodes) {
    await page.evaluate(
      (selector) =>
        document.querySelector(selector)?.scrollIntoView({ block: "center", behavior: "instant" }),
      node.target.join(" "),
    );
    const again = (await run(page, { type: "rule", values: ["target-size"] })).violations;
    if (again.some(({ nodes: still }) => still.some(({ html }) => html === node.html))) small.push(node);
  }
  return small;
}

/** Whether anything shows in this theme that did not show since the page stands as it does. */
function showsMore(page: Page, theme: string): Promise<boolean> {
  return page.evaluate((name) => {
    const held = globalThis as { shown?: Map<string, Set<string>> };
    held.shown ??= new Map();
    const before = held.shown.get(name) ?? new Set();
    held.shown.set(name, before);
    const count = before.size;
    // Drawings follow the size of the screen; axe does not look into them.
    for (const one of document.querySelectorAll("body *:not(svg *)")) {
      if (!one.checkVisibility({ visibilityProperty: true })) continue;
      const own = [...one.childNodes].map((node) => (node.nodeType === 3 ? node.textContent : "")).join("");
      const bare = one.cloneNode(false) as Element;
      for (const name of ["style", "width", "height", "viewBox", "src"]) bare.removeAttribute(name);
      before.add(bare.outerHTML + own);
    }
    return before.size > count;
  }, theme);
}

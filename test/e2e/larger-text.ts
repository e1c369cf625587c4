import type { Page } from "playwright-core";

/** What a reader may set without losing anything: WCAG 2.2, 1.4.12 Text Spacing. */
const SPACING = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
p { margin-bottom: 2em !important; }`;

/** Text at twice its size: WCAG 2.2, 1.4.4 Resize Text. */
const TWICE = "html { font-size: 200% !important; }";

/**
 * What is lost when text is spaced out, and on a wide screen when it is twice as large: what reaches beyond the screen,
 * and words that their box cuts off. What is shortened on purpose, with an ellipsis, is not counted.
 */
export async function lostWords(page: Page, isWide: boolean): Promise<string[]> {
  const lost: string[] = [];
  for (const [name, css] of [
    ["spaced out", SPACING],
    ...(isWide ? [["twice as large", TWICE]] : []),
  ] as const) {
    await setSheet(page, css ?? "");
    // Drawings follow the size of the letters.
    await page.waitForTimeout(150);
    lost.push(...(await page.evaluate(cutOff)).map((words) => `${name}: ${words}`));
  }
  await setSheet(page, "");
  return lost;
}

/** A sheet of the reader's own, which no content policy of the page forbids. */
function setSheet(page: Page, css: string): Promise<void> {
  return page.evaluate((text) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    document.adoptedStyleSheets = [sheet];
  }, css);
}

function cutOff(): string[] {
  const beyondPx = document.documentElement.scrollWidth - innerWidth;
  const found = beyondPx > 0 ? [`the page reaches ${beyondPx} px beyond the screen`] : [];
  for (const one of document.querySelectorAll<HTMLElement>("header *, main *")) {
    const own = [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim() !== "");
    if (!own || !one.checkVisibility() || one.closest("svg, .hidden-words, .visually-hidden")) continue;
    const { overflowX, overflowY, textOverflow, webkitLineClamp } = getComputedStyle(one);
    if (textOverflow === "ellipsis" || (webkitLineClamp !== "none" && webkitLineClamp !== "")) continue;
    const hides = (overflow: string) => overflow === "hidden" || overflow === "clip";
    const isCut =
      (hides(overflowX) && one.scrollWidth > one.clientWidth + 1) ||
      (hides(overflowY) && one.scrollHeight > one.clientHeight + 1);
    if (isCut) found.push(`${one.className}: ${one.textContent?.trim().slice(0, 40)}`);
  }
  return found;
}

import type { Page } from "playwright-core";

/** What a reader may set without losing anything: WCAG 2.2, 1.4.12 Text Spacing. */
const SPACING = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
p { margin-bottom: 2em !important; }`;

/** Letters of a browser as it comes, and twice as large (WCAG 2.2, 1.4.4 Resize Text), px. */
const USUAL_PX = 16;
const TWICE_PX = 32;

/**
 * What is lost when text is spaced out, and when the reader's browser has its letters twice as large: what reaches
 * beyond the screen, and words that their box cuts off. What is shortened on purpose, with an ellipsis, is not counted.
 */
export async function lostWords(page: Page): Promise<string[]> {
  const lost: string[] = [];
  const look = async (name: string) => {
    // Drawings follow the size of the letters.
    await page.waitForTimeout(150);
    lost.push(...(await page.evaluate(cutOff)).map((words) => `${name}: ${words}`));
  };
  await setSheet(page, SPACING);
  await look("spaced out");
  await setSheet(page, "");
  await setLetters(page, TWICE_PX);
  await look("twice as large");
  await setLetters(page, USUAL_PX);
  return lost;
}

/** Letters that the reader chose in the browser: layouts that count in them follow. */
async function setLetters(page: Page, standard: number): Promise<void> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("Page.setFontSizes", { fontSizes: { standard } });
  await page.waitForFunction((px) => {
    const rem = innerWidth / px;
    return matchMedia(`(min-width: ${rem - 0.01}rem) and (max-width: ${rem + 0.01}rem)`).matches;
  }, standard);
  await cdp.detach();
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

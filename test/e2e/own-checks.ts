import type { Page } from "playwright-core";

/**
 * Controls that are lower than they may be: 44 px under a finger, 24 px under a mouse (WCAG 2.2, 2.5.5 and 2.5.8). What
 * stands within a sentence is excepted there, and so is what is folded away.
 */
export function smallTargets(page: Page, leastPx: number): Promise<string[]> {
  return page.evaluate((least) => {
    const all = document.querySelectorAll<HTMLElement>(
      ":is(main, header, footer, .rail, .class-view) :is(button, a, select, summary, input:not([type=radio], [type=checkbox], [type=file]))",
    );
    return [...all]
      .filter((one) => one.checkVisibility({ visibilityProperty: true }))
      .filter(
        (one) =>
          !one.closest(
            "p, li > span, .chapter-sentence, .hidden-words, .raise, svg, .caption-words, .sheet-caption",
          ),
      )
      .filter((one) => {
        const { width, height } = one.getBoundingClientRect();
        return width > 1 && height > 1 && height < least - 0.5;
      })
      .map(
        (one) =>
          `${one.tagName} ${one.className} “${one.textContent?.slice(0, 30)}” ${one.getBoundingClientRect().height.toFixed(0)} px`,
      );
  }, leastPx);
}

/** Tables that hide a part of themselves beyond the edge: it is read, and pressed, only by who finds it. */
export function cutTables(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll(".table-room")]
      .filter((room) => room.checkVisibility() && room.scrollWidth > room.clientWidth + 1)
      .map(
        (room) =>
          `“${room.querySelector("caption")?.textContent}”: ${room.scrollWidth} px of a table in ${room.clientWidth}`,
      ),
  );
}

/** Stops of the tab key on which nothing shows where the focus is, or which stand under something else. */
export async function hiddenFocus(page: Page, stops: number): Promise<string[]> {
  await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
    scrollTo(0, 0);
  });
  const found: string[] = [];
  for (let n = 0; n < stops; n++) {
    await page.keyboard.press("Tab");
    let fault = await faultOfFocus(page);
    if (fault !== "") {
      // What lies over it gives way by the next frame that is seen.
      await nextFrame(page);
      fault = await faultOfFocus(page);
    }
    if (fault !== "") found.push(fault);
  }
  return [...new Set(found)];
}

/** Waits until the page has been drawn anew. */
export async function nextFrame(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
  );
}

/** What is wrong with how the focus shows, or nothing. */
function faultOfFocus(page: Page): Promise<string> {
  return page.evaluate(() => {
    const one = document.activeElement;
    if (!(one instanceof Element) || one === document.body) return "";
    const name = `${one.tagName} ${one.getAttribute("class")} “${(one.textContent ?? "").slice(0, 30)}”`;
    // What is shown may be the frame of a field, the box of a choice or the mark of a slider around it.
    const shows = [one, ...around(one)].some((at) => {
      const { outlineStyle, outlineWidth, stroke, strokeWidth, boxShadow } = getComputedStyle(at);
      const isOutlined = outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 1;
      const isStroked = at instanceof SVGElement && stroke !== "none" && Number.parseFloat(strokeWidth) > 0;
      return isOutlined || isStroked || boxShadow !== "none";
    });
    if (!shows) return `nothing shows the focus: ${name}`;
    const box = (one.closest(".raise, .segment") ?? one).getBoundingClientRect();
    const x = Math.min(Math.max(box.x + box.width / 2, 0), innerWidth - 1);
    const y = box.y + box.height / 2;
    if (box.width < 2 || box.height < 2) return "";
    if (y < 0 || y > innerHeight) return `the focus is off the screen: ${name}`;
    const top = document.elementFromPoint(x, y);
    const isCovered =
      top !== null &&
      !one.contains(top) &&
      !top.contains(one) &&
      top.closest("label, .raise, .segment, svg, .field") === null;
    return isCovered ? `the focus is under ${top.tagName} ${top.getAttribute("class")}: ${name}` : "";

    function around(at: Element): Element[] {
      const frame = at.closest(".segment, .field, .raise, label, li");
      const inside = frame === null ? [] : [...frame.querySelectorAll("*")];
      return [...(frame === null ? [] : [frame]), ...inside];
    }
  });
}

/** Neighbours that are read in another order than they stand: the later one above, or to the left on the same line. */
export function outOfOrder(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    for (const parent of document.querySelectorAll("main, main *:not(svg, svg *)")) {
      // Columns of a page are read one after the other.
      if (getComputedStyle(parent).columnCount !== "auto" || getComputedStyle(parent).columnWidth !== "auto")
        continue;
      const children = [...parent.children].filter((one) => {
        const { position, float, display } = getComputedStyle(one);
        // Words in a line go on at the left of the next.
        if (display.startsWith("inline")) return false;
        const { width, height } = one.getBoundingClientRect();
        return (
          /static|relative/.test(position) &&
          float === "none" &&
          width > 1 &&
          height > 1 &&
          one.checkVisibility()
        );
      });
      for (const [at, child] of children.entries()) {
        const next = children[at + 1];
        if (next === undefined) continue;
        const [a, b] = [child.getBoundingClientRect(), next.getBoundingClientRect()];
        const isAbove = b.bottom <= a.top + 1;
        const isLeft = b.right <= a.left + 1 && b.top < a.bottom - 1 && a.top < b.bottom - 1;
        if (isAbove || isLeft)
          found.push(
            `${parent.className}: ${child.tagName}.${child.className} is read before ${next.className}`,
          );
      }
    }
    return [...new Set(found)];
  });
}

/**
 * Words that cannot be read where the device forces its colours: it lays its own ground behind them, so they must not be
 * in the colour of that ground, nor, where they keep their own colours, in that of what they stand on (CSS Color
 * Adjustment 1, section 3, forced colours).
 */
export function unreadForced(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const canvas = getComputedStyle(document.body).backgroundColor;
    const found: string[] = [];
    for (const one of document.querySelectorAll("body *:not(svg *)")) {
      const own = [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim() !== "");
      if (!own || !one.checkVisibility({ visibilityProperty: true })) continue;
      const { color, forcedColorAdjust } = getComputedStyle(one) as CSSStyleDeclaration & {
        forcedColorAdjust: string;
      };
      const ground = forcedColorAdjust === "none" ? groundOf(one) : canvas;
      if (color === ground) found.push(`${one.tagName} ${one.className} “${one.textContent?.slice(0, 30)}”`);
    }
    return [...new Set(found)];

    function groundOf(one: Element): string {
      for (let at: Element | null = one; at !== null; at = at.parentElement) {
        const { backgroundColor } = getComputedStyle(at);
        if (backgroundColor !== "rgba(0, 0, 0, 0)") return backgroundColor;
      }
      return canvas;
    }
  });
}

/** Whether what changes can be said: a region that stands there before anything has changed. */
export function liveRegions(page: Page): Promise<number> {
  return page.locator("[role=status], [role=alert], [aria-live]:not([aria-live=off])").count();
}

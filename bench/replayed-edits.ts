import type { Page } from "playwright-core";

/** Long enough for all that follows the painted frame of an edit. */
const SETTLED_MS = 2500;

/**
 * From now on two edits change of the page what they change today, with no code of the planner: their changes are recorded
 * once, and replayed in turn at each input. What a repaint then takes is the browser's own share of it.
 */
export async function replayEdits(page: Page, edit: (n: number) => Promise<void>): Promise<void> {
  const recording = await page.evaluateHandle(() => {
    const edits: (() => void)[][] = [];
    const observer = new MutationObserver((changes) => {
      for (const { type, target, attributeName } of changes) {
        if (target === document.activeElement) continue;
        const { nodeValue } = target;
        if (type === "characterData") edits.at(-1)?.push(() => Object.assign(target, { nodeValue }));
        if (attributeName === null || !(target instanceof Element)) continue;
        const value = target.getAttribute(attributeName);
        edits
          .at(-1)
          ?.push(() =>
            value === null
              ? target.removeAttribute(attributeName)
              : target.setAttribute(attributeName, value),
          );
      }
    });
    observer.observe(document.body, { subtree: true, attributes: true, characterData: true });
    return { edits, observer };
  });
  for (const n of [0, 1]) {
    await recording.evaluate(({ edits }) => edits.push([]));
    await edit(n);
    await page.waitForTimeout(SETTLED_MS);
  }
  await recording.evaluate(({ edits, observer }) => {
    observer.disconnect();
    let turn = 0;
    const replay = (start: number) => {
      for (const change of edits[turn++ % 2] ?? []) change();
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        // Sent from the frame callback it arrives once the frame has been painted, as the planner measures it.
        port1.onmessage = () => {
          port1.close();
          performance.measure("shadewright:repaint", {
            start,
            end: performance.now(),
            detail: { waitedMs: 0 },
          });
        };
        port2.postMessage(undefined);
      });
    };
    for (const name of ["beforeinput", "input", "change", "keydown", "keyup", "selectionchange"])
      window.addEventListener(
        name,
        (event) => {
          event.stopImmediatePropagation();
          if (name === "input") replay(event.timeStamp);
        },
        true,
      );
  });
}

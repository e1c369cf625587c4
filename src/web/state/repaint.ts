/**
 * Measures each edit from its event to the frame that shows it, as `shadewright:repaint`
 * in the browser's performance timeline.
 */
const NAME = "shadewright:repaint";
/** Measures kept; older ones are dropped, so that a day's work does not fill the memory. */
const MOST = 2000;

let startedMs: number | undefined;
let measured = 0;

/** An edit begins: at its event, where one is being handled. */
export function repaintStarts(): void {
  if (startedMs !== undefined || !("requestAnimationFrame" in globalThis)) return;
  const now = performance.now();
  const eventMs = globalThis.event?.timeStamp;
  // A timestamp of another clock, or of an event long past, says nothing about this edit.
  startedMs = eventMs !== undefined && eventMs <= now && now - eventMs < 1000 ? eventMs : now;
  requestAnimationFrame(() => afterPaint(repaintEnds));
}

/** A message sent from the frame callback arrives once the frame has been painted. */
function afterPaint(then: () => void): void {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    then();
  };
  port2.postMessage(undefined);
}

function repaintEnds(): void {
  if (startedMs === undefined) return;
  if (++measured % MOST === 0) performance.clearMeasures(NAME);
  performance.measure(NAME, { start: startedMs, end: performance.now() });
  startedMs = undefined;
}

/**
 * Measures each edit from its event to the painted frame that shows it, as `shadewright:repaint` in the
 * browser's performance timeline.
 *
 * Between the work of the event and the work of the frame the page stands idle until the display asks for
 * its next picture, on a 60 Hz screen 8 ms in the mean. That wait is nobody's work and is left out; it stands
 * in the measure's `detail` as `waitedMs`. What takes longer than from one picture to the next is work that held the
 * frame up, and counts.
 */
const NAME = "shadewright:repaint";
/** From one picture of a 60 Hz screen to the next. */
const FRAME_MS = 1000 / 60;
/** Measures kept; older ones are dropped, so that a day's work does not fill the memory. */
const MOST = 2000;

let startedMs: number | undefined;
let workedMs = 0;
let measured = 0;

/** An edit begins: at its event, where one is being handled. */
export function repaintStarts(): void {
  if (startedMs !== undefined || !("requestAnimationFrame" in globalThis)) return;
  const now = performance.now();
  const eventMs = globalThis.event?.timeStamp;
  // A timestamp of another clock, or of an event long past, says nothing about this edit.
  const start = eventMs !== undefined && eventMs <= now && now - eventMs < 1000 ? eventMs : now;
  startedMs = start;
  workedMs = Number.POSITIVE_INFINITY;
  // Arrives once the event and everything that it set off have been worked through.
  soon(() => {
    workedMs = performance.now();
  });
  requestAnimationFrame(() => {
    const frameMs = performance.now();
    // Sent from the frame callback it arrives once the frame has been painted.
    soon(() => repaintEnds(start, Math.min(FRAME_MS, Math.max(0, frameMs - workedMs))));
  });
}

let channel: MessageChannel | undefined;
const waiting: (() => void)[] = [];

/** A new channel for each edit costs more than the message: one is kept. */
function soon(then: () => void): void {
  if (channel === undefined) {
    channel = new MessageChannel();
    channel.port1.onmessage = () => waiting.shift()?.();
  }
  waiting.push(then);
  channel.port2.postMessage(undefined);
}

function repaintEnds(start: number, waitedMs: number): void {
  if (++measured % MOST === 0) performance.clearMeasures(NAME);
  performance.measure(NAME, { start: start + waitedMs, end: performance.now(), detail: { waitedMs } });
  startedMs = undefined;
}

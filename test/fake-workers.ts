import { expose } from "comlink";
import { vi } from "vitest";

/** Workers on message channels: the first does what the first service does, and so on; the last goes for all after it. */
export function stubWorkers(...services: object[]): { begun: number } {
  const count = { begun: 0 };
  vi.stubGlobal("Worker", function begin() {
    const { port1, port2 } = new MessageChannel();
    const service = services[Math.min(count.begun, services.length - 1)];
    expose({ ...service, holdLock: () => undefined }, port2);
    count.begun++;
    port2.start();
    port1.start();
    return Object.assign(port1, { terminate: () => port1.close() });
  });
  return count;
}

/** Never answers. */
export const hang = (): Promise<never> => new Promise(() => {});

/** Lets time pass for who waits for it alone: messages come and go all the while. */
export function onlyTimersFake(): void {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
}

/** Turns of the loop of events until it is so; time moves on by as much at each of them. */
export async function passUntil(isSo: () => boolean, stepMs: number, mostTurns = 1000): Promise<void> {
  for (let turn = 0; !isSo() && turn < mostTurns; turn++) {
    await new Promise((resolve) => setImmediate(resolve));
    vi.advanceTimersByTime(stepMs);
  }
  if (!isSo()) throw new Error("it has not come to pass");
}

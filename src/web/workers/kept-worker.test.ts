import { expose } from "comlink";
import { afterEach, expect, test, vi } from "vitest";
import { KeptWorker, WorkerDied, WorkerEnded } from "./kept-worker.ts";
import { useReplaced } from "./replaced.ts";
import { withLife } from "./worker-life.ts";

interface Adder {
  add(a: number, b: number): number | Promise<number>;
}

/** A worker on a message channel, that dies the way the browser tells of it. */
function workerOf(service: Adder, begun: { die(): void }[]): Worker {
  const { port1, port2 } = new MessageChannel();
  expose(withLife(service), port2);
  port2.start();
  port1.start();
  const deaths = new EventTarget();
  const listenToPort = port1.addEventListener.bind(port1);
  const addEventListener = (type: string, listen: EventListener) =>
    type === "error" ? deaths.addEventListener(type, listen) : listenToPort(type, listen);
  begun.push({
    die: () => deaths.dispatchEvent(Object.assign(new Event("error"), { message: "out of memory" })),
  });
  return Object.assign(port1, { addEventListener, terminate: () => port1.close() }) as unknown as Worker;
}

const never = () => new Promise<number>(() => {});

afterEach(() => useReplaced.setState({ isTold: false, isShown: false }));

test("a question whose worker dies is asked again of another, and the maker is told once", async () => {
  const begun: { die(): void }[] = [];
  const services: Adder[] = [{ add: never }, { add: (a, b) => a + b }];
  const kept = new KeptWorker<Adder>(() => workerOf(services[begun.length] as Adder, begun));
  const sum = kept.ask((service) => service.add(1, 2));
  begun[0]?.die();
  expect(await sum).toBe(3);
  expect(begun).toHaveLength(2);
  expect(useReplaced.getState()).toEqual({ isTold: true, isShown: true });
  // The same worker answers the next question.
  expect(await kept.ask((service) => service.add(2, 2))).toBe(4);
  expect(begun).toHaveLength(2);
  kept.end();
});

test("a question that kills every worker is given up, and the next one has a new worker", async () => {
  const begun: { die(): void }[] = [];
  const kept = new KeptWorker<Adder>(() => {
    const worker = workerOf({ add: begun.length < 3 ? never : (a, b) => a + b }, begun);
    if (begun.length <= 3) setTimeout(() => begun.at(-1)?.die(), 0);
    return worker;
  });
  await expect(kept.ask((service) => service.add(1, 2))).rejects.toThrow(WorkerDied);
  expect(begun).toHaveLength(3);
  expect(await kept.ask((service) => service.add(1, 2))).toBe(3);
  kept.end();
});

test("a worker that dies before it can say that it lives is replaced, too", async () => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  try {
    const begun: { die(): void }[] = [];
    const silent = Object.assign(new MessageChannel().port1, { terminate() {} }) as unknown as Worker;
    let first = true;
    const kept = new KeptWorker<Adder>(() => {
      if (!first) return workerOf({ add: (a, b) => a + b }, begun);
      first = false;
      return silent;
    });
    const sum = kept.ask((service) => service.add(1, 2));
    vi.advanceTimersByTime(60_000);
    expect(await sum).toBe(3);
    // The one that lives is not ended for what the first one did not do.
    vi.advanceTimersByTime(600_000);
    expect(await kept.ask((service) => service.add(2, 2))).toBe(4);
    expect(begun).toHaveLength(1);
    kept.end();
  } finally {
    vi.useRealTimers();
  }
});

test("a worker that has begun and hangs at its work is replaced, and asked again", async () => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  try {
    const begun: { die(): void }[] = [];
    let asked = () => {};
    const isAsked = new Promise<void>((resolve) => {
      asked = resolve;
    });
    const hangs: Adder = {
      add: () => {
        asked();
        return never();
      },
    };
    const services: Adder[] = [hangs, { add: (a, b) => a + b }];
    const kept = new KeptWorker<Adder>(() => workerOf(services[begun.length] as Adder, begun));
    const sum = kept.ask((service) => service.add(1, 2), 1000);
    await isAsked;
    vi.advanceTimersByTime(999);
    expect(begun).toHaveLength(1);
    vi.advanceTimersByTime(2);
    expect(await sum).toBe(3);
    expect(begun).toHaveLength(2);
    expect(useReplaced.getState()).toEqual({ isTold: true, isShown: true });
    // What was answered in time is not ended for it later, nor is one without a limit.
    vi.advanceTimersByTime(600_000);
    expect(await kept.ask((service) => service.add(2, 2))).toBe(4);
    expect(begun).toHaveLength(2);
    kept.end();
  } finally {
    vi.useRealTimers();
  }
});

test("one that is ended lets nobody wait", async () => {
  const kept = new KeptWorker<Adder>(() => workerOf({ add: never }, []));
  const sum = kept.ask((service) => service.add(1, 2));
  kept.end();
  await expect(sum).rejects.toThrow(WorkerEnded);
  expect(useReplaced.getState().isTold).toBe(false);
});

test("an error of the work itself is no death", async () => {
  const refuse = () => {
    throw new RangeError("too large");
  };
  const kept = new KeptWorker<Adder>(() => workerOf({ add: refuse }, []));
  await expect(kept.ask((service) => service.add(1, 2))).rejects.toThrow("too large");
  expect(useReplaced.getState().isTold).toBe(false);
  kept.end();
});

import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { hang, onlyTimersFake, passUntil, stubWorkers } from "../../../test/fake-workers.ts";
import type { PictureScene } from "../../drawing/index.ts";
import type { OnScreen } from "../sheets/sheet-placing.ts";
import { KeptWorker } from "../workers/kept-worker.ts";
import { useReplaced } from "../workers/replaced.ts";
import { drawStill } from "./draw-still.ts";
import { drawSmall } from "./small-pictures.ts";
import type { StillService } from "./still-worker.ts";

beforeEach(onlyTimersFake);
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  useReplaced.setState({ isTold: false, isShown: false });
});

const newWorker = () => new KeptWorker<StillService>(() => new Worker("still"));
/** A page that drew this would throw. */
const scene = {} as PictureScene;
const bounds = { maxWidthMm: 100, maxHeightMm: 100 };
const picture = { widthMm: 80 } as unknown as OnScreen;

async function answerOf<T>(asked: Promise<T>, stepMs = 1000): Promise<T> {
  let isOver = false;
  const over = () => {
    isOver = true;
  };
  asked.then(over, over);
  await passUntil(() => isOver, stepMs);
  return asked;
}

test("a worker that hangs at a picture is replaced, and the maker told", async () => {
  const workers = stubWorkers({ draw: hang }, { draw: () => picture });
  expect(await answerOf(drawStill(newWorker(), { scene, bounds }, false))).toEqual(picture);
  expect(workers.begun).toBe(2);
  expect(useReplaced.getState()).toEqual({ isTold: true, isShown: true });
});

test("a picture that no worker comes to an end of is not tried on the page", async () => {
  const workers = stubWorkers({ draw: hang });
  expect(await answerOf(drawStill(newWorker(), { scene, bounds }, false))).toBe("hung");
  expect(workers.begun).toBe(3);
});

test("one that hangs at a small picture does not keep the others waiting", async () => {
  const workers = stubWorkers({ drawSmall: hang }, { drawSmall: () => [] });
  const drawn = Promise.all([drawSmall(scene, () => true), drawSmall(scene, () => true)]);
  expect(await answerOf(drawn)).toEqual([[], []]);
  expect(workers.begun).toBe(2);
});

import type { PictureScene } from "../../drawing/index.ts";
import type { Bounds, OnScreen } from "../sheets/sheet-placing.ts";
import { HANGS_MS } from "../workers/hangs.ts";
import { type KeptWorker, WorkerEnded, WorkerHung } from "../workers/kept-worker.ts";
import { placeScene } from "./place-scene.ts";
import type { StillService } from "./still-worker.ts";

export interface WantedStill {
  scene: PictureScene;
  bounds: Bounds;
}

/**
 * One picture drawn in a worker; where none can be begun, on the page's own thread. `hung` where no worker comes to an end
 * of it: neither would the page. Undefined where the worker was ended meanwhile.
 */
export async function drawStill(
  worker: Pick<KeptWorker<StillService>, "ask">,
  { scene, bounds }: WantedStill,
  coarse: boolean,
): Promise<OnScreen | "hung" | undefined> {
  try {
    return await worker.ask((service) => service.draw(scene, bounds, coarse), HANGS_MS);
  } catch (error) {
    if (error instanceof WorkerEnded) return undefined;
    return error instanceof WorkerHung ? "hung" : placeScene(scene, bounds, coarse);
  }
}

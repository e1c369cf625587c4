import { expose } from "comlink";
import type { PictureScene } from "../../drawing/index.ts";
import type { Bounds, OnScreen } from "../sheets/sheet-placing.ts";
import { withLife } from "../workers/worker-life.ts";
import { placeScene } from "./place-scene.ts";

const service = {
  async draw(scene: PictureScene, bounds: Bounds, coarse: boolean): Promise<OnScreen> {
    return placeScene(scene, bounds, coarse);
  },
};

export type StillService = typeof service;

expose(withLife(service));

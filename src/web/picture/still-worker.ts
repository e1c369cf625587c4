import "../no-code-from-text.ts";
import { expose } from "comlink";
import { type Facet, type PictureScene, smallPicture } from "../../drawing/index.ts";
import type { Bounds, OnScreen } from "../sheets/sheet-placing.ts";
import { withLife } from "../workers/worker-life.ts";
import { placeScene } from "./place-scene.ts";

const service = {
  async draw(scene: PictureScene, bounds: Bounds, coarse: boolean): Promise<OnScreen> {
    return placeScene(scene, bounds, coarse);
  },
  async drawSmall(scene: PictureScene): Promise<Facet[]> {
    return smallPicture(scene);
  },
};

export type StillService = typeof service;

expose(withLife(service));

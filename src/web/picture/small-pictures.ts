import { type Facet, type PictureScene, pictureScene } from "../../drawing/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { HANGS_MS } from "../workers/hangs.ts";
import { KeptWorker } from "../workers/kept-worker.ts";
import type { StillService } from "./still-worker.ts";

/** A worker that nobody asks anything goes after this long, ms. */
const IDLE_MS = 10_000;

let worker: KeptWorker<StillService> | undefined;
let leaving: ReturnType<typeof setTimeout> | undefined;
/** They are drawn one after the other, so that whoever stops asking stops the work. */
let line: Promise<unknown> = Promise.resolve();

/** A small picture drawn in a worker; undefined where none could be made: the lines stay. */
export function drawSmall(
  scene: PictureScene,
  isWanted: () => boolean,
): Promise<readonly Facet[] | undefined> {
  const drawn = line.then(() => (isWanted() ? ask(scene) : undefined)).catch(() => undefined);
  line = drawn;
  return drawn;
}

async function ask(scene: PictureScene): Promise<readonly Facet[]> {
  clearTimeout(leaving);
  worker ??= new KeptWorker<StillService>(
    () => new Worker(new URL("./still-worker.ts", import.meta.url), { type: "module" }),
  );
  try {
    return await worker.ask((service) => service.drawSmall(scene), HANGS_MS);
  } finally {
    clearTimeout(leaving);
    leaving = setTimeout(() => {
      worker?.end();
      worker = undefined;
    }, IDLE_MS);
  }
}

interface Drawn {
  raise: number;
  faces: readonly Facet[];
}

const known = new WeakMap<ShadePlan, Drawn>();

/** How a shade hangs at one height, in few faces; what was drawn last of it is kept. */
export async function smallPictureOf(
  shade: ShadePlan,
  units: UnitChoice,
  raise: number,
  isWanted: () => boolean,
): Promise<readonly Facet[] | undefined> {
  const last = known.get(shade);
  if (last?.raise === raise) return last.faces;
  const faces = await drawSmall(pictureScene({ shade, units, raise }), isWanted);
  if (faces !== undefined) known.set(shade, { raise, faces });
  return faces;
}

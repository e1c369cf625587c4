import { useEffect, useRef, useState } from "react";
import { isNet } from "../../drape/index.ts";
import { type PictureScene, pictureScene } from "../../drawing/index.ts";
import { useShadeNow } from "../shade/shade-context.tsx";
import { PlacedSheet, paperOf } from "../sheets/sheet.tsx";
import type { Bounds, OnScreen } from "../sheets/sheet-placing.ts";
import type { ElementSize } from "../sheets/use-box.ts";
import { useUnits } from "../state/fields.ts";
import { usePlanner } from "../state/store.ts";
import { KeptWorker, WorkerEnded } from "../workers/kept-worker.ts";
import { type LatestFirst, latestFirst } from "./latest-first.ts";
import { placeScene } from "./place-scene.ts";
import type { StillService } from "./still-worker.ts";
import "./still-picture.css";

/** The shade as it hangs, in lines and areas: worked out in a worker, coarsely at once where cloth must come to rest. */
export function StillPicture({ box }: { box: ElementSize }) {
  const { plan } = useShadeNow();
  const units = useUnits();
  const raise = usePlanner((planner) => planner.view.raise);
  const { pxPerMm, maxWidthMm, maxHeightMm } = paperOf(box);
  // Its effect comes before the one that asks it.
  const { shown, drawer } = useDrawer();
  useEffect(() => {
    drawer.current?.want({
      scene: pictureScene({ shade: plan, units, raise }),
      bounds: { maxWidthMm, maxHeightMm },
    });
  }, [plan, units, raise, maxWidthMm, maxHeightMm, drawer]);
  if (shown === undefined)
    return (
      <p className="quiet" role="status">
        The cloth is being hung …
      </p>
    );
  return (
    <div className="still" data-picture={shown.coarse ? "coarse" : "fine"}>
      <PlacedSheet onScreen={shown.onScreen} pxPerMm={pxPerMm} isRaised />
    </div>
  );
}

interface Wanted {
  scene: PictureScene;
  bounds: Bounds;
}

interface Shown {
  onScreen: OnScreen;
  coarse: boolean;
}

/** Draws in a worker that lives as long as the picture is looked at; where none can be begun, on the page's own thread. */
function useDrawer(): { shown: Shown | undefined; drawer: { current: LatestFirst<Wanted> | undefined } } {
  const [shown, setShown] = useState<Shown>();
  const drawer = useRef<LatestFirst<Wanted>>(undefined);
  useEffect(() => {
    const worker = new KeptWorker<StillService>(
      () => new Worker(new URL("./still-worker.ts", import.meta.url), { type: "module" }),
    );
    const place = ({ scene, bounds }: Wanted, coarse: boolean) =>
      worker
        .ask((service) => service.draw(scene, bounds, coarse))
        .catch((error: unknown) => {
          if (error instanceof WorkerEnded) return undefined;
          return placeScene(scene, bounds, coarse);
        });
    const own = latestFirst<Wanted>(
      ({ scene }) => isNet(scene.drape),
      async (wanted, coarse) => {
        const onScreen = await place(wanted, coarse);
        if (onScreen !== undefined && drawer.current === own) setShown({ onScreen, coarse });
      },
    );
    drawer.current = own;
    return () => {
      own.stop();
      drawer.current = undefined;
      worker.end();
    };
  }, []);
  return { shown, drawer };
}

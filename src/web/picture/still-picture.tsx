import { useEffect, useRef, useState } from "react";
import { isNet } from "../../drape/index.ts";
import { pictureScene } from "../../drawing/index.ts";
import { useShadeNow } from "../shade/shade-context.tsx";
import { PlacedSheet, paperOf } from "../sheets/sheet.tsx";
import type { OnScreen } from "../sheets/sheet-placing.ts";
import type { ElementSize } from "../sheets/use-box.ts";
import { useUnits } from "../state/fields.ts";
import { useRaise } from "../state/raise.ts";
import { KeptWorker } from "../workers/kept-worker.ts";
import { drawStill, type WantedStill } from "./draw-still.ts";
import { type LatestFirst, latestFirst } from "./latest-first.ts";
import type { StillService } from "./still-worker.ts";
import "./still-picture.css";

/** The shade as it hangs, in lines and areas: worked out in a worker, coarsely at once where cloth must come to rest. */
export function StillPicture({ box }: { box: ElementSize }) {
  const { plan } = useShadeNow();
  const units = useUnits();
  const raise = useRaise();
  const { pxPerMm, maxWidthMm, maxHeightMm } = paperOf(box);
  // Its effect comes before the one that asks it.
  const { shown, drawer } = useDrawer();
  useEffect(() => {
    drawer.current?.want({
      scene: pictureScene({ shade: plan, units, raise }),
      bounds: { maxWidthMm, maxHeightMm },
    });
  }, [plan, units, raise, maxWidthMm, maxHeightMm, drawer]);
  if (shown === undefined || shown === "hung")
    return (
      <p className="quiet" role="status">
        {shown === undefined ? "The cloth is being hung …" : HUNG}
      </p>
    );
  return (
    <div className="still" data-picture={shown.coarse ? "coarse" : "fine"}>
      <PlacedSheet onScreen={shown.onScreen} pxPerMm={pxPerMm} isRaised />
    </div>
  );
}

const HUNG = "This picture could not be drawn in time. The other drawings have all of the shade.";

interface Shown {
  onScreen: OnScreen;
  coarse: boolean;
}

interface Drawer {
  shown: Shown | "hung" | undefined;
  drawer: { current: LatestFirst<WantedStill> | undefined };
}

/** Draws in a worker that lives as long as the picture is looked at. */
function useDrawer(): Drawer {
  const [shown, setShown] = useState<Drawer["shown"]>();
  const drawer = useRef<LatestFirst<WantedStill>>(undefined);
  useEffect(() => {
    const worker = new KeptWorker<StillService>(
      () => new Worker(new URL("./still-worker.ts", import.meta.url), { type: "module" }),
    );
    const own = latestFirst<WantedStill>(
      ({ scene }) => isNet(scene.drape),
      async (wanted, coarse) => {
        const drawn = await drawStill(worker, wanted, coarse);
        if (drawn === undefined || drawer.current !== own) return;
        setShown(drawn === "hung" ? drawn : { onScreen: drawn, coarse });
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

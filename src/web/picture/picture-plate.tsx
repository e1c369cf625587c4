import { lazy, Suspense, useState } from "react";
import type { ElementSize } from "../sheets/use-box.ts";
import { StillPicture } from "./still-picture.tsx";

const LivePicture = lazy(() =>
  import("./live-picture.tsx").then((module) => ({ default: module.LivePicture })),
);

/** The sheet Picture: drawn in lines and areas at once, and in space for those who ask. */
export function PicturePlate({ box }: { box: ElementSize }) {
  const [live, setLive] = useState(false);
  const [failed, setFailed] = useState(false);
  const sheet = <StillPicture box={box} />;
  return (
    <>
      {live ? (
        <Suspense fallback={sheet}>
          <LivePicture
            onFail={() => {
              setLive(false);
              setFailed(true);
            }}
          />
        </Suspense>
      ) : (
        sheet
      )}
      {failed ? (
        <p className="picture-live small" role="status">
          This browser cannot draw in space; the picture stays.
        </p>
      ) : (
        <button
          type="button"
          className="button-plain small picture-live screen-only"
          aria-pressed={live}
          onClick={() => setLive(!live)}
        >
          {live ? "still picture" : "turn it"}
        </button>
      )}
    </>
  );
}

import { useEffect, useState } from "react";
import type { Facet } from "../../drawing/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { UnitChoice } from "../../units/index.ts";

/** Shades as they hang, by id. */
export type SmallPictures = ReadonlyMap<string, readonly Facet[]>;

/** The lines follow every edit and the slider at once; the picture waits until both rest so long, ms. */
const RESTS_MS = 250;

/**
 * Small pictures of some shades at one height, once all of them are worked out beside the page; undefined until then, and
 * where `isWanted` is false. What draws them is fetched when it is first wanted.
 */
export function useSmallPictures(
  shades: readonly ShadePlan[],
  units: UnitChoice,
  raise: number,
  isWanted: boolean,
): SmallPictures | undefined {
  const [drawn, setDrawn] = useState<{
    shades: readonly ShadePlan[];
    raise: number;
    pictures: SmallPictures;
  }>();
  useEffect(() => {
    if (!isWanted) return;
    let stays = true;
    const draw = async () => {
      const { smallPictureOf } = await import("./small-pictures.ts");
      const pictures = new Map<string, readonly Facet[]>();
      for (const shade of shades) {
        const faces = await smallPictureOf(shade, units, raise, () => stays);
        if (!stays) return;
        if (faces !== undefined) pictures.set(shade.shadeId, faces);
      }
      setDrawn({ shades, raise, pictures });
    };
    const timer = setTimeout(() => void draw().catch(() => {}), RESTS_MS);
    return () => {
      stays = false;
      clearTimeout(timer);
    };
  }, [shades, units, raise, isWanted]);
  return drawn?.shades === shades && drawn.raise === raise ? drawn.pictures : undefined;
}

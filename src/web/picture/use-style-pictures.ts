import { useEffect, useMemo, useState } from "react";
import {
  type Facet,
  pictureScene,
  SAMPLE_RAISE,
  type SceneColours,
  sceneColours,
  styleSampleJob,
} from "../../drawing/index.ts";
import { STYLES, type StyleKind } from "../../job/index.ts";
import { JobPlanner, type ShadePlan } from "../../plan/index.ts";

const NONE: ReadonlyMap<StyleKind, readonly Facet[]> = new Map();
/** Nothing else is to be drawn first, ms. */
const RESTS_MS = 400;

/** Every style in small as its cloth hangs, in the cloth of this shade, as they are worked out one after the other. */
export function useStylePictures(
  { size, form, cloth }: ShadePlan,
  isWanted: boolean,
): ReadonlyMap<StyleKind, readonly Facet[]> {
  const [pictures, setPictures] = useState(NONE);
  // A shade is planned anew with every edit; its cloth seldom changes.
  const key = useMemo(() => {
    const { face, back, patterned } = sceneColours({ size, form, cloth });
    return JSON.stringify([face, back, patterned]);
  }, [size, form, cloth]);
  const colours = useMemo(() => JSON.parse(key) as [string, string, SceneColours["patterned"]], [key]);
  useEffect(() => {
    if (!isWanted) return;
    let stays = true;
    const draw = async () => {
      const { drawSmall } = await import("./small-pictures.ts");
      for (const style of STYLES) {
        const job = styleSampleJob(style);
        const sample = new JobPlanner().shade(job, 0, 0);
        if (sample === undefined) continue;
        const scene = pictureScene({ shade: sample, units: job.units, raise: SAMPLE_RAISE });
        const [own, lining, pattern] = colours;
        const dyed = { ...scene.colours, face: own, back: lining };
        const inCloth = pattern === undefined ? dyed : { ...dyed, patterned: pattern };
        const faces = await drawSmall({ ...scene, colours: inCloth }, () => stays);
        if (!stays) return;
        if (faces !== undefined) setPictures((known) => new Map(known).set(style, faces));
      }
    };
    const timer = setTimeout(() => void draw().catch(() => {}), RESTS_MS);
    return () => {
      stays = false;
      clearTimeout(timer);
    };
  }, [colours, isWanted]);
  return pictures;
}

import type { PhotoOfCloth } from "../../drawing/index.ts";
import type { Job } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";

/** The picture of the face cloth with the place of its pattern on this shade; nothing where there is none of either. */
export function photoOfFace({ cloths }: Job, { cloth, form }: ShadePlan): PhotoOfCloth | undefined {
  const face = cloth.layers.find(({ layer }) => layer === "face");
  const photo = cloths.find(({ id }) => id === face?.clothId)?.photo;
  // Pleats and gathers take the pattern out of the flat: a flat picture of it would be untrue.
  if (photo === undefined || face?.motif === undefined || form.across !== "flat") return undefined;
  const { image, ...marked } = photo;
  return { href: image, ...marked, motif: face.motif };
}

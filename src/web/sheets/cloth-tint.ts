import type { CSSProperties } from "react";
import type { Job } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { useShade } from "../shade/shade-context.tsx";
import { useJob } from "../state/fields.ts";
import "./cloth-tint.css";

interface Tinted {
  className: string;
  style?: CSSProperties;
}

/**
 * What the drawings of a shade are filled with: a tint of its own cloth, on which ink is still read (`cloth-tint.css`);
 * that of undyed cloth where its colour was not given. Class and style of the element round the drawings.
 */
export function useClothTint(className: string): Tinted {
  const { cloths } = useJob();
  return clothTint(className, faceColour(useShade().plan, cloths));
}

/** The same for one drawing of several shades: their cloth’s where they share one. */
export function sharedClothTint(
  className: string,
  shades: readonly ShadePlan[],
  cloths: Job["cloths"],
): Tinted {
  const [colour, ...others] = new Set(shades.map((shade) => faceColour(shade, cloths)));
  return clothTint(className, others.length === 0 ? colour : undefined);
}

function faceColour({ cloth }: ShadePlan, cloths: Job["cloths"]): string | undefined {
  const face = cloth.layers.find(({ layer }) => layer === "face");
  return cloths.find(({ id }) => id === face?.clothId)?.colour;
}

function clothTint(className: string, colour: string | undefined): Tinted {
  if (colour === undefined) return { className };
  return { className: `${className} in-its-cloth`, style: { "--cloth": colour } as CSSProperties };
}

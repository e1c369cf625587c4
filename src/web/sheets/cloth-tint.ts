import type { CSSProperties } from "react";
import { useShade } from "../shade/shade-context.tsx";
import { useJob } from "../state/fields.ts";
import "./cloth-tint.css";

/**
 * What the drawings of a shade are filled with: a tint of its own cloth, on which ink is still read (`cloth-tint.css`);
 * that of undyed cloth where its colour was not given. Class and style of the element round the drawings.
 */
export function useClothTint(className: string): { className: string; style?: CSSProperties } {
  const { cloths } = useJob();
  const { cloth } = useShade().plan;
  const face = cloth.layers.find(({ layer }) => layer === "face");
  const colour = cloths.find(({ id }) => id === face?.clothId)?.colour;
  if (colour === undefined) return { className };
  return { className: `${className} in-its-cloth`, style: { "--cloth": colour } as CSSProperties };
}

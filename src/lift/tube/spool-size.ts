import type { Tube } from "../../job/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import type { SpoolSize } from "./tube-lift-parts.ts";

/** Flanges over the core, both sides together, where the spool was not measured. */
const FLANGE_OVER = sourced(14, "mm", cite("our-choice", "room for a few layers of cord"));
/** The spools of a tube as measured, with what stands in for what was not. */
export function spoolOf(tube: Tube): SpoolSize {
  const coreMm = Math.max(tube.spoolCoreMm ?? tube.diameterMm, tube.diameterMm);
  return {
    lengthMm: tube.spoolLengthMm,
    coreMm,
    flangeMm: Math.max(coreMm, tube.spoolFlangeMm ?? coreMm + FLANGE_OVER.value),
    ...(tube.spoolWindMm === undefined ? {} : { windMm: Math.min(tube.spoolWindMm, tube.spoolLengthMm) }),
  };
}

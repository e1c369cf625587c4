import { setPatch } from "../../figures/index.ts";
import type { Motif } from "../../shade-plan/index.ts";
import { toMark } from "../../units/index.ts";
import { useShadeNow } from "../shade/shade-context.tsx";
import { useCanEdit, useField, useUnits } from "../state/fields.ts";
import { edit, usePlanner } from "../state/store.ts";

export interface MotifPlace {
  /** Where a repeat begins, nearest to the middle of the shade: from its left edge and its top line. */
  at: { xMm: number; yMm: number };
  /** Puts it there, on a mark of the ruler; moves that share `joins` are one change. */
  put(xMm: number, yMm: number, joins?: string): void;
}

/** Where the motif of the face lies on the shade of the page, and the way to lay it elsewhere. */
export function useMotifPlace(motif: Motif): MotifPlace {
  const { plan, pointer } = useShadeNow();
  const { ruler } = useUnits();
  const mine = useCanEdit();
  const held = useField(`${pointer}/shade/making/pattern`) as object | undefined;
  const at = {
    xMm: nearest(motif.originXMm, motif.repeatXMm, plan.size.finishedWidthMm / 2),
    yMm: nearest(motif.originYMm, motif.repeatYMm, plan.size.finishedLengthMm / 2),
  };
  const put = (xMm: number, yMm: number, joins?: string) => {
    const { job } = usePlanner.getState();
    if (!job || !mine) return;
    const pattern = {
      ...held,
      place: "free",
      offsetMm: within(toMark(yMm, ruler), motif.repeatYMm),
      across: "offset",
      acrossMm: within(toMark(xMm, ruler), motif.repeatXMm),
    };
    const patch = setPatch(job, `${pointer}/shade/making/pattern`, pattern);
    edit({ label: "Place the motif", patch, ...(joins === undefined ? {} : { joins }) });
  };
  return { at, put };
}

/** The step of the lattice nearest to a place. */
function nearest(originMm: number, repeatMm: number, wishMm: number): number {
  return originMm + Math.round((wishMm - originMm) / repeatMm) * repeatMm;
}

function within(mm: number, repeatMm: number): number {
  const rest = mm - Math.floor(mm / repeatMm) * repeatMm;
  return Math.round(rest * 1000) / 1000;
}

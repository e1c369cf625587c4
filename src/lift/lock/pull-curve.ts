import { SAME_LENGTH_MM } from "../../units/index.ts";
import {
  cordPull,
  type RigLayout,
  type RigThreading,
  ROLLER_EFFICIENCY,
  type Strand,
} from "./rig-threading.ts";

/**
 * Pull of all cords at the hand as a function of the place of the lock, N.
 * Everything but the last stretch into the housing is computed once; a test holds it against the drawn paths.
 */
export function pullCurve(layout: RigLayout, threading: RigThreading): (lockMm: number) => number {
  const stretches = threading.strands.map((strand) => lastStretch(layout, strand));
  const { friction } = layout;
  const half = layout.housingLengthMm / 2;
  return (lockMm) => {
    let sum = 0;
    for (const { fromMm, sinkMm, slope, turnsFirst, pullN } of stretches) {
      const run = Math.abs(fromMm - lockMm);
      const reaches = run - half > SAME_LENGTH_MM;
      const mouth = Math.atan2(sinkMm, reaches ? run - half : run);
      const wrap = (turnsFirst ? Math.abs(mouth - slope) : 0) + (reaches ? Math.abs(mouth) : 0);
      sum += pullN * Math.exp(friction * wrap);
    }
    return sum;
  };
}

interface Stretch {
  /** Last eye before the lock. */
  fromMm: number;
  /** From its lane there to its slot, across the board. */
  sinkMm: number;
  /** Slope at which it comes to that eye, rad, and whether it turns there: at its own eye it starts afresh. */
  slope: number;
  turnsFirst: boolean;
  /** Pull at the hand if the last stretch were straight. */
  pullN: number;
}

function lastStretch(layout: RigLayout, strand: Strand): Stretch {
  const { eyesMm, eyeLineMm, friction } = layout;
  const { passes, eye, eyeLaneMm, slotLaneMm } = strand;
  const fromMm = eyesMm[passes.at(-1) ?? eye] ?? 0;
  const laneMm = passes.length === 0 ? eyeLineMm : eyeLaneMm;
  const firstSpan = Math.abs((eyesMm[passes[0] ?? eye] ?? 0) - (eyesMm[eye] ?? 0));
  const slope = passes.length === 0 ? 0 : Math.atan2(laneMm - eyeLineMm, firstSpan);
  const before = passes.length > 1 ? Math.abs(slope) : 0;
  const loadN = layout.loadsN[eye] ?? 0;
  return {
    fromMm,
    sinkMm: slotLaneMm - laneMm,
    slope: passes.length === 1 ? slope : 0,
    turnsFirst: passes.length > 0,
    pullN: cordPull(loadN, friction, Math.PI / 2 + before, ROLLER_EFFICIENCY.value),
  };
}

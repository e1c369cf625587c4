import {
  type CleatLift,
  type CordLockLift,
  flatSize,
  type Layer,
  type LayerCut,
  type TubeLift,
} from "../shade-plan/index.ts";
import { fineText, lengthText } from "../units/index.ts";
import { PRACTICE } from "./practice.ts";
import type { StepInput } from "./step-input.ts";

/** The shade as the hands meet it: what every chapter asks again and again, worked out once. */
export interface Bench extends StepInput {
  /** A length in the maker's own units. */
  len: (lengthMm: number) => string;
  fine: (lengthMm: number) => string;
  /** A measure of the hand, in mm and in the maker’s own units. */
  aboutMm: (name: keyof typeof PRACTICE) => number;
  about: (name: keyof typeof PRACTICE) => string;
  layer: (layer: Layer) => LayerCut | undefined;
  /** Size of a piece once shrunk: cut size × (1 − shrinkage still to come). */
  shrunk: (cut: LayerCut) => { width: (mm: number) => number; length: (mm: number) => number };
  sideHemMm: number;
  bottomHemMm: number;
  /** Cloth of the face beyond its top line. */
  boardAllowanceMm: number;
  /** Hem line to top line on the flat face, before pockets, tucks or gathers take any up. */
  faceTopLineMm: number;
  /** The same once pockets of the face alone are sewn: what the layers are laid to. */
  layersTopLineMm: number;
  /** Width of the flat face between its side hems, before pleats or gathers take any up. */
  faceWidthMm: number;
  /** How far the lining reaches below the hem line; negative where it ends above. */
  liningBelowMm: number;
  /** The bottom hem takes the lining's lower edge in. */
  liningInHem: boolean;
  /** Sewn right sides together and turned out, instead of hemmed. */
  bagged: boolean;
  /** Cloth at each side that goes round the end of the board. */
  wrapMm: number;
  /** What the hands see when the shade lies face down: the lining, or the wrong side of the face. */
  back: string;
  ribbed: boolean;
  /** Pockets stand at the back, so that the rings are sewn to their edges. */
  ringsOnPockets: boolean;
  stapled: boolean;
}

/** The bench of a shade whose cords run over a lock. */
export type LockBench = Bench & { lift: CordLockLift };
/** The bench of a shade whose cords run over a last eye and down to a cleat. */
export type CleatBench = Bench & { lift: CleatLift };
/** The bench of a shade whose cords wind on a tube. */
export type TubeBench = Bench & { lift: TubeLift };

export function isLockBench(bench: Bench): bench is LockBench {
  return bench.lift.takeUp === "lock";
}

export function isCleatBench(bench: Bench): bench is CleatBench {
  return bench.lift.takeUp === "cleat";
}

export function isTubeBench(bench: Bench): bench is TubeBench {
  return bench.lift.takeUp === "tube";
}

/** Works out what the chapters share; lengths mm. */
export function benchOf(input: StepInput): Bench {
  const { resolved, cloth, size } = input;
  const { units, making } = resolved;
  const { hems, ribs, board } = making;
  const layer = (wanted: Layer) => cloth.layers.find((cut) => cut.layer === wanted);
  const pocketsMm = 2 * ribs.pocketMm * cloth.ribLines.length;
  const inFaceMm = ribs.kind === "face-pocket" ? pocketsMm : 0;
  const takeUpMm = ribs.kind === "through-pocket" ? pocketsMm : inFaceMm;
  const bagged = hems.makeUp === "bagged-out" && layer("lining") !== undefined;
  const bottomHemMm = bagged ? hems.seamMm : hems.bottomTurnMm * hems.bottomTurns;
  const bandMm = cloth.bands.find(({ part }) => part === "bottom-band")?.heightMm;
  const flat = flatSize(size, input.form, "face");
  const faceTopLineMm = flat.lengthMm + takeUpMm;
  const aboutMm = (name: keyof typeof PRACTICE) => PRACTICE[name][units.system].value;
  const shrunk: Bench["shrunk"] = (cut) => {
    const { shrinkWidth = 0, shrinkLength = 0 } = resolved.cloths[cut.layer] ?? {};
    const [across, along] = cut.turned ? [shrinkLength, shrinkWidth] : [shrinkWidth, shrinkLength];
    return { width: (mm) => mm * (1 - across), length: (mm) => mm * (1 - along) };
  };
  const face = layer("face");
  const faceLengthMm = face === undefined ? 0 : shrunk(face).length(face.cutLengthMm);
  const belowMm = bandMm === undefined ? bottomHemMm : hems.seamMm - bandMm;
  const boardAllowanceMm = faceLengthMm - faceTopLineMm - belowMm;
  const lining = layer("lining");
  const liningTakeUpMm = ribs.kind === "lining-pocket" ? 2 * ribs.pocketMm * cloth.ribLines.length : 0;
  const liningLengthMm =
    lining === undefined ? 0 : shrunk(lining).length(lining.cutLengthMm) - liningTakeUpMm;
  const liningBelowMm = liningLengthMm - making.lining.squaringMm - boardAllowanceMm - faceTopLineMm;
  return {
    ...input,
    len: (lengthMm) => lengthText(lengthMm, units),
    fine: fineText,
    aboutMm,
    about: (name) => lengthText(aboutMm(name), units),
    layer,
    shrunk,
    sideHemMm: bagged ? hems.seamMm : hems.sideTurnMm * hems.sideTurns,
    bagged,
    wrapMm: board.returns === "wrapped" && resolved.mount !== "inside" ? resolved.board.depthMm : 0,
    bottomHemMm,
    boardAllowanceMm,
    liningBelowMm,
    liningInHem: lining !== undefined && liningBelowMm >= -hems.bottomTurnMm,
    faceTopLineMm,
    layersTopLineMm: faceTopLineMm - inFaceMm,
    faceWidthMm: flat.widthMm,
    back: lining === undefined ? "wrong side of the face" : "lining",
    ribbed: cloth.ribLines.length > 0,
    ringsOnPockets:
      cloth.ribLines.length > 0 &&
      ribs.face === "back" &&
      ribs.kind !== "bare" &&
      ribs.kind !== "face-pocket",
    stapled: board.attachment === "staple",
  };
}

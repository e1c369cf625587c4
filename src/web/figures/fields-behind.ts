import { LIFT_TRAITS, type LiftKind, type Window } from "../../job/index.ts";

/** Making settings that a figure rests on, by the figure's id; openings by their own names. */
const BEHIND: Record<string, readonly string[]> = {
  "measure.finished-width": [
    "opening/widthsMm/0",
    "opening/widthsMm/1",
    "opening/widthsMm/2",
    "mount/insideWidthOffMm",
    "mount/overlapSideMm",
  ],
  "measure.finished-length": [
    "opening/heightsMm/0",
    "opening/heightsMm/1",
    "opening/heightsMm/2",
    "mount/insideLengthOffMm",
    "mount/overlapAboveMm",
    "mount/overlapBelowMm",
  ],
  "measure.board-length": ["mount/boardShorterMm"],
  "shape.columns": ["columns/count", "columns/largestSpacingMm", "columns/edgeInsetMm"],
  "shape.column-spacing": ["columns/count", "columns/edgeInsetMm"],
  "shape.half-folds": ["fold/rows", "fold/largestSpacingMm"],
  "shape.half-fold": ["fold/rows", "fold/spacingMm", "fold/skirtMm"],
  "shape.fold": ["fold/rows", "fold/spacingMm", "fold/gradeStepMm"],
  "shape.headrail": ["fold/headrailMm"],
  "shape.raised-height": ["fold/headrailMm", "fold/stackMm", "fold/skirtMm"],
  "shape.rows": ["fold/rows", "fold/largestSpacingMm"],
  "shape.row-spacing": ["fold/rows", "fold/spacingMm", "fold/largestSpacingMm"],
  "shape.sag": ["gather/scallopExtraMm", "gather/sagMm", "gather/hemExtraMm"],
  "shape.scallop-cloth": ["gather/sagMm", "gather/widthFullness"],
  "shape.gathered-width": ["gather/widthFullness", "gather/scallopExtraMm", "gather/drawInMm"],
  "shape.flat-length": ["gather/lengthFullness", "gather/hemExtraMm"],
  "shape.tape": ["gather/sagMm", "gather/scallopExtraMm"],
  "shape.travel": ["fold/headrailMm", "fold/rows"],
  "shape.cascade-step": ["fold/cascadeMm"],
  "shape.cascade-hem": ["fold/cascadeMm", "fold/skirtMm"],
  "shape.hobble-folds": ["hobble/rule"],
  "shape.hobble-spacings": ["hobble/tapeMm", "hobble/rule"],
  "shape.hobble-tape": ["hobble/tapeMm", "hobble/rule"],
  "shape.hobble-cloth": ["hobble/fullness", "hobble/clothMm", "hobble/repeats", "hobble/folds"],
  "shape.hobble-more": ["hobble/fullness", "hobble/clothMm"],
  "shape.dip": ["relax/extraWidthMm", "relax/dipMm"],
  "shape.extra-width": ["relax/dipMm", "relax/extraWidthMm"],
  "shape.pleat-inset": ["pleat/insetMm", "pleat/insetShare"],
  "shape.flat-width": ["pleat/foldedMm"],
  "shape.insert-cut": ["pleat/foldedMm", "pleat/cut"],
  "shape.centre-cut": ["pleat/insetMm", "pleat/cut"],
  "shape.side-cut": ["pleat/insetMm", "pleat/cut"],
  "shape.edge-insert-cut": ["pleat/foldedMm", "pleat/cut"],
  "shape.tail": ["pleat/insetMm", "pleat/foldedMm", "pleat/held"],
  "shape.bottom-section": ["pouf/clothMm", "pouf/marks", "pleat/firstRingMm"],
  "shape.tucks": ["tuck/spacingMm"],
  "shape.tuck-spacing": ["tuck/spacingMm"],
  "shape.tuck-cloth": ["tuck/depthMm", "tuck/spacingMm"],
  "folds.out": ["fold/rows", "fold/largestSpacingMm"],
  "folds.trained": ["fold/rows", "fold/largestSpacingMm"],
  "folds.start": ["fold/rows", "fold/largestSpacingMm"],
  "folds.forward": ["ribs/kind", "board/bar"],
  "folds.bar-sag": ["columns/largestSpacingMm", "columns/count", "board/bar"],
  "folds.rib-sag": ["columns/largestSpacingMm", "columns/count", "ribs/rib"],
  "folds.sag-limit": ["columns/largestSpacingMm", "columns/count"],
  "board.stack-depth": ["fold/rows", "fold/largestSpacingMm"],
};

/** Pointers of the fields that change a figure of this window, the nearest first. */
export function fieldsBehind(
  figure: string,
  windowPointer: string,
  window: Window,
  kind: LiftKind,
): string[] {
  const known = BEHIND[figure] ?? byStage(figure, kind);
  return known
    .filter((key) => applies(key, window))
    .map((key) =>
      key.startsWith("opening/") ? `${windowPointer}/${key}` : `${windowPointer}/shade/making/${key}`,
    );
}

/** Only sides that were measured, and only the deductions of this mount. */
function applies(key: string, { opening, shade }: Window): boolean {
  const [place, name, index] = key.split("/");
  if (place === "opening") {
    const measured = name === "widthsMm" ? opening.widthsMm : opening.heightsMm;
    return Number(index) < measured.length;
  }
  if (name?.startsWith("inside")) return shade.mount === "inside";
  if (name?.startsWith("overlap")) return shade.mount === "outside";
  return true;
}

/** Where no closer fields are named: cut sizes hang on hems, cords on tails and knots, boards on brackets. */
function byStage(figure: string, kind: LiftKind): readonly string[] {
  if (/^cloth\..*-start$/.test(figure))
    return ["pattern/place", "pattern/offsetMm", "pattern/across", "pattern/acrossMm"];
  if (/^cloth\.face-(?:length|buy|repeat-length)$/.test(figure))
    return ["pattern/railroad", "pattern/across", "hems/joins"];
  if (/^cloth\.(?:lining|interlining|blackout)-(?:length|buy)$/.test(figure))
    return ["lining/railroad", "hems/joins"];
  if (/^cloth\.return-/.test(figure)) return ["board/returns", "board/returnDropMm"];
  if (/^cloth\.cover-/.test(figure)) return ["board/section", "board/coverFrom"];
  if (/^cloth\.dust-strip-/.test(figure)) return ["board/dustStripMm"];
  if (/^cloth\.(?:banding|bottom-band)-/.test(figure))
    return ["banding/where", "banding/widthMm", "banding/insetMm", "banding/bottomBandMm"];
  if (/^cloth\..*-cut-width$/.test(figure)) return ["hems/makeUp", "hems/sideTurnMm", "hems/sideTurns"];
  if (/^cloth\..*-cut-length$/.test(figure))
    return ["hems/bottomTurnMm", "hems/bottomTurns", "hems/boardAllowanceMm"];
  if (/^rig\.(cord|tail)/.test(figure)) {
    // Under a tube a cord has no tail.
    return LIFT_TRAITS[kind].takeUp === "lock"
      ? ["lift/tailMm", "lift/knotsMm"]
      : ["lift/knotsMm", "lift/tube"];
  }
  if (/^rig\.loop/.test(figure)) return ["lift/loopDropMm", "lift/drive"];
  if (/^rig\.wand(?:$|-)/.test(figure)) return ["lift/wandMm", "lift/drive"];
  if (/^(?:rig\.(?:tube|wraps)|lift\.(?:wound|turns|torque|wraps))/.test(figure))
    return ["lift/tube", "lift/drive"];
  if (/^rig\.seat/.test(figure)) return ["lift/seat", "lift/seatMm", "lift/straightRunMm"];
  if (/^board\.fixing/.test(figure)) return ["board/bracketEndMm", "board/bracketSpacingMm"];
  return [];
}

/** Every setting that is named here, for the test that each exists. */
export function settingsNamed(): string[] {
  return Object.values(BEHIND)
    .flat()
    .filter((key) => !key.startsWith("opening/"));
}

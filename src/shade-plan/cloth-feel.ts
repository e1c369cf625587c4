/** All layers of a shade together, as their folds feel them: loose layers slide on each other. */
export interface ClothFeel {
  weightNPerMm2: number;
  rigidityNmm: number;
  thicknessMm: number;
  /** Every layer’s stiffness was measured; otherwise it is a guess by the kind of cloth. */
  measured: boolean;
}

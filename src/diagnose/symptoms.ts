/** What a maker sees or feels at a shade that hangs, in the order in which people ask. */
export const SYMPTOMS = [
  "hem-not-level",
  "hard-to-raise",
  "will-not-rise",
  "lock-jams",
  "lock-slips",
  "cord-frays",
  "leans-to-one-side",
  "will-not-stay",
  "folds-sag",
  "puckers",
  "pattern-smiles",
  "sides-draw-in",
  "swings",
  "points-of-light",
  "board-bends",
] as const;
export type Symptom = (typeof SYMPTOMS)[number];

export const SYMPTOM_NAMES: Record<Symptom, string> = {
  "hem-not-level": "The hem does not hang level",
  "hard-to-raise": "It is hard to raise",
  "will-not-rise": "It will not rise all the way",
  "lock-jams": "A cord jams in the lock",
  "lock-slips": "The lock slips or does not catch",
  "cord-frays": "A cord frays",
  "leans-to-one-side": "It leans to one side as it rises",
  "will-not-stay": "It creeps up or down by itself",
  "folds-sag": "The folds sag between the columns",
  puckers: "The face puckers at the rings",
  "pattern-smiles": "The pattern curves down in the middle",
  "sides-draw-in": "The sides draw in",
  swings: "It swings in a draught",
  "points-of-light": "Points of light show through",
  "board-bends": "The board bends or comes away",
};

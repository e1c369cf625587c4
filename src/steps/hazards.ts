/** What can hurt at the bench and on the ladder, worded once; what styles say too is in `src/words`. */
export const BLACKOUT_IRON =
  "Iron and steam burn, and blackout melts: a cool iron at most, no steam, and a scrap first.";
export const CUTTING =
  "Shears and rotary cutters cut deep. Cut away from your hand, shut the blade whenever you put it down, and keep both out of children’s reach.";
export const GLUE =
  "Read the glue’s label: instant glue sticks skin and eyelids together within seconds. Air the room, and keep it from children.";
export const SAW =
  "Clamp what you saw, keep your hand behind the blade and wear eye protection. Cut metal and glass-fibre ends are sharp; do not breathe the dust.";
export const STAPLER =
  "A staple gun fires through a finger. Keep your other hand away from its nose, point it at the board only, and wear eye protection.";
export const DRILL = "Clamp the board before you drill it, and wear eye protection.";
export const WALL =
  "Look for electric cables, pipes and gas in the wall before you drill; they run above and beside windows. If you cannot tell what is there, ask someone licensed for that work. Wear eye protection. Local codes come before this plan.";
export const HOLD_BOARD =
  "Keep one hand on the board until the last screw is in: a falling board hurts. Have someone hold the shade up. Stand on a steady ladder.";
export const CORDS_AT_THREADING =
  "From here on there are cords that can strangle a child. Never knot cords together, clear every offcut away, and do not leave the work where children are.";
export const CORDS_LEFT_HANGING =
  "Cords strangle small children. Clear offcuts away at once, keep cots and furniture away, and never knot cords together. A cleat does not remove the hazard.";
export const CORDS_AT_HANGING =
  "Cords strangle small children. Keep cots, beds and furniture away from this window, and never knot cords together. A cleat does not remove the hazard. Local codes, the instructions of the parts and licensed practice come before this plan.";
export const CORDS_BEHIND_HANGING =
  "No cord hangs at the front, but cords run up the back, and they strangle small children. Keep cots, beds and furniture away from this window. Local codes, the instructions of the parts and licensed practice come before this plan.";
export const SPRING =
  "A spring under tension unwinds with force: hold it as its instructions show, keep fingers and hair away from tube and spools, and wear eye protection. Never open its housing.";
export const TUBE_TURNS =
  "A tube that turns draws in fingers, hair and cord ends. Keep them away from it, and children too.";
export const LOOP =
  "A loop that hangs free can strangle a child. Do not leave it hanging, not for a minute: no tensioner, no loop. Keep cots, beds and furniture away from this window. Local codes and the parts’ own instructions come before this plan.";
export const WAND =
  "A wand is stiff and is poked with: hang one that comes off where children cannot reach it. Never tie a cord to it.";
export const MAINS =
  "Mains electricity kills. A licensed electrician does the wiring, by the code of the place and the motor’s own instructions; this plan does not.";
export const LOW_VOLTAGE =
  "Use only the power supply or charger that the motor’s maker names. Anything that joins it to the mains is a licensed electrician’s work. Button cells and small parts are kept from children.";

/** The usual words about hot irons. */
export const IRON =
  "Iron and steam burn. Stand the iron upright, keep your hand out of the steam, and try a scrap first.";

/** The usual words about ladders. */
export const LADDER = "Stand on a steady ladder on a firm floor, and do not lean out to either side.";

/** Rings, pins and needles on the table. */
export const SMALL_PARTS =
  "Small children swallow rings and pins and choke on them, and a needle left in the cloth goes through a hand. Count them out and in again, and keep children away while they lie about.";

/** Weights in a hem: of what, and where they must not get. */
export const SHOT =
  "Take steel, never lead: lead poisons whoever swallows or handles it. Shot chokes a child: sew every bag and hem shut with two lines of stitching, and keep children away while it lies about.";

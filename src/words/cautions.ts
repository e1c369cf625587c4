/** The usual words about hot irons. */
export const IRON =
  "Iron and steam burn. Stand the iron upright, keep your hand out of the steam, and try a scrap first.";

/** The usual words about ladders. */
export const LADDER = "Stand on a steady ladder on a firm floor, and do not lean out to either side.";

import type { Place } from "../../job/index.ts";
import type { ChildSafetyTag, TagLine } from "../../shade-plan/index.ts";
import { tagHeights } from "./tag-heights.ts";
import { tagWords } from "./tag-words.ts";

/** What the words of a tag depend on. */
export interface TagInput {
  place?: Place;
  /** Cords or a loop hang at the front. */
  frontCords: boolean;
  /** Lift cords run up the back, hidden or not. */
  rearCords: boolean;
}

/** Languages that the place asks for; English where none was read. */
const LANGUAGES: Partial<Record<Place, ("en" | "fr")[]>> = { ca: ["en", "fr"] };

const OWN_WORDS =
  "These are our own plain words and not the official text of any rule. Read the current text of the place where the shade will hang and use its words, in its languages.";
const CANADA =
  "The words that are marked are the warning of section 15 as it was published; all others are our own and not the official text. The law takes the same or its equivalent on the shade, its packaging, its instructions and every advertisement: check the current text. Do not name the law on any of them.";

const US_LABEL = " What the maker’s label must say there is recalled and was not read.";

/** The tag to print for one shade, as data: words, language and least height of letters, line by line. */
export function childTag({ place, frontCords, rearCords }: TagInput): ChildSafetyTag {
  const letters = tagHeights(place);
  const languages = LANGUAGES[place ?? "elsewhere"] ?? ["en"];
  const canada = place === "ca";
  const words = tagWords({
    languages,
    place,
    frontCords,
    rearCords,
  });
  return {
    lines: words.map((line): TagLine => {
      const signal = line.kind === "signal";
      return {
        ...line,
        minHeightMm: signal ? letters.signalMm : letters.textMm,
        bold: signal,
        capitals: signal,
      };
    }),
    languages: [...languages],
    heights: letters.cite,
    note: canada ? CANADA : `${OWN_WORDS}${place === "us" ? US_LABEL : ""}`,
  };
}

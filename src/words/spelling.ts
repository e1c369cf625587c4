/** Puts a text into the English of its reader. */
export type Spell = (text: string) => string;

/** Our own words are written as they are read in London. */
export const asWritten: Spell = (text) => text;

/** What is spelt or called otherwise in the United States: the one list, in its own order. */
const AMERICAN_WORDS: readonly (readonly [british: string, american: string])[] = [
  // Words of the trade and the house.
  ["cloth", "fabric"],
  ["cot", "crib"],
  ["selvedge", "selvage"],
  ["plasterboard", "drywall"],
  ["timber", "wood"],
  ["towards", "toward"],
  // Ticking stays: it is a cloth, and called so there.
  ["tick", "check"],
  ["ticked", "checked"],
  ["offcut", "scrap"],
  ["domett", "flannel"],
  ["the mains", "household power"],
  ["mains electricity", "household electricity"],
  ["mains motor", "line-voltage motor"],
  // Spellings.
  ["colour", "color"],
  ["coloured", "colored"],
  ["colouring", "coloring"],
  ["neighbour", "neighbor"],
  ["neighbouring", "neighboring"],
  ["labour", "labor"],
  ["centre", "center"],
  ["centred", "centered"],
  ["centring", "centering"],
  ["mitre", "miter"],
  ["mitred", "mitered"],
  ["mitring", "mitering"],
  ["fibre", "fiber"],
  ["metre", "meter"],
  ["millimetre", "millimeter"],
  ["centimetre", "centimeter"],
  ["litre", "liter"],
  ["catalogue", "catalog"],
  ["programme", "program"],
  ["aluminium", "aluminum"],
  ["grey", "gray"],
  ["draught", "draft"],
  ["judgement", "judgment"],
  ["labelled", "labeled"],
  ["labelling", "labeling"],
  ["levelled", "leveled"],
  ["levelling", "leveling"],
];

/** Titles of works that are cited: they are called what they are called. */
const TITLES = ["Physical Properties of Textile Fibres"];

const american = new Map(
  AMERICAN_WORDS.flatMap(([from, to]) => [
    [from, to],
    [`${from}s`, `${to}s`],
  ]),
);

/** Whole words, never a part of an id, an address or the name of a file. */
const WORD = `(?<![\\p{L}\\d_/.])(?:${[...american.keys()].sort((a, b) => b.length - a.length).join("|")})(?![\\p{L}\\d_/]|\\.[\\p{L}\\d])`;

function likeFirst(found: string, word: string): string {
  if (found === found.toUpperCase()) return word.toUpperCase();
  const [first = ""] = found;
  return first === first.toUpperCase() ? word.slice(0, 1).toUpperCase() + word.slice(1) : word;
}

/** Most texts that are remembered: those of a large plan come back on page after page. */
const MOST_TEXTS = 20_000;

const isBritish = new RegExp(WORD, "iu");

/** What of these texts the spelling of the United States would change. */
export function britishIn(texts: Iterable<string>): string[] {
  return [...new Set(texts)].filter((text) => isBritish.test(text));
}

function literal(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/]/g, "\\$&").replace(/\s+/g, "\\s+");
}

/**
 * In the words of the United States. What the maker typed and titles of works are left as they are; a text that went through once comes out of a second time unchanged.
 */
export function americanSpeller(ownTexts: readonly string[]): Spell {
  const kept = [...TITLES, ...ownTexts].sort((a, b) => b.length - a.length).map(literal);
  const pattern = new RegExp(`(?<![\\p{L}\\d])(?:${kept.join("|")})(?![\\p{L}\\d])|${WORD}`, "giu");
  const own = new Set([...TITLES, ...ownTexts].map((text) => text.replace(/\s+/g, " ")));
  const known = new Map<string, string>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const spelt = text.replace(pattern, (found) => {
      const word = own.has(found.replace(/\s+/g, " ")) ? undefined : american.get(found.toLowerCase());
      return word === undefined ? found : likeFirst(found, word);
    });
    if (known.size >= MOST_TEXTS) known.clear();
    known.set(text, spelt);
    return spelt;
  };
}

/** What is printed for one reader: a sheaf of pages that stands alone. In the order of printing. */
export const PRINT_SETS = [
  "client",
  "order",
  "invoice",
  "label",
  "handover",
  "table",
  "steps",
  "strips",
  "tag",
  "child-safety",
  "findings",
  "workings",
  "lesson",
  "shopping",
  "cutting",
  "parts",
] as const;
export type PrintSet = (typeof PRINT_SETS)[number];

export interface SetWords {
  /** At the foot of every page, and where a set is chosen. */
  name: string;
  /** For whom: at the foot of every page. */
  reader: string;
  /** What is in it. */
  about: string;
}

export const SET_WORDS: Record<PrintSet, SetWords> = {
  client: {
    name: "Client sheets",
    reader: "for the client",
    about: "a quote, and for each shade its picture, sizes, cloth, cords and children",
  },
  order: { name: "Order", reader: "for client and maker, to sign", about: "the quote, agreed to" },
  invoice: { name: "Invoice", reader: "for the client", about: "what is to be paid, and by when" },
  label: {
    name: "Labels",
    reader: "for whoever packs and hangs",
    about: "one to tie to each shade: whose it is and where it hangs",
  },
  handover: {
    name: "Hand-over sheet",
    reader: "goes out with the shade",
    about: "how it is worked and looked after, cords and children, its tag; no rule is named",
  },
  table: {
    name: "Table sheets",
    reader: "for whoever makes it, at arm’s length",
    about: "job card, cutting, marking, rig, making and hanging, in large figures",
  },
  steps: {
    name: "Step by step",
    reader: "for whoever makes and hangs it",
    about: "every step with its check, its care and its drawing",
  },
  strips: {
    name: "Strips and templates",
    reader: "for the marking table",
    about: "marks and shapes at full size, to glue together",
  },
  tag: { name: "Child-safety tag", reader: "stays on the shade", about: "the warning to cut out and fix" },
  "child-safety": {
    name: "Child safety",
    reader: "for the maker; stays in the house",
    about: "every cord against the rules that were read, and tests to do",
  },
  findings: {
    name: "Findings",
    reader: "for the maker; stays in the house",
    about: "what cannot be, will work badly, or is worth knowing",
  },
  workings: {
    name: "Workings",
    reader: "for whoever asks why",
    about: "every figure with its formula, its values and its source",
  },
  lesson: {
    name: "Lessons",
    reader: "for a class, or whoever learns",
    about: "one page each: rows and folds, cloth, the lock, threading, loads, cords and children",
  },
  shopping: { name: "Shopping", reader: "for whoever buys", about: "what to buy for the job, and its cost" },
  cutting: {
    name: "Cutting tickets",
    reader: "for the cutter",
    about: "each bolt with its cuts in order, lengths to saw, labels for the pieces",
  },
  parts: {
    name: "Parts in your hand",
    reader: "for whoever measures them",
    about: "five tests at the bench to fill in, and your locks by your cords",
  },
};

/** Sets for one reader, or for one occasion, by one word. */
export const SET_PRESETS = {
  usual: ["table", "steps", "tag", "shopping"],
  contract: ["table", "tag", "shopping"],
  helper: ["table", "steps"],
  cutter: ["cutting", "table"],
  client: ["client"],
  papers: ["client", "order", "invoice", "label"],
  handover: ["handover"],
  lesson: ["lesson"],
  everything: PRINT_SETS,
} as const satisfies Record<string, readonly PrintSet[]>;
export type SetPreset = keyof typeof SET_PRESETS;

/** Beyond so many windows nobody takes every step of each to the table. */
const MANY_SHADES = 24;

/** What is printed where nothing is said: of a contract what differs from shade to shade, and what is general once. */
export function usualSets(shades: number): readonly PrintSet[] {
  return shades > MANY_SHADES ? SET_PRESETS.contract : SET_PRESETS.usual;
}

/** Of some sets each once, in the order of printing. */
export function inPrintOrder(sets: readonly PrintSet[]): PrintSet[] {
  return PRINT_SETS.filter((one) => sets.includes(one));
}

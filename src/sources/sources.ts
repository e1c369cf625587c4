/** How far a source can be trusted, from a text that was read to a habit that nobody wrote down. */
export type SourceKind =
  | "standard"
  | "handbook"
  | "trade-text"
  | "derived"
  | "common-practice"
  | "from-memory"
  | "maker"
  | "our-choice";

export interface Source {
  title: string;
  kind: SourceKind;
  /** What a reader should know before leaning on it. */
  note?: string;
}

/**
 * Every source that a figure of the product may cite.
 * Shop, company and blog names are left out on purpose: titles only.
 */
export const SOURCES = {
  "nist-sp-811": {
    title: "NIST Special Publication 811 (2008), Guide for the Use of the SI, appendix B.8",
    kind: "standard",
  },
  "wood-handbook": {
    title: "Wood Handbook, FPL-GTR-282 (2021), US Forest Products Laboratory",
    kind: "handbook",
  },
  capstan: {
    title: "Morton & Hearle, Physical Properties of Textile Fibres, ch. 25, equation 25.2",
    kind: "handbook",
    note: "tension ratio e^(μθ) of a flexible cord on a fixed guide",
  },
  "roping-physics": {
    title: "Delaney, Physics for Roping Technicians (2022), p. 88",
    kind: "handbook",
    note: "synthetic rope on 10 and 12 mm steel bar: μ = 0.24; small eyes sit at the high end",
  },
  "sheave-efficiency": {
    title: "Pipeline Rules of Thumb Handbook, p. 6: sheaves on plain bearings pass on 91.7 %",
    kind: "handbook",
    note: "measured on hoisting tackle",
  },
  "ada-309": {
    title: "2010 ADA Standards for Accessible Design, 309.4: at most 5 lbf (22.2 N) with one hand",
    kind: "standard",
    note: "binds operable parts in public places; taken here as the mark of an easy pull",
  },
  "en-1005-3": {
    title: "EN 1005-3, table 1: 44 N is what nearly everyone at home can pull down with one arm",
    kind: "standard",
    note: "read on an ergonomics page; half of it is recommended, over 70 % is to be avoided",
  },
  "beam-theory": {
    title: "Three-moment equation of a continuous beam (Clapeyron); three equal bays give 0.4, 1.1, 1.1, 0.4",
    kind: "handbook",
  },
  "headrail-allowance": {
    title: "Workroom tutorials: “Headrail allowance explained”",
    kind: "trade-text",
    note: "allowance = batten face + 3.5 cm or mechanism depth + 2.5 cm, 6.5 cm as a floor",
  },
  "pocket-spacing": {
    title: "Soft-furnishing FAQ: “Calculating pockets spacing”",
    kind: "trade-text",
    note: "odd number of half folds; lining takes 2 cm more for each pocket",
  },
  "half-drop-faq": {
    title: "Soft-furnishing FAQ: “Half drop pattern repeats”",
    kind: "trade-text",
  },
  "half-drop-tutorial": { title: "Workroom tutorials: “Half drop”", kind: "trade-text" },
  "even-fold-slides": {
    title: "Teaching slides on lifted curtains (“Подъемные шторы”)",
    kind: "trade-text",
    note: "rounds the number of folds to nearest, which can break its own stack limit; we round up",
  },
  "ring-spacing-faq": {
    title: "“How far apart do I space my rings / lift cords”",
    kind: "trade-text",
    note: "its cord count divides by one bay too few; the count here is corrected",
  },
  "graduated-folds": {
    title: "Assorted home-decor posts on graduated folds (7, 6, 5 in)",
    kind: "trade-text",
  },
  "roman-shades-2018": { title: "“Roman shades” (2018)", kind: "trade-text" },
  "measuring-guides": {
    title: "About fifteen trade measuring guides",
    kind: "trade-text",
    note: "they disagree: deductions 6 to 20 mm, overlaps 38 to 75 mm",
  },
  "hem-guides": {
    title: "General how-tos on hems, linings and boards",
    kind: "trade-text",
  },
  "us-sewing-handbook": {
    title: "US sewing handbook, flat Roman shade chapter",
    kind: "handbook",
    note: "title page not seen",
  },
  "austrian-2008": { title: "“How-to: Austrian shades” (2008)", kind: "trade-text" },
  "fabric-required": { title: "Track instruction sheet, “Fabric required”", kind: "trade-text" },
  "curtain-encyclopaedia": { title: "The Encyclopaedia of Curtains, pp. 98, 108, 116–119", kind: "handbook" },
  "astm-d3691": {
    title: "ASTM D3691 (withdrawn 2018), woven drapery fabrics",
    kind: "standard",
    note: "at most 3 % dimensional change either way",
  },
  "blackout-guide": {
    title: "“Everything about Roman blinds”: pinholes in stitched blackout",
    kind: "trade-text",
  },
  "cloth-weights": { title: "Consumer guides to cloth weights (three)", kind: "trade-text" },
  "lock-instructions": {
    title: "Hardware instruction and gallery pages: threading, cord-lock questions, cord size",
    kind: "trade-text",
  },
  "old-inner-cord-clauses": {
    title: "A100.1 (about 2010) clauses 4.4–4.5 as reprinted by a safety group",
    kind: "trade-text",
    note: "superseded; kept as a caution for edge cords",
  },
  "inner-cord-hazard": {
    title: "CPSC Publication 5115, on lift cords at the back of Roman shades",
    kind: "trade-text",
    note: "read in a copy",
  },
  "cordless-advice": {
    title: "US CPSC releases on window cords (2009, 2021) and Health Canada guidance on corded coverings",
    kind: "trade-text",
    note: "agency advice, read in copies",
  },
  "cleat-disagreement": {
    title: "CPSC release of 9 October 2020; trade guidance on EN 13120; ACCC guide of November 2014",
    kind: "trade-text",
    note: "agencies disagree on cleats: high cleats accepted in some places, no cure in others",
  },
  "cord-hazard-nz": {
    title: "MBIE consultation on corded window coverings (January to March 2023)",
    kind: "trade-text",
    note: "consciousness lost in about 15 s",
  },
  "cord-rules-at-a-glance": {
    title: "SOR/2019-97 (Canada), s. 5; ANSI/WCMA A100.1-2022; trade guidance on EN 13120",
    kind: "standard",
    note: "the last two as reported by secondary sources; not evaluated here",
  },
  "steel-density": {
    title: "Handbook density of carbon steel, 7 850 kg/m³ (EN 1991-1-1:2002, table A.4: 77.0–78.5 kN/m³)",
    kind: "handbook",
    note: "clause from memory",
  },
  "aluminium-density": {
    title: "Handbook density of aluminium, 2 700 kg/m³ (EN 1991-1-1:2002, table A.4: 27.0 kN/m³)",
    kind: "handbook",
    note: "clause from memory",
  },
  geometry: { title: "Plane geometry of the shade", kind: "derived", note: "derived here" },
  arithmetic: { title: "Arithmetic", kind: "derived", note: "derived here" },
  maker: { title: "Given by the maker", kind: "maker" },
  demo: { title: "Invented demonstration data", kind: "our-choice", note: "measure your own part" },
  "our-choice": { title: "Our own choice, open to change", kind: "our-choice" },
  "common-practice": { title: "Common practice, no source", kind: "common-practice" },
  "from-memory": { title: "Recalled from memory, source not seen", kind: "from-memory" },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof SOURCES;

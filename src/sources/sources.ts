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
  "singer-sewing": {
    title: "Singer Sewing for the Home (1984–88): hobbled and stitched-tuck shades",
    kind: "handbook",
    note: "read in a reprint; its rule for the tape of a hobbled shade can be read in two ways",
  },
  "hobbled-workroom": {
    title: "Professional workroom notes (2010–2018): pattern and loops of hobbled shades",
    kind: "trade-text",
    note: "cloth and tape between two marks together at most 16.9 in",
  },
  "hobbled-lean": { title: "“Hobbling the hobbled shade”: cut 1.5 × the length", kind: "trade-text" },
  "cascade-folds": {
    title: "Workroom tutorials: glossary and blackout-lined blind, folds that show one below the other",
    kind: "trade-text",
    note: "half folds grow by the step downwards; the fold lengths are derived here",
  },
  "velvet-guide": {
    title: "“Everything about Roman blinds”: velvet creases and is poor for Roman shades",
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
  "curtain-encyclopaedia": { title: "The Encyclopaedia of Curtains", kind: "handbook" },
  "astm-d3691": {
    title: "ASTM D3691 (withdrawn 2018), woven drapery fabrics",
    kind: "standard",
    note: "at most 3 % dimensional change either way",
  },
  "blackout-guide": {
    title: "“Everything about Roman blinds”: pinholes in stitched blackout",
    kind: "trade-text",
  },
  "lock-instructions": {
    title: "Hardware instruction and gallery pages: threading, cord-lock questions, cord size",
    kind: "trade-text",
  },
  "clutch-sheet": {
    title: "Soft-shade clutch installation sheet",
    kind: "trade-text",
    note: "15 lb slim, 30 lb standard, at most 5 lb a cord, weight bar required",
  },
  "extra-wide": {
    title: "“Extra wide Roman blinds”",
    kind: "trade-text",
    note: "usual most about 2 m wide; rods stop at 2.4 m",
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
  "us-16-cfr-1120": {
    title: "16 CFR 1120.3(e) and (f), window coverings as a substantial product hazard; 87 FR 72873",
    kind: "standard",
    note: "read in the legal text and the agency’s guidance on section 15(j), as of 2024",
  },
  "us-16-cfr-1260": {
    title: "16 CFR 1260, custom window coverings; 87 FR 73144",
    kind: "standard",
    note: "vacated on 12 September 2023, WCMA v. CPSC, No. 22-1300 (D.C. Cir.); some copies still print it",
  },
  "us-a100-1-2018": {
    title: "ANSI/WCMA A100.1-2018, corded window coverings",
    kind: "standard",
    note: "the full text was not read",
  },
  "us-a100-1-2022": {
    title: "ANSI/WCMA A100.1-2022, corded window coverings",
    kind: "standard",
    note: "voluntary; read in trade FAQs and a laboratory bulletin of September 2023, not in the text",
  },
  "us-probe-2010": {
    title:
      "Trade tutorial on the accessibility probe of A100.1-2010, appendix C, and a summary of about 2009",
    kind: "trade-text",
  },
  "us-ny-a992": {
    title: "New York bill A992 of 2023, amending Social Services Law 390-m",
    kind: "standard",
    note: "the bill’s text was read; whether it became law was not",
  },
  "ca-sor-2019-97": {
    title: "Corded Window Coverings Regulations, SOR/2019-97 (Canada)",
    kind: "standard",
    note: "consolidation of May 2021 read in full, the warning of s. 15 in that of March 2021; another copy was current to March 2024",
  },
  "ca-notice": {
    title: "Health Canada notice on corded coverings, as reported by the Consumers Council of Canada",
    kind: "trade-text",
  },
  "en-13120": {
    title: "EN 13120:2009+A1:2014, internal blinds, clause 8.2",
    kind: "standard",
    note: "the text was not read: figures as German, Danish, Dutch, Swedish and UK trade pages agree on them",
  },
  "en-13120-rear": {
    title: "EN 13120+A1 on rear cords, as a UK maker and a UK sewing tutorial read it",
    kind: "trade-text",
    note: "clause not read",
  },
  "en-13120-collector": {
    title: "EN 13120+A1 on cords collected in one, as one maker reads it",
    kind: "trade-text",
    note: "single source; written for other blinds",
  },
  "en-16433": {
    title: "EN 16433:2014, hazardous loops: test methods",
    kind: "standard",
    note: "the text was not read: German and Italian summaries",
  },
  "eu-2011-477": {
    title: "Commission Decision 2011/477/EU, requirements for window blinds and corded coverings",
    kind: "standard",
    note: "annex as summarised by others",
  },
  "eu-2023-988": {
    title: "Regulation (EU) 2023/988 on general product safety, articles 9, 16 and 19",
    kind: "standard",
    note: "article 9 read as a law firm’s page and a laboratory’s give it; it applies from 13 December 2024",
  },
  "ni-gpsr-guidance": {
    title: "UK government guidance of 3 December 2024 on Regulation (EU) 2023/988 in Northern Ireland",
    kind: "standard",
  },
  "jp-jis-a-4811": {
    title: "JIS A 4811:2017, cords of household blinds, child safety (Japan)",
    kind: "standard",
    note: "the text was not read: as the press release of December 2017 and newspapers report it",
  },
  "kr-advice": {
    title: "Advice of the Korean consumer and standards agencies on blind cords, press of July 2016",
    kind: "trade-text",
  },
  "eu-2026-901": {
    title:
      "Implementing Decision (EU) 2026/901 of 17 April 2026, repealing Implementing Decision (EU) 2019/1698",
    kind: "standard",
    note: "whether it still lists EN 13120, EN 16433 and EN 16434 could not be read",
  },
  "uk-rospa": {
    title: "RoSPA material on blind cords, reproduced in landlord guidance",
    kind: "trade-text",
  },
  "uk-tutorial": {
    title: "UK sewing tutorial on cleats for Roman shades",
    kind: "trade-text",
    note: "names no country",
  },
  "ie-nsai": { title: "NSAI guidance on window cords (Ireland)", kind: "trade-text" },
  "au-2014-standard": {
    title: "Corded Internal Window Coverings Safety Standard 2014 (Australia)",
    kind: "standard",
    note: "as quoted in the ACCC guide of November 2014; no later instrument was found",
  },
  "au-2010-regulations": {
    title: "Select Legislative Instrument 2010 No. 212, corded internal window coverings (Australia)",
    kind: "standard",
    note: "as summarised in appendix 3 of the MBIE consultation of 2023",
  },
  "au-product-safety": {
    title: "Product Safety Australia, page on blinds, curtains and window fittings",
    kind: "trade-text",
    note: "the agency’s own page; the instruments themselves were not read",
  },
  "au-warning-text": {
    title: "Australian trade page with the warning for window coverings with a cord or chain",
    kind: "trade-text",
    note: "as a seller prints it",
  },
  "au-button-cells": {
    title: "Product Safety Australia, page on the mandatory standards for button and coin batteries",
    kind: "trade-text",
    note: "the agency’s own page; in force since 22 June 2022; the four instruments were not read",
  },
  "us-16-cfr-1263": {
    title: "16 CFR part 1263, products with button cells or coin batteries (United States)",
    kind: "standard",
    note: "read in the agency’s questions and answers, its details in a laboratory’s page",
  },
  "uk-pas-7055": {
    title: "PAS 7055:2021, button and coin batteries (United Kingdom)",
    kind: "standard",
    note: "text not read: a marketplace’s page for sellers",
  },
  "flame-tests": {
    title: "BS 5867-2, NFPA 701 and EN 13773 on curtains and blinds",
    kind: "standard",
    note: "texts not read: a laboratory’s page, the publisher’s scope and a weaver’s page",
  },
  "heater-distance": {
    title: "Hertfordshire Fire and Rescue, portable heaters",
    kind: "trade-text",
    note: "at least one metre from curtains; US advice says three feet",
  },
  "nz-product-safety": {
    title: "Product Safety New Zealand, advice on window cords",
    kind: "trade-text",
  },
  "nz-brief": {
    title: "Automated news brief, undated, on rules for window cords in New Zealand",
    kind: "trade-text",
    note: "weak: nothing confirms it",
  },
  "child-pull": {
    title: "Health Canada on the limits of SOR/2019-97: 35 N is the force that a child can exert",
    kind: "standard",
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
  "astm-d3882": {
    title: "ASTM D3882, bow and skew in woven and knitted fabrics",
    kind: "standard",
    note: "how they are measured, as shares of the width; it sets no limit; read in summaries",
  },
  "set-of-shades": {
    title: "Workroom magazine, “Flat Roman shades kicked up a notch”",
    kind: "trade-text",
    note: "motif centred; one start line from the top for a set",
  },
  "workroom-price-terms": {
    title: "Workroom price terms: labour by the width",
    kind: "trade-text",
    note: "widths of 48 to 54 in; wider goods count as their flat width over 54 in",
  },
  "board-returns": {
    title: "Contract maker’s notes: “Top mistakes in specifying Romans”",
    kind: "trade-text",
    note: "cloth off the front of a deep outside board leaves a gap as deep as the board",
  },
  "austrian-uk": {
    title: "UK curtain page, “Austrian”",
    kind: "trade-text",
    note: "width × 2, length + 50 cm: what is called a gathered festoon here",
  },
  "austrian-blinds": { title: "“How to make Austrian blinds/shades”", kind: "trade-text" },
  "austrian-workroom": {
    title: "Professional workroom notes (2010–2018): Austrian shades",
    kind: "trade-text",
    note: "more than triple for unlined silk; a slight bow-in at the sides is normal",
  },
  "balloon-2009": { title: "“Making balloon shades”, parts 1 and 2 (2009)", kind: "trade-text" },
  "cutting-and-draping": {
    title: "J. W. Stephenson, Cutting and Draping, “Window shades and blinds”",
    kind: "handbook",
    note: "loose weights let the hem swing inwards; a covered rod or shot bags hold it",
  },
  "cloth-weights": {
    title: "Three consumer guides to cloth weights: sheer 40 to 100 g/m², heavy from 300",
    kind: "trade-text",
  },
  catenary: {
    title:
      "Catenary, a = 2k sinh(w/2k) and sag = k(cosh(w/2k) − 1): Beer & Johnston, Vector Mechanics, section 7.10",
    kind: "handbook",
    note: "chapter from memory; a cord’s line, taken for the edge of a swag of cloth",
  },
  "inset-pleats": {
    title: "“Making a London blind”, “Inverted pleat curtains” and two UK tutorials on tailed shades",
    kind: "trade-text",
    note: "12 in (30 cm) for each pleat; marks at 6, 12 and 18 in; a worked 150 × 220 cm shade with separate inserts",
  },
  "relaxed-notes": {
    title: "“Relaxed Roman shades”, notes of a workroom talk",
    kind: "trade-text",
    note: "outer columns alone, no ribs, no rings in the middle",
  },
  "mock-roman": {
    title: "“Mock Roman shade” (2014)",
    kind: "trade-text",
    note: "cut 2 in wider at the bottom",
  },
  "box-pleat-valance": {
    title: "“Box pleat valance tutorial”",
    kind: "trade-text",
    note: "not a shade: 47 in wide with one 8 in pleat and 3 1/2 in returns is cut 63 1/2 in",
  },
  "tailed-workroom": {
    title: "Professional workroom notes (2010–2018): wide tailed shades",
    kind: "trade-text",
    note: "the centre droops too far; a lift line in the middle helps",
  },
  "peirce-1930": {
    title: "Peirce, Journal of the Textile Institute 21 (1930) T377: bending length of cloth, c³ = B/w",
    kind: "handbook",
    note: "read in pages that quote it; the cantilever test of IS 6490:1971 reads c as half the overhang at 41.5°",
  },
  "heavy-elastica": {
    title: "Heavy elastica in contact with its neighbours, solved here (docs/method.md)",
    kind: "derived",
    note: "held to published and independent solutions of the heavy strip",
  },
  "hanging-net": {
    title: "Cloth as a net brought to rest, solved here (docs/method.md)",
    kind: "derived",
    note: "held to the heavy elastica and the catenary",
  },
  "steel-stiffness": {
    title: "EN 1993-1-1:2005, 3.2.6: modulus of elasticity of steel, 210 000 N/mm²",
    kind: "standard",
    note: "clause from memory",
  },
  "aluminium-stiffness": {
    title: "EN 1999-1-1:2007, 3.2.5: modulus of elasticity of aluminium alloys, 70 000 N/mm²",
    kind: "standard",
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

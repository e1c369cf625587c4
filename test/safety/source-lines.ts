/**
 * What was read of each rule, line by line under the title of its text, as it was noted down: figures in the
 * rule files must be found here. `≤`, `<` and `≥` are as in the notes.
 */
export interface SourceLine {
  title: string;
  text: string;
}

const US_FEDERAL = "16 CFR 1120.3 with A100.1-2018; 87 FR 72873";
const US_2022 = "ANSI/WCMA A100.1-2022, as trade FAQs and a laboratory bulletin report it";
const CANADA = "Corded Window Coverings Regulations, SOR/2019-97";
const EN_13120 = "EN 13120:2009+A1:2014, as trade pages report it";
const AU_2014 = "Corded Internal Window Coverings Safety Standard 2014, as quoted in the ACCC guide";
const AU_2010 = "SLI 2010 No. 212, as summarised by the MBIE consultation";
const NZ = "Product Safety New Zealand";
const CAUTION = "Our own rounding down of the rows of all places, for a caution profile";

const CHILD_FORCE: SourceLine = {
  title: "Health Canada on SOR/2019-97",
  text: "35 N = force a child can exert",
};

export const SOURCE_LINES: Record<string, SourceLine[]> = {
  "US-STOCK-8": [
    {
      title: US_FEDERAL,
      text: "stock: 4.3.1.2 static or access cord length ≤ 8 in (203 mm), fixed in length “in any state (free or under tension)”; in force since 28 Dec 2022",
    },
  ],
  "US-INNER": [
    {
      title: US_FEDERAL,
      text: "“inner cord must be inaccessible or too short to form a hazardous loop”; stock and custom; appendices C and D of A100.1-2018; untested exposed back cord: not proven",
    },
  ],
  "US-LABEL": [
    { title: US_FEDERAL, text: "s. 5.3: permanent manufacturer label in or on headrail, or on roller tube" },
  ],
  "US-NOHANG": [
    {
      title: US_2022,
      text: "custom: no free-hanging operating cord, count = 0; products made on or after 1 Jun 2024 (2024-06-01); voluntary consensus standard",
    },
  ],
  "US-NOMULTI": [
    {
      title: US_2022,
      text: "custom: no multiple cords into a connector, count = 0; made on or after 2024-06-01",
    },
  ],
  "US-LOOP-DEVICE": [
    {
      title: US_2022,
      text: "permitted: continuous loop + tension device; device factory-attached; shade inoperable if not installed; made on or after 2024-06-01",
    },
  ],
  "US-1260": [
    {
      title: "16 CFR 1260; WCMA v. CPSC, No. 22-1300 (D.C. Cir.)",
      text: "custom operating cord length ≤ 8 in (203 mm): stayed 10 Jan 2023, VACATED 12 September 2023 (2023-09-12)",
    },
  ],
  "US-2018-DEFAULT": [
    {
      title: "Trade article of December 2018",
      text: "default length of 40 % of the blind height; superseded 1 June 2024 (2024-06-01)",
    },
  ],
  "US-OLD-ROMAN": [
    {
      title: "A100.1 provisional clauses of about 2009, 4.4–4.5, quoted by a parents’ group",
      text: "ring to ring ≤ 8 in (204 mm); side cords ≥ 2 in (51 mm) from edge; cord stop ≤ 6 in (153 mm) below headrail; bottom bar of sufficient weight and rigidity; superseded",
    },
  ],
  "US-OLD-PROBE": [
    {
      title: "Trade tutorial on the probe of 2010",
      text: "24 in arm; c. 2009 rear cord within 12 in below headrail bottom deemed not accessible; superseded",
    },
  ],
  "US-NY-DAYCARE": [
    {
      title: "New York bill A992 of 2023",
      text: "Roman lift cord “completely enclosed so that it is not accessible”, no draw cord; enactment not verified",
    },
  ],
  "CA-FREE": [
    {
      title: CANADA,
      text: "s. 5 reachable cord with one free end “must not exceed 22 cm in length”, under 35 N, in all positions",
    },
  ],
  "CA-SPAN": [
    {
      title: CANADA,
      text: "s. 6 reachable cord “between two consecutive contact points” ≤ 22 cm under 35 N, in all positions",
    },
  ],
  "CA-LOOP": [
    {
      title: CANADA,
      text: "s. 7 “perimeter of any loop … must not exceed 44 cm”, existing, created or enlarged, under 35 N",
    },
  ],
  "CA-JOIN-L": [
    {
      title: CANADA,
      text: "s. 8(a) joined length of two connectable free-end cords ≤ 22 cm, each pulled to 35 N first",
    },
  ],
  "CA-JOIN-P": [
    { title: CANADA, text: "s. 8(b) perimeter of loop so created ≤ 44 cm, each pulled to 35 N first" },
  ],
  "CA-HIDDEN": [
    { title: CANADA, text: "s. 4 unreachable cord stays unreachable in all positions, for the useful life" },
  ],
  "CA-SMALL": [
    {
      title: CANADA,
      text: "s. 2, sch. 1: small parts stay attached at 90 N, any direction; cylinder of 31.7 mm bore",
    },
  ],
  "CA-LEAD": [{ title: CANADA, text: "s. 3: lead in external components ≤ 90 mg/kg" }],
  "CA-LBL-SIG": [{ title: CANADA, text: "s. 12(1): signal word ≥ 5 mm bold capitals, English and French" }],
  "CA-LBL-TXT": [
    { title: CANADA, text: "s. 12(2): other required text ≥ 2.5 mm sans-serif, English and French" },
  ],
  "CA-LBL": [
    {
      title: CANADA,
      text: "ss. 10–15: bilingual warning on product, packaging, instructions and all ads; model, date (year + month or week), maker or importer",
    },
    {
      title: `${CANADA}, s. 15, consolidation of 23 March 2021`,
      text: "on product, packaging, instructions and advertising, or its equivalent: WARNING: STRANGULATION HAZARD — Young children can be strangled by cords. Immediately remove this product if a cord longer than 22 cm or a loop exceeding 44 cm around becomes accessible. MISE EN GARDE: RISQUE D’ÉTRANGLEMENT — Les enfants en bas âge peuvent s’étrangler avec des cordes. Enlevez immédiatement ce produit si une corde mesurant plus de 22 cm devient accessible ou si le contour d’une boucle de plus de 44 cm devient accessible.",
    },
  ],
  "CA-NOREF": [
    {
      title: CANADA,
      text: "s. 9: must not refer to the Act or these Regulations on product, accompanying information or ads",
    },
  ],
  "CA-NODEV": [
    {
      title: "Consumers Council of Canada on a Health Canada notice",
      text: "“without relying on installation, alteration, additional safety devices or consumer behaviour”, as received",
    },
  ],
  "US-BUTTON": [
    {
      title: "Agency’s questions and answers on button cells",
      text: "products made or imported on or after 23 October 2023 must meet performance and labeling requirements of 16 CFR part 1263; enforcement discretion through 19 March 2024 (2024-03-19)",
    },
  ],
  "US-LABEL-TEXT": [
    {
      title: "Recalled, not read",
      text: "maker, city, state, month, year, designation, stock or custom: A100.1-2018, 5.3",
    },
  ],
  "EU-H-PULL": [
    {
      title: EN_13120,
      text: "pull cord, or loop with fixed tensioner; H0 known: lowest point ≥ 1.5 m above floor",
    },
  ],
  "EU-L-UNK1": [{ title: EN_13120, text: "H0 unknown, H ≤ 2.5 m: L ≤ 1.0 m" }],
  "EU-L-UNK2": [{ title: EN_13120, text: "H0 unknown, H > 2.5 m: L ≤ 1 × H − 1.5 m" }],
  "EU-H-BRK": [{ title: EN_13120, text: "loop with breakaway, H0 known: bottom ≥ 0.6 m above floor" }],
  "EU-L-BRK": [{ title: EN_13120, text: "loop with breakaway, H0 unknown: L ≤ 2/3 H + 0" }],
  "EU-BRK": [{ title: EN_13120, text: "breakaway must open at 6 kg; duration unknown" }],
  "EU-CLEAT-H": [{ title: EN_13120, text: "pull-cord accumulation device (cleat) ≥ 1.5 m above floor" }],
  "EU-CLEAT-C": [{ title: EN_13120, text: "accumulation device takes up all cord when raised" }],
  "EU-COLLECT": [
    {
      title: "One maker on EN 13120+A1",
      text: "several cords collected in one: collector breaks away at ≤ 6 kg",
    },
  ],
  "EU-REAR": [
    {
      title: "UK maker and UK sewing tutorial on EN 13120+A1",
      text: "Roman rear cords: guides or pockets > 20 cm apart at any point need a breakaway on each cord, releasing at 6 kg",
    },
  ],
  "EU-PROBE": [
    {
      title: "EN 16433:2014, summaries",
      text: "hazardous loop = head probe of EN 16433 can be fully inserted; probe size unknown",
    },
  ],
  "EU-DEVICE": [
    {
      title: "Decision 2011/477/EU, summaries",
      text: "no hazardous loop, else safety device, integral or pre-installed with warning",
    },
  ],
  "EU-WARN": [
    { title: EN_13120, text: "warnings on product, packaging, instructions; maker’s name and address" },
  ],
  "EU-LIST-2026": [
    {
      title: "Implementing Decision (EU) 2026/901",
      text: "17 Apr 2026 (2026-04-17) repealed the old list, (EU) 2019/1698; whether it still lists EN 13120, EN 16433, EN 16434 was not readable",
    },
  ],
  "EU-GPSR": [
    {
      title: "Regulation (EU) 2023/988, article 9, as a law firm’s page and a laboratory’s give it",
      text: "internal risk analysis and technical documentation, kept 10 years; type, batch or serial number; name, postal and electronic address; instructions and safety information in a language easily understood; applies from 13 December 2024",
    },
  ],
  "NI-GPSR": [
    {
      title: "UK government guidance, 3 December 2024",
      text: "the GPSR applies directly in respect of Northern Ireland from 13 December 2024",
    },
  ],
  "EEA-LAW": [{ title: "Recalled, not read", text: "taken over by the EEA agreement; Swiss law of its own" }],
  "JP-REACH": [
    {
      title: "Newspaper of 7 November 2017 on JIS A 4811",
      text: "in principle no cord lower than a height of 160 cm; goods that do not meet it may be sold",
    },
  ],
  "JP-JOINT": [
    {
      title: "Newspaper of 7 November 2017 on JIS A 4811",
      text: "the cord comes off under a weight of about 6 kg",
    },
  ],
  "JP-HEAD": [
    {
      title: "Press release of 20 December 2017 on JIS A 4811",
      text: "under six years: no loop down to the height of the chin; no loop into which the head goes; at least one of the conditions",
    },
  ],
  "JP-PAPERS": [
    {
      title: "Press release of 20 December 2017 on JIS A 4811",
      text: "beds and sofas nearby raise the risk: instructions say so with plain illustrations",
    },
  ],
  "KR-END": [
    {
      title: "Press of 6 July 2016",
      text: "no cords, or tied up at least 160 centimetres (160 cm) above the ground",
    },
  ],
  "KR-LABEL": [
    {
      title: "Press of 6 July 2016",
      text: "required safety descriptive label; date of production and other details",
    },
  ],
  "KR-STANDARD": [{ title: "Press of 6 July 2016", text: "standards agency named; text not read" }],
  "UK-SECURED": [
    {
      title: "RoSPA material, reproduced",
      text: "cords end ≥ 1.5 m above floor and secured by a device that meets the standard",
    },
  ],
  "UK-LOWLOOP": [
    {
      title: "RoSPA material, reproduced",
      text: "low-level blinds: operating loop below 1.5 m: “20cm maximum size loop is deemed to have removed the hazard”",
    },
  ],
  "UK-BUTTON": [
    {
      title: "A marketplace’s page for sellers on PAS 7055:2021",
      text: "published April 2021 (2021-04); voluntary; considered by UK regulators when assessing whether a product is safe under the 2005 regulations",
    },
  ],
  "UK-TAIL": [
    {
      title: "UK sewing tutorial",
      text: "cleat ≥ 1.5 m; single tail below cleat: “only a single cord of no more than 20cms”",
    },
  ],
  "IE-END": [{ title: "NSAI guidance", text: "cords should end at least 1.6 m above the ground" }],
  "AU-LOOP": [
    {
      title: AU_2014,
      text: "s. 6(1)(a): “cannot form a loop 220 mm or longer” at less than 1600 mm above floor; summary says at or less than, so ≤ 1600 mm is used",
    },
  ],
  "AU-CLEAT": [{ title: AU_2014, text: "cleat ≥ 1600 mm above floor" }],
  "AU-GUIDE": [
    {
      title: AU_2014,
      text: "cord guide below 1600 mm only if it holds 70 N, any direction, 10 s, and prevents a ≥ 220 mm loop",
    },
  ],
  "AU-REMOVE": [
    {
      title: "Australian trade page with the warning",
      text: "a guide installed lower than 1600mm must be designed to prevent a child from being able to remove the cord/chain",
    },
  ],
  "AU-FOLLOW": [
    {
      title: "Product Safety Australia (2014-11)",
      text: "must also be installed in accordance with the installation instructions on any retail packaging",
    },
  ],
  "AU-BUTTON": [
    {
      title: "Product Safety Australia; a compliance laboratory",
      text: "four mandatory safety and information standards: design of products and packaging, warnings and safety information; mandatory from 22 June 2022 (2022-06-22)",
    },
  ],
  "AU-INSTALLER": [{ title: AU_2014, text: "installer label (name + contact); do not remove warning tags" }],
  "AU-LBL-W": [{ title: AU_2010, text: "WARNING capitals ≥ 5 mm, packaging and cord" }],
  "AU-LBL-T": [{ title: AU_2010, text: "other text ≥ 1.5 mm, packaging and cord" }],
  "AU-SUPPLY": [
    { title: AU_2010, text: "warnings on packaging and cord; instructions; all necessary components" },
  ],
  "AU-2025": [
    { title: "Australia, search for later instruments", text: "no 2025 instrument was found: unverified" },
  ],
  "NZ-NONE": [{ title: NZ, text: "avoid selling cords able to loop ≥ 22 cm" }],
  "NZ-EXPOSED": [
    { title: NZ, text: "no exposed pull or inner cords, including on the fabric’s back: count = 0" },
  ],
  "NZ-LAW": [
    {
      title: "MBIE consultation",
      text: "27 Jan to 5 Mar 2023: “currently has no regulations or standards”; mandatory rules preferred",
    },
  ],
  "NZ-LATER": [
    { title: "Automated news brief, undated", text: "suppliers have 12 months to comply: unverified" },
  ],
  "CAUTION-FREE": [{ title: CAUTION, text: "free cord ≤ 200 mm" }, CHILD_FORCE],
  "CAUTION-LOOP": [{ title: CAUTION, text: "loop perimeter ≤ 400 mm" }, CHILD_FORCE],
  "CAUTION-GUIDE": [{ title: CAUTION, text: "guide spacing ≤ 200 mm" }],
  "CAUTION-CLEAT": [{ title: CAUTION, text: "cleat ≥ 1600 mm" }],
  "GEN-CORDLESS": [
    { title: "CPSC and Health Canada releases", text: "no accessible cord front, side or back: count = 0" },
  ],
};

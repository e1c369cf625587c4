import type { Place } from "../../job/index.ts";
import type { TagLine } from "../../shade-plan/index.ts";

/** A line before its letters are sized. */
export type TagWords = Omit<TagLine, "minHeightMm" | "bold" | "capitals">;

type Language = TagLine["language"];

/** What cords do: our own plain words, for places whose official text was not read. */
const OWN = {
  signal: "WARNING",
  warnings: [
    "Cords can strangle young children, quickly and silently.",
    "Cords, loops and chains can wrap around a child’s neck.",
  ],
};

const INSTRUCTIONS: Record<Language, string[]> = {
  en: [
    "Keep every cord out of the reach of children.",
    "Keep cots, beds and furniture away from the window.",
    "Do not tie cords together. Do not let them twist into a loop.",
  ],
  fr: [
    "Gardez tous les cordons hors de la portée des enfants.",
    "Éloignez de la fenêtre lits d’enfant, lits et meubles.",
    "Ne nouez pas les cordons ensemble. Ne les laissez pas se torsader en boucle.",
  ],
};

/** With a cord or loop at the front. */
const FRONT_CORDS: Record<Language, string> = {
  en: "Fix the devices for the cords that came with this shade, and use them every time.",
  fr: "Fixez les dispositifs pour cordons livrés avec ce store et utilisez-les chaque fois.",
};

/** With cords inside a tape or behind rings. */
const HIDDEN_CORDS: Record<Language, string> = {
  en: "There are cords at the back. If one comes loose or can be pulled out, stop using this shade and take it down.",
  fr: "Il y a des cordons au dos. Si l’un d’eux se libère ou peut être tiré, n’utilisez plus ce store et enlevez-le.",
};

/** Section 15 as it was published, in both languages: it stands in the place of our own signal word and warnings. */
const CANADA: Record<Language, { signal: string; warning: string }> = {
  en: {
    signal: "WARNING",
    warning:
      "STRANGULATION HAZARD — Young children can be strangled by cords. Immediately remove this product if a cord longer than 22 cm or a loop exceeding 44 cm around becomes accessible.",
  },
  fr: {
    signal: "MISE EN GARDE",
    warning:
      "RISQUE D’ÉTRANGLEMENT — Les enfants en bas âge peuvent s’étrangler avec des cordes. Enlevez immédiatement ce produit si une corde mesurant plus de 22 cm devient accessible ou si le contour d’une boucle de plus de 44 cm devient accessible.",
  },
};

interface MakerLine {
  text: string;
  asks?: NonNullable<TagLine["asks"]>;
}

const LINE = "________";
const MAKER: Record<Language, MakerLine[]> = {
  en: [
    { text: `Model: ${LINE}`, asks: "model" },
    { text: `Made (year and month or week): ${LINE}`, asks: "made" },
    { text: `Maker or importer: ${LINE}`, asks: "maker" },
  ],
  fr: [
    { text: `Modèle : ${LINE}`, asks: "model" },
    { text: `Fabriqué (année et mois ou semaine) : ${LINE}`, asks: "made" },
    { text: `Fabricant ou importateur : ${LINE}`, asks: "maker" },
  ],
};

/** As Regulation (EU) 2023/988, article 9, is reported to ask: who made it, where to write, which one it is. */
const MAKER_TO_WRITE_TO: MakerLine[] = [
  { text: `Type, batch or serial no.: ${LINE}`, asks: "model" },
  { text: `Maker: ${LINE}`, asks: "maker" },
  { text: `Post and web address: ${LINE}` },
];

/** What a place asks for besides; what the label of the United States must say is recalled and not read. */
const MAKER_OF: Partial<Record<Place, MakerLine[]>> = {
  us: [
    { text: `Model, stock or to order: ${LINE}`, asks: "model" },
    { text: `Made (month and year): ${LINE}`, asks: "made" },
    { text: `Maker, city and state: ${LINE}`, asks: "maker" },
  ],
  au: [
    ...MAKER.en,
    { text: `Installed by: ${LINE}` },
    { text: `Address and telephone of the installer: ${LINE}` },
  ],
  eu: MAKER_TO_WRITE_TO,
  ie: MAKER_TO_WRITE_TO,
  ni: MAKER_TO_WRITE_TO,
  gb: MAKER_TO_WRITE_TO,
  eea: MAKER_TO_WRITE_TO,
};

/** Where EN 13120 is the standard: how high its devices sit, as reported, in our own words. */
const EN_DEVICES =
  "Fix the devices for the cords and use them every time: nothing hangs lower than 1.5 m above the floor.";
const DEVICES_OF: Partial<Record<Place, string[]>> = {
  eu: [EN_DEVICES],
  ie: [EN_DEVICES],
  ni: [EN_DEVICES],
  gb: [EN_DEVICES],
  eea: [EN_DEVICES],
  au: [
    FRONT_CORDS.en,
    "No loose cord may form a loop 220 mm long or longer lower than 1600 mm above the floor.",
    "A guide lower than that holds the cord so that no such loop forms and a child cannot take it out. A cleat is at least 1600 mm above the floor.",
  ],
};
const STAYS: Partial<Record<Place, string>> = { au: "Do not remove this label." };

export interface TagAsk {
  languages: readonly Language[];
  place: Place | undefined;
  frontCords: boolean;
  rearCords: boolean;
}

/** Lines of the tag, language by language. */
export function tagWords({ languages, place = "elsewhere", frontCords, rearCords }: TagAsk): TagWords[] {
  const canada = place === "ca";
  const stays = STAYS[place];
  return languages.flatMap((language) => {
    const own = (kind: TagWords["kind"]) => (text: string) => ({ text, language, kind, official: false });
    const published = (kind: TagWords["kind"], text: string) => ({ text, language, kind, official: true });
    return [
      ...(canada
        ? [published("signal", CANADA[language].signal), published("warning", CANADA[language].warning)]
        : [own("signal")(OWN.signal), ...OWN.warnings.map(own("warning"))]),
      ...INSTRUCTIONS[language].map(own("instruction")),
      ...(frontCords ? (DEVICES_OF[place] ?? [FRONT_CORDS[language]]).map(own("instruction")) : []),
      ...(rearCords ? [own("instruction")(HIDDEN_CORDS[language])] : []),
      ...(stays === undefined ? [] : [own("instruction")(stays)]),
      ...(MAKER_OF[place] ?? MAKER[language]).map(({ text, asks }) => ({
        ...own("maker")(text),
        ...(asks === undefined ? {} : { asks }),
      })),
    ];
  });
}

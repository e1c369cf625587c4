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

const MAKER: Record<Language, string[]> = {
  en: ["Model: ________", "Made (year and month or week): ________", "Maker or importer: ________"],
  fr: [
    "Modèle : ________",
    "Fabriqué (année et mois ou semaine) : ________",
    "Fabricant ou importateur : ________",
  ],
};

const ASKS: readonly TagLine["asks"][] = ["model", "made", "maker"];

export interface TagAsk {
  languages: readonly Language[];
  canada: boolean;
  frontCords: boolean;
  rearCords: boolean;
}

/** Lines of the tag, language by language. */
export function tagWords({ languages, canada, frontCords, rearCords }: TagAsk): TagWords[] {
  return languages.flatMap((language) => {
    const own = (kind: TagWords["kind"]) => (text: string) => ({ text, language, kind, official: false });
    const published = (kind: TagWords["kind"], text: string) => ({ text, language, kind, official: true });
    return [
      ...(canada
        ? [published("signal", CANADA[language].signal), published("warning", CANADA[language].warning)]
        : [own("signal")(OWN.signal), ...OWN.warnings.map(own("warning"))]),
      ...INSTRUCTIONS[language].map(own("instruction")),
      ...(frontCords ? [own("instruction")(FRONT_CORDS[language])] : []),
      ...(rearCords ? [own("instruction")(HIDDEN_CORDS[language])] : []),
      ...MAKER[language].map((text, i) => ({ ...own("maker")(text), asks: ASKS[i] })),
    ];
  });
}

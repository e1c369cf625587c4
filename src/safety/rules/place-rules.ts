import type { Place } from "../../job/index.ts";
import { AU_RULES } from "./places/au.ts";
import { CA_RULES } from "./places/ca.ts";
import { EEA_RULES } from "./places/eea.ts";
import { ELSEWHERE_RULES } from "./places/elsewhere.ts";
import { EU_RULES } from "./places/eu.ts";
import { GB_RULES } from "./places/gb.ts";
import { IE_RULES } from "./places/ie.ts";
import { JP_RULES } from "./places/jp.ts";
import { KR_RULES } from "./places/kr.ts";
import { NI_RULES } from "./places/ni.ts";
import { NZ_RULES } from "./places/nz.ts";
import { US_RULES } from "./places/us.ts";
import type { PlaceRules } from "./rule.ts";

/** One file a place; the compiler asks for the file of a new one. */
export const PLACE_RULES: Record<Place, PlaceRules> = {
  us: US_RULES,
  ca: CA_RULES,
  eu: EU_RULES,
  gb: GB_RULES,
  ni: NI_RULES,
  ie: IE_RULES,
  eea: EEA_RULES,
  au: AU_RULES,
  nz: NZ_RULES,
  jp: JP_RULES,
  kr: KR_RULES,
  elsewhere: ELSEWHERE_RULES,
};

/** Read where place or purpose was not said, and where the place's own rules do not bind. */
export const CAUTION_RULES: PlaceRules = ELSEWHERE_RULES;

/**
 * Advance widths of Source Sans 3, thousandths of the em: for each letter the wider of Regular and SemiBold.
 * Read from the font files of the package; a test reads them again.
 */
const WIDTHS: Record<number, string> = {
  91: "⁄",
  200: " \u00a0",
  255: "|",
  262: "iîï",
  263: "j",
  271: "l",
  275: "',.:;·‘’",
  282: "IÎ",
  315: "!",
  317: "f",
  322: "-",
  324: "()[]{}",
  348: "°",
  350: "/\\",
  361: "t",
  372: "²",
  373: "r",
  431: "s",
  438: "*",
  443: "z",
  444: "?",
  455: "«»",
  462: "cç",
  480: "–",
  481: "x",
  482: '"“”',
  494: "J",
  495: "vy",
  500: "_",
  501: "Y",
  502: "L",
  507: "eéèêë",
  510: "F",
  513: "#$+0123456789<=>^~−×",
  516: "aàâ",
  520: "g",
  522: "k",
  536: "V",
  538: "EÈÉÊ",
  540: "Z",
  541: "X",
  545: "S",
  546: "T",
  549: "`oô",
  556: "uüùû",
  558: "AhÄÀÂ",
  560: "n",
  563: "b",
  564: "dpq",
  576: "CÇ",
  582: "P",
  592: "R",
  597: "BK",
  619: "→←↑↓",
  625: "D",
  628: "G",
  639: "&",
  655: "UÙÛ",
  657: "N",
  663: "H",
  674: "OQÔ",
  745: "M",
  748: "w",
  800: "W—",
  839: "œ",
  841: "%",
  843: "m",
  859: "Œ",
  875: "@",
  964: "…",
};

/** Letters that the table lacks are taken as wide as a capital. */
const UNKNOWN = 675;

const ADVANCE = new Map(
  Object.entries(WIDTHS).flatMap(([width, letters]) => [...letters].map((letter) => [letter, Number(width)])),
);

/** Width of a line of text in ems: never narrower than the font sets it. */
export function textWidthEm(text: string): number {
  let sum = 0;
  for (const letter of text) sum += ADVANCE.get(letter) ?? UNKNOWN;
  return sum / 1000;
}

/** Heights above and below the baseline, in ems: capitals and figures, descenders. */
export const CAP_EM = 0.66;
export const ASCENT_EM = 0.74;
export const DESCENT_EM = 0.21;

/**
 * Heights of the letters that are flat at top and bottom, in ems, the lower of Regular and SemiBold: H, and x.
 * The capitals are a little lower than the font file says of itself.
 */
export const FLAT_CAPITAL_EM = 0.654;
export const SMALL_LETTER_EM = 0.486;

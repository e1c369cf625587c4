const TOGETHER = /(?<=\d) (?=\d+⁄|(?:in|mm|cm|m|yd|ft|lb|lbf|oz|kg|g|N|min|h|%)(?![\p{L}\d]))/gu;
const NO_BREAK = "\u00a0";

/** A number, its fraction and its unit are never parted at the end of a line: they are joined by a no-break space. */
export function keptTogether(text: string): string {
  return text.replace(TOGETHER, NO_BREAK);
}

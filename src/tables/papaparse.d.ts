/**
 * What the lists use of papaparse. Its published types name Node's and the browser's, and would bring
 * `process` and `window` into the pure rooms; this file and the path keep them out.
 */
declare module "papaparse/papaparse.js" {
  interface UnparseConfig {
    newline: "\r\n";
    quotes: (value: unknown, column: number) => boolean;
    escapeFormulae: RegExp;
  }
  interface ParseConfig {
    header: true;
    skipEmptyLines: "greedy";
    transformHeader: (header: string) => string;
  }
  const papaparse: {
    parse(
      text: string,
      config: ParseConfig,
    ): { data: Record<string, string | undefined>[]; meta: { fields?: string[] } };
    parse(text: string, config: { header: false; delimiter: string }): { data: string[][] };
    unparse(rows: (string | number)[][], config: UnparseConfig): string;
  };

  // biome-ignore lint/style/noDefaultExport: the library has no other.
  export { papaparse as default };
}

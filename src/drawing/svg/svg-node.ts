/** A node of SVG as plain data, attribute names as React spells them; text is not escaped. */
export interface SvgNode {
  tag:
    | "svg"
    | "title"
    | "desc"
    | "g"
    | "path"
    | "circle"
    | "rect"
    | "text"
    | "defs"
    | "use"
    | "pattern"
    | "image";
  attrs: Record<string, string | number>;
  children?: SvgNode[];
  text?: string;
}

/** Hundredths of a millimetre are finer than any printer. */
export function round(value: number): number {
  const rounded = Math.round(value * 100) / 100;
  return rounded === 0 ? 0 : rounded;
}

import { round, type SvgNode } from "./svg-node.ts";

/** A letter as lines. */
export interface LetterShape {
  /** The same for the same shape, fit for an id. */
  key: string;
  /** Path data in thousandths of the em, y down, from the start of the letter on its baseline. */
  path: string;
  /** From the start of the line, thousandths of the em. */
  x: number;
  y: number;
}

/** One line of text as lines. */
export interface LineShape {
  letters: readonly LetterShape[];
  /** Thousandths of the em. */
  width: number;
}

/** Letters as lines, by whoever has a typeface: a file with them looks the same where it is not installed. */
export type LetterOutlines = (text: string, strong: boolean) => LineShape;

const EM = 1000;
const ANCHOR_SHARES: Record<string, number> = { middle: 0.5, end: 1 };

/** Replaces every text by its outlines, each shape written once. The words stay with them as their name. */
export function outlinedLetters(nodes: readonly SvgNode[], outlines: LetterOutlines): SvgNode[] {
  const shapes = new Map<string, SvgNode>();
  const outlined = nodes.map((node) => withOutlines(node, outlines, shapes));
  if (shapes.size === 0) return outlined;
  return [{ tag: "defs", attrs: {}, children: [...shapes.values()] }, ...outlined];
}

function withOutlines(node: SvgNode, outlines: LetterOutlines, shapes: Map<string, SvgNode>): SvgNode {
  if (node.tag === "text") return lineNode(node, outlines, shapes);
  // A stack of fonts has nothing left to choose.
  const { fontFamily, fontVariant, ...attrs } = node.attrs;
  if (node.children === undefined) return { ...node, attrs };
  return { ...node, attrs, children: node.children.map((child) => withOutlines(child, outlines, shapes)) };
}

function lineNode(
  { attrs, text = "" }: SvgNode,
  outlines: LetterOutlines,
  shapes: Map<string, SvgNode>,
): SvgNode {
  const { x, y, fontSize, textAnchor, fontWeight, fontFamily, transform, stroke, ...rest } = attrs;
  const { strokeWidth, paintOrder, ...kept } = rest;
  const line = outlines(text, fontWeight !== undefined);
  const scale = Number(fontSize) / EM;
  const from = -(ANCHOR_SHARES[String(textAnchor)] ?? 0) * line.width;
  const uses = line.letters
    .filter(({ path }) => path !== "")
    .map(({ key, path, x: along, y: down }): SvgNode => {
      if (!shapes.has(key)) shapes.set(key, { tag: "path", attrs: { id: key, d: path } });
      const at = { x: Math.round(from + along), ...(down === 0 ? {} : { y: Math.round(down) }) };
      return { tag: "use", attrs: { "xlink:href": `#${key}`, ...at } };
    });
  const placed = [
    ...(transform === undefined ? [] : [transform]),
    `translate(${x} ${y})`,
    `scale(${Number(scale.toFixed(6))})`,
  ];
  return {
    tag: "g",
    attrs: { ...kept, "aria-label": text, transform: placed.join(" ") },
    children:
      stroke === undefined
        ? uses
        : [
            // The border of all letters lies under all of them, not over the one before.
            { tag: "g", attrs: { stroke, strokeWidth: round(Number(strokeWidth) / scale) }, children: uses },
            { tag: "g", attrs: {}, children: uses },
          ],
  };
}

import type { Paint, Theme } from "../paints.ts";
import type { Placed } from "../placed.ts";
import { breakWords } from "../placing/break-words.ts";
import { type LetterOutlines, outlinedLetters } from "./letter-outlines.ts";
import { round, type SvgNode } from "./svg-node.ts";
import { FONT_STACK, isFaces, itemsNode, paintValue } from "./svg-nodes.ts";

const TITLE_MM = 4.4;
const CAPTION_MM = 3.1;
const LINE_EM = 1.3;
const PADDING_MM = 5;
const LEAST_WIDTH_MM = 70;

export interface SvgOptions {
  theme?: Theme;
  /** Words that stand above all of it. */
  stamp?: string;
  /** Draws letters as lines, so that no typeface has to be there; without it the file names fonts. */
  letters?: LetterOutlines;
  /** Whether title and caption are written on it, as usual, or stand beside it wherever it is shown. */
  isHeaded?: boolean;
}

/** A drawing as a file that stands alone: real size in mm, title and caption on it, every colour in hex. */
export function toSvg(
  placed: Placed,
  { theme = "light", stamp, letters, isHeaded = true }: SvgOptions = {},
): string {
  const widthMm = Math.max(placed.widthMm, isHeaded ? LEAST_WIDTH_MM : 0) + 2 * PADDING_MM;
  const words = isHeaded ? placed : { title: "", caption: "" };
  const heading = headingNodes(words, widthMm, theme, stamp);
  const top = heading.heightMm + PADDING_MM;
  const heightMm = top + placed.heightMm + PADDING_MM;
  const left = (widthMm - placed.widthMm) / 2;
  const items = itemsNode(placed, theme);
  const drawn: SvgNode[] = [
    ...heading.nodes,
    { ...items, attrs: { ...items.attrs, transform: `translate(${round(left)} ${round(top)})` } },
  ];
  const root: SvgNode = {
    tag: "svg",
    attrs: {
      xmlns: "http://www.w3.org/2000/svg",
      // Programs that know SVG 1.1 alone find a shape by this name only.
      ...(letters === undefined ? {} : { "xmlns:xlink": "http://www.w3.org/1999/xlink" }),
      width: `${round(widthMm)}mm`,
      height: `${round(heightMm)}mm`,
      viewBox: `0 0 ${round(widthMm)} ${round(heightMm)}`,
      role: "img",
    },
    children: [
      { tag: "title", attrs: {}, text: placed.title },
      { tag: "desc", attrs: {}, text: description(placed, stamp) },
      {
        tag: "rect",
        attrs: { width: round(widthMm), height: round(heightMm), fill: paintValue("paper", theme) },
      },
      ...(letters === undefined ? drawn : outlinedLetters(drawn, letters)),
    ],
  };
  return `${svgText(root)}\n`;
}

/** Caption and facts in sentences, for those who hear the drawing. */
function description({ caption, facts }: Placed, stamp: string | undefined): string {
  return [
    ...(stamp === undefined ? [] : [stamp]),
    caption,
    ...facts.map(({ label, text }) => `${label}: ${text}`),
  ].join("\n");
}

function headingNodes(
  { title, caption }: Pick<Placed, "title" | "caption">,
  widthMm: number,
  theme: Theme,
  stamp: string | undefined,
): { nodes: SvgNode[]; heightMm: number } {
  const room = widthMm - 2 * PADDING_MM;
  const nodes: SvgNode[] = [];
  let y = PADDING_MM;
  const write = (text: string, sizeMm: number, strong: boolean, paint: Paint = strong ? "ink" : "pencil") => {
    for (const line of breakWords(text, room / sizeMm)) {
      y += sizeMm * LINE_EM;
      nodes.push({
        tag: "text",
        attrs: {
          x: PADDING_MM,
          y: round(y - sizeMm * 0.3),
          fontFamily: FONT_STACK,
          fontSize: sizeMm,
          ...(strong ? { fontWeight: 600 } : {}),
          fill: paintValue(paint, theme),
        },
        text: line,
      });
    }
  };
  if (stamp !== undefined) write(stamp, TITLE_MM, true, "stop");
  if (title !== "") write(title, TITLE_MM, true);
  if (caption !== "") write(caption, CAPTION_MM, false);
  return { nodes, heightMm: nodes.length === 0 ? 0 : y };
}

/**
 * Faces of pictures drawn as one image each: on a page that shows many in small, their thousands of nodes would weigh on
 * every look at it.
 */
export function facesAsImages(
  nodes: readonly SvgNode[],
  { widthMm, heightMm }: Pick<Placed, "widthMm" | "heightMm">,
): SvgNode[] {
  const size = { width: round(widthMm), height: round(heightMm) };
  return nodes.map((node): SvgNode => {
    if (!isFaces(node)) return node.children === undefined ? node : within(node, node.children);
    const alone: SvgNode = {
      tag: "svg",
      attrs: { xmlns: "http://www.w3.org/2000/svg", viewBox: `0 0 ${size.width} ${size.height}`, ...size },
      children: [node],
    };
    return {
      tag: "image",
      attrs: { ...size, href: `data:image/svg+xml,${encodeURIComponent(svgText(alone))}` },
    };
  });

  function within(node: SvgNode, children: readonly SvgNode[]): SvgNode {
    return { ...node, children: facesAsImages(children, { widthMm, heightMm }) };
  }
}

/** Nodes as SVG text; every text and attribute escaped, control characters dropped. */
function svgText(node: SvgNode): string {
  let attrs = "";
  for (const name in node.attrs) attrs += ` ${attributeName(name)}="${escaped(String(node.attrs[name]))}"`;
  const inside = node.text === undefined ? (node.children ?? []).map(svgText).join("\n") : escaped(node.text);
  if (inside === "") return `<${node.tag}${attrs}/>`;
  const block = node.children !== undefined;
  return block
    ? `<${node.tag}${attrs}>\n${inside}\n</${node.tag}>`
    : `<${node.tag}${attrs}>${inside}</${node.tag}>`;
}

/** Attributes of SVG that are written with a capital; all others that React spells so have a hyphen. */
const AS_THEY_STAND = new Set(["viewBox"]);

const attributeNames = new Map<string, string>();

function attributeName(name: string): string {
  const known = attributeNames.get(name);
  if (known !== undefined) return known;
  const written = AS_THEY_STAND.has(name)
    ? name
    : name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  attributeNames.set(name, written);
  return written;
}

const ENTITIES: Record<string, string> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Digits of paths, colours and sizes are most of a file. */
const PLAIN = /^[\w #%,.:;()+-]*$/;

function escaped(text: string): string {
  if (PLAIN.test(text)) return text;
  return text
    .replace(/[^\P{Cc}\n\t]/gu, "")
    .replace(/[\ud800-\udfff]/gu, "")
    .replace(/[&<>"']/g, (letter) => ENTITIES[letter] ?? letter);
}

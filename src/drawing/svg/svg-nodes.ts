import type { Point } from "../model.ts";
import { type Paint, paintHex, type Theme } from "../paints.ts";
import type { Placed, PlacedItem, PlacedPath, PlacedText, Stroke } from "../placed.ts";
import { type PhotoOfCloth, photoId, photoPatterns } from "./cloth-photo.ts";
import { round, type SvgNode } from "./svg-node.ts";

export const FONT_STACK =
  "'Source Sans 3', 'Source Sans Pro', 'Noto Sans', 'Helvetica Neue', Arial, sans-serif";

/**
 * A placed drawing as SVG nodes: one group inside an `svg` of its own size, user units = mm of paper.
 * Without a theme, colours are CSS variables (`var(--sw-ink, #1E2A4A)`) so that one markup serves both papers;
 * with one they are plain hex. With a photo the face of the shade carries it, at its true scale. What can be pressed carries `data-figure`, `data-field` and `data-part`.
 */
export function svgNodes(placed: Placed, theme?: Theme, photo?: PhotoOfCloth): SvgNode {
  return {
    tag: "svg",
    attrs: {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${round(placed.widthMm)} ${round(placed.heightMm)}`,
      role: "img",
      "aria-label": `${placed.title}. ${placed.caption}`,
    },
    children: [
      ...(photo === undefined ? [] : [photoPatterns(placed, photo)]),
      itemsNode(placed, theme, photo !== undefined),
    ],
  };
}

/** The group of all items alone, for those who bring their own frame. */
export function itemsNode(placed: Placed, theme?: Theme, withPhoto = false): SvgNode {
  return {
    tag: "g",
    attrs: {
      fill: "none",
      strokeLinecap: "round",
      strokeLinejoin: "round",
      fontFamily: FONT_STACK,
      fontVariant: "tabular-nums",
    },
    children: placed.items.map((item) => itemNode(item, theme, withPhoto)),
  };
}

/** A paint as an SVG colour: a CSS variable with the light value to fall back on, or plain hex. */
export function paintValue(paint: Paint, theme?: Theme): string {
  return theme === undefined ? `var(--sw-${paint}, ${paintHex(paint, "light")})` : paintHex(paint, theme);
}

function itemNode(item: PlacedItem, theme: Theme | undefined, withPhoto: boolean): SvgNode {
  switch (item.kind) {
    case "path":
      return {
        tag: "path",
        attrs: {
          d: pathData(item),
          ...painted(item, theme),
          ...(withPhoto && item.fill !== undefined && item.clothShiftMm !== undefined
            ? { fill: `url(#${photoId(item.clothShiftMm)})` }
            : {}),
          ...tied(item),
        },
      };
    case "facets":
      return {
        tag: "g",
        attrs: {
          fill: "currentColor",
          stroke: "currentColor",
          strokeWidth: round(item.edgeMm),
          ...tied(item),
        },
        children: item.faces.map(({ lines, hex }) => ({
          tag: "path",
          attrs: { color: hex, d: lines.map(shortData).join("") },
        })),
      };
    case "circle":
      return {
        tag: "circle",
        attrs: {
          cx: round(item.centre[0]),
          cy: round(item.centre[1]),
          r: round(item.radiusMm),
          ...painted(item, theme),
          ...tied(item),
        },
      };
    case "text":
      return { tag: "text", attrs: textAttrs(item, theme), text: item.text };
  }
}

/** A node of many faces, each with a colour of its own. */
export function isFaces({ tag, attrs }: SvgNode): boolean {
  return tag === "g" && attrs.fill === "currentColor" && attrs.stroke === "currentColor";
}

/** A closed line by its steps: of thousands of small faces each letter counts. */
function shortData([first, ...rest]: readonly Point[]): string {
  if (first === undefined) return "";
  let [x, y] = [round(first[0]), round(first[1])];
  let data = `M${x} ${y}l`;
  for (const point of rest) {
    const [u, v] = [round(point[0]), round(point[1])];
    data += `${short(u - x)}${short(v - y)}`;
    [x, y] = [u, v];
  }
  return `${data}z`;
}

/** A number that follows another: its sign, or a blank, keeps them apart. */
function short(value: number): string {
  const rounded = round(value);
  const text = String(rounded);
  if (rounded < 0) return text.startsWith("-0.") ? `-${text.slice(2)}` : text;
  return text.startsWith("0.") ? ` ${text.slice(1)}` : ` ${text}`;
}

function pathData({ lines, closed }: PlacedPath): string {
  return lines.map((line) => lineData(line) + (closed ? "Z" : "")).join("");
}

function lineData(line: readonly Point[]): string {
  let data = "";
  line.forEach(([x, y], i) => {
    data += `${i === 0 ? "M" : "L"}${round(x)} ${round(y)}`;
  });
  return data;
}

function painted({ fill, stroke }: { fill?: Paint; stroke?: Stroke }, theme?: Theme): SvgNode["attrs"] {
  const attrs: SvgNode["attrs"] = {};
  if (fill !== undefined) attrs.fill = paintValue(fill, theme);
  if (stroke !== undefined) {
    attrs.stroke = paintValue(stroke.paint, theme);
    attrs.strokeWidth = round(stroke.widthMm);
    // A round cap would close the gaps of a fine rhythm.
    if (stroke.dashMm !== undefined) {
      attrs.strokeDasharray = stroke.dashMm.map(round).join(" ");
      attrs.strokeLinecap = "butt";
    }
  }
  return attrs;
}

function textAttrs(text: PlacedText, theme?: Theme): SvgNode["attrs"] {
  const x = round(text.at[0]);
  const y = round(text.at[1]);
  return {
    x,
    y,
    fontSize: round(text.sizeMm),
    fill: paintValue(text.paint, theme),
    ...(text.anchor === "start" ? {} : { textAnchor: text.anchor }),
    ...(text.strong ? { fontWeight: 600 } : {}),
    ...(text.angleDeg === 0 ? {} : { transform: `rotate(${round(text.angleDeg)} ${x} ${y})` }),
    ...(text.haloMm === undefined
      ? {}
      : {
          stroke: paintValue(text.haloPaint ?? "paper", theme),
          strokeWidth: round(2 * text.haloMm),
          paintOrder: "stroke",
        }),
    ...tied(text),
  };
}

function tied(item: PlacedItem): SvgNode["attrs"] {
  return {
    ...(item.figure === undefined ? {} : { "data-figure": item.figure }),
    ...(item.field === undefined ? {} : { "data-field": item.field }),
    ...(item.part === undefined ? {} : { "data-part": item.part }),
  };
}

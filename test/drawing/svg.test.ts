import { describe, expect, test } from "vitest";
import {
  type Drawing,
  drawSheet,
  PAINTS,
  paintValue,
  place,
  type SvgNode,
  svgNodes,
  toSvg,
} from "../../src/drawing/index.ts";
import { SHEETS } from "../../src/shade-plan/index.ts";
import { CASES } from "../gallery/windows.ts";

const HOSTILE = `</title><script>alert("1")</script> & 'x' ]]> <!-- \u0007 \ud800`;

function hostile(): Drawing {
  return {
    id: "hostile",
    title: HOSTILE,
    caption: HOSTILE,
    primitives: [
      { kind: "text", role: "label", at: [0, 0], text: HOSTILE, paperMm: 3 },
      { kind: "polyline", role: "cut", points: [[0, 0]], part: HOSTILE, figure: HOSTILE, field: HOSTILE },
      { kind: "marker", role: "label", shape: "tag", at: [0, 0], paperMm: 4, text: HOSTILE },
    ],
    facts: [{ label: HOSTILE, text: HOSTILE }],
  };
}

const NAME = "[a-zA-Z][a-zA-Z0-9-]*";
const ENTITY = "&(?:amp|lt|gt|quot|#39);";
const TOKEN = new RegExp(
  `<(/?)(${NAME})((?: ${NAME}="(?:[^"<&]|${ENTITY})*")*)(/?)>|((?:[^<>&]|${ENTITY})+)`,
  "y",
);

/** A strict reader of the XML that is needed here: anything else is refused. Returns tag names and texts in order. */
function read(xml: string): { tags: string[]; texts: string[] } {
  const open: string[] = [];
  const tags: string[] = [];
  const texts: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < xml.length) {
    const at = TOKEN.lastIndex;
    const [token, closing, name, , empty, text] = TOKEN.exec(xml) ?? [];
    if (token === undefined) throw new Error(`not well formed at ${at}: ${xml.slice(at, at + 60)}`);
    if (text !== undefined) texts.push(text);
    else if (name === undefined) throw new Error(`no name at ${at}`);
    else if (closing === "/") {
      if (open.pop() !== name) throw new Error(`</${name}> closes nothing at ${at}`);
    } else {
      tags.push(name);
      if (empty !== "/") open.push(name);
    }
  }
  if (open.length > 0) throw new Error(`left open: ${open.join(" ")}`);
  return { tags, texts };
}

test("the reader refuses what is not well formed", () => {
  expect(() => read("<svg><g></svg>")).toThrow("closes nothing");
  expect(() => read("<svg>a & b</svg>")).toThrow("not well formed");
  expect(() => read('<svg a="<"></svg>')).toThrow("not well formed");
});

describe("a file that stands alone", () => {
  const { plan, shade } = CASES.outside();

  test.each(SHEETS)("%s is well formed, has title and description, and size in millimetres", (kind) => {
    const placed = place(drawSheet(kind, plan, shade), { maxWidthMm: 150, maxHeightMm: 190 });
    const svg = toSvg(placed);
    const { tags } = read(svg);
    expect(tags.slice(0, 3)).toEqual(["svg", "title", "desc"]);
    const [, width, height, box] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d. ]+)"/.exec(svg) ?? [];
    expect(box).toBe(`${width} ${height}`);
    expect(Number(width)).toBeGreaterThanOrEqual(placed.widthMm);
  });

  test("it needs no style sheet: every colour is one of the light paints", () => {
    const svg = toSvg(place(drawSheet("back", plan, shade), { maxWidthMm: 150, maxHeightMm: 190 }));
    expect(svg).not.toContain("var(");
    const used = new Set([...svg.matchAll(/#[0-9A-F]{6}/g)].map(([hex]) => hex));
    const known = Object.values(PAINTS).map(({ light }) => light as string);
    expect(used.size).toBeGreaterThan(8);
    for (const hex of used) expect(known).toContain(hex);
  });

  test("hostile words stay words", () => {
    const { tags, texts } = read(toSvg(place(hostile(), { scale: 1 })));
    expect(tags).not.toContain("script");
    expect(texts.join("")).toContain("&lt;script&gt;");
    // Neither control characters nor half a surrogate pair may stand in XML 1.0 (section 2.2).
    for (const letter of ["\u0007", "\ud800"]) expect(texts.join("")).not.toContain(letter);
  });
});

describe("nodes for screens", () => {
  const { plan, shade } = CASES.outside();
  const placed = place(drawSheet("marking", plan, shade), { maxWidthMm: 150, maxHeightMm: 190 });
  const every = (node: SvgNode): SvgNode[] => [node, ...(node.children ?? []).flatMap(every)];

  test("one markup for both papers: colours are variables with a light value to fall back on", () => {
    const colours = every(svgNodes(placed)).flatMap(({ attrs }) =>
      [attrs.fill, attrs.stroke].filter((value) => value !== undefined && value !== "none"),
    );
    expect(colours.length).toBeGreaterThan(100);
    for (const colour of colours) expect(colour).toMatch(/^var\(--sw-[a-z-]+, #[0-9A-F]{6}\)$/);
    expect(paintValue("ink")).toBe("var(--sw-ink, #1E2A4A)");
    expect(paintValue("ink", "dark")).toBe("#E8E6DF");
  });

  test("what can be pressed carries its figure and part", () => {
    const nodes = every(svgNodes(placed));
    expect(nodes.some(({ attrs }) => attrs["data-part"] === "row-1")).toBe(true);
    expect(nodes.some(({ attrs }) => attrs["data-figure"] === "measure.finished-length")).toBe(true);
  });

  test("it has a name, and as many nodes as items", () => {
    const root = svgNodes(placed);
    expect(root.attrs["aria-label"]).toContain("Marking");
    expect(root.children?.[0]?.children?.length).toBe(placed.items.length);
  });
});

import { createRequire } from "node:module";
import * as reader from "dxf-parser";
import { openSync } from "fontkit";
import { describe, expect, test } from "vitest";
import { toDxf } from "../../src/drawing/dxf/index.ts";
import { drawTag, type Placed, type PlacedText, place, toSvg } from "../../src/drawing/index.ts";
import { LIFT_KINDS, LIFT_TRAITS, PLACES } from "../../src/job/index.ts";
import { childTag } from "../../src/safety/index.ts";
import type { ChildSafetyTag, TagLine } from "../../src/shade-plan/index.ts";
import { verdictIn } from "../words.ts";
import { realCorners } from "./real-letters.ts";

const files = createRequire(import.meta.url);
const open = (name: string) => {
  const font = openSync(files.resolve(`@expo-google-fonts/source-sans-3/${name}/SourceSans3_${name}.ttf`));
  if (!("layout" in font)) throw new Error(`invalid font: ${name}`);
  return font;
};
const FONTS = { regular: open("400Regular"), strong: open("600SemiBold") };

/** The package is a bundle of the older kind, whose class comes as its default. */
const Reader = (
  reader as unknown as {
    default: new () => {
      parseSync(text: string): { entities: { type: string; text: string; textHeight: number }[] };
    };
  }
).default;

/** Height of a letter's own outline in the font file, in ems. */
function letterEm(letter: string, strong: boolean): number {
  const font = strong ? FONTS.strong : FONTS.regular;
  return (font.layout(letter).glyphs[0]?.bbox.maxY ?? 0) / font.unitsPerEm;
}

/** The lowest letter that stands for the height of a line: any capital of a signal word, else any letter without ascender. */
function leastHeightMm({ text, sizeMm, strong }: PlacedText, line: TagLine): number {
  const letters = [...text].filter((letter) => (line.capitals ? /\p{Lu}/u : /[acemnorsuvwxz]/).test(letter));
  if (letters.length === 0) return Number.POSITIVE_INFINITY;
  return Math.min(...letters.map((letter) => letterEm(letter, strong) * sizeMm));
}

const textsOf = ({ items }: Placed) => items.filter((item) => item.kind === "text");
const onTag = (placed: Placed) => textsOf(placed).filter(({ part }) => part === "tag");

/** The cut line: the largest closed path of its role. */
function cutBox({ items }: Placed) {
  const path = items.find((item) => item.kind === "path" && item.role === "cut" && item.part === "tag");
  if (path?.kind !== "path") throw new Error("no cut line");
  const xs = path.lines.flat().map(([x]) => x);
  const ys = path.lines.flat().map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

const CASES = [undefined, ...PLACES].flatMap((at) =>
  LIFT_KINDS.map((kind): [string, ChildSafetyTag] => [
    `${at ?? "no place"}, ${kind}`,
    childTag({
      ...(at === undefined ? {} : { place: at }),
      frontCords: LIFT_TRAITS[kind].cordsAtFront,
      rearCords: kind !== "motor",
    }),
  ]),
);

/** Which line of the tag a placed line of words is from: the first that begins with or contains it. */
function lineOf(tag: ChildSafetyTag, { text }: PlacedText): TagLine {
  const words = text.replaceAll("\u00a0", " ");
  const line = tag.lines.find((one) => one.text.includes(words));
  if (line === undefined) throw new Error(`no line of the tag: ${words}`);
  return line;
}

/** Two languages stand side by side, the first on the left. */
function languageOf({ languages }: ChildSafetyTag, side: Placed, { at }: PlacedText): string | undefined {
  const box = cutBox(side);
  const onLeft = at[0] < (box.left + box.right) / 2;
  return languages.length < 2 || onLeft ? languages[0] : languages[1];
}

describe.each(CASES)("the tag for %s", (_name, tag) => {
  const sides = drawTag({ tag }).map((drawing) => place(drawing, { scale: 1 }));

  test("has its letters at least as high as the data asks, measured on the outlines of the font file", () => {
    let measured = 0;
    for (const text of sides.flatMap(onTag)) {
      const line = lineOf(tag, text);
      const height = leastHeightMm(text, line);
      expect(height, text.text).toBeGreaterThanOrEqual(line.minHeightMm);
      // Not so much larger that the tag is no use.
      if (height !== Number.POSITIVE_INFINITY) expect(height).toBeLessThan(line.minHeightMm * 1.1);
      expect(text.strong).toBe(line.bold);
      measured += 1;
    }
    expect(measured).toBeGreaterThan(tag.lines.length);
  });

  test("says every line of the data once, in its order, and no other word inside the cut line", () => {
    for (const language of tag.languages) {
      const wanted = tag.lines
        .filter((line) => line.language === language)
        .map(({ text }) => text.replace(/\s*_+$/, ""))
        .join(" ");
      const said = sides
        .flatMap((side) => onTag(side).filter((text) => languageOf(tag, side, text) === language))
        .map(({ text }) => text)
        .join(" ")
        .replaceAll("\u00a0", " ");
      expect(said).toBe(wanted);
    }
    for (const side of sides) {
      const box = cutBox(side);
      for (const text of textsOf(side)) {
        const inside = realCorners(text).some(
          ([x, y]) => x > box.left && x < box.right && y > box.top && y < box.bottom,
        );
        expect(inside, text.text).toBe(text.part === "tag");
      }
    }
  });

  test("keeps its words clear of the cut line, of the hole and of each other", () => {
    for (const side of sides) {
      const box = cutBox(side);
      const hole = side.items.find((item) => item.kind === "circle");
      if (hole?.kind !== "circle") throw new Error("no hole");
      for (const text of onTag(side)) {
        for (const [x, y] of realCorners(text)) {
          expect(
            Math.min(x - box.left, box.right - x, y - box.top, box.bottom - y),
            text.text,
          ).toBeGreaterThan(2);
          expect(y).toBeGreaterThan(hole.centre[1] + hole.radiusMm);
        }
      }
      // 5 mm across: an eyelet or a tie goes through.
      expect(2 * hole.radiusMm).toBeCloseTo(5, 6);
      const lines = onTag(side).map((text) => realCorners(text));
      lines.forEach((one, i) => {
        for (const other of lines.slice(i + 1)) expect(apart(one, other)).toBe(true);
      });
    }
  });

  test("its sides have one outline and one place for the hole, and go on either paper at full size", () => {
    const outlines = sides.map((side) => {
      const { left, right, top, bottom } = cutBox(side);
      const hole = side.items.find((item) => item.kind === "circle");
      if (hole?.kind !== "circle") throw new Error("no hole");
      // Glued back to back, left and right change places: the hole must be in the middle.
      expect(hole.centre[0] - left).toBeCloseTo(right - hole.centre[0], 6);
      return [right - left, bottom - top, hole.centre[1] - top].map((mm) => Math.round(mm * 1000));
    });
    expect(new Set(outlines.map(String)).size).toBe(1);
    for (const side of sides) {
      // A4 (ISO 216) is 210 mm wide, US Letter 279.4 mm high: less margins of 3/4 in, and the foot and title of a page.
      expect(side.widthMm).toBeLessThan(210 - 2 * 19.05);
      expect(side.heightMm).toBeLessThan(279.4 - 2 * 19.05 - 45);
    }
  });

  test("marks official words beside the tag only, and has the note outside", () => {
    const marks = sides.flatMap((side) =>
      side.items
        .filter((item) => item.kind === "path" && item.part === "official")
        .map((item) => ({ side, item })),
    );
    expect(marks.length).toBe(tag.lines.filter(({ official }) => official).length);
    for (const { side, item } of marks) {
      if (item.kind !== "path") throw new Error("no path");
      const box = cutBox(side);
      const points = item.lines.flat();
      expect(points.every(([x]) => x < box.left || x > box.right)).toBe(true);
      const [low, high] = [Math.min(...points.map(([, y]) => y)), Math.max(...points.map(([, y]) => y))];
      const beside = onTag(side).filter(({ at }) => at[1] > low && at[1] < high && at[0] < box.left + 40);
      expect(beside.length).toBeGreaterThan(0);
      for (const text of beside) expect(lineOf(tag, text).official, text.text).toBe(true);
    }
    for (const side of sides) expect(side.caption).toContain(tag.note);
  });

  test("passes no verdict", () => {
    for (const side of sides) for (const { text } of textsOf(side)) expect(verdictIn(text)).toBeUndefined();
  });

  test("as SVG it is as large as it prints, as DXF its letters have their height", () => {
    for (const [i, drawing] of drawTag({ tag }).entries()) {
      const svg = toSvg(place(drawing, { scale: 1 }));
      const [, width, height] = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
      const [, boxWidth, boxHeight] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
      expect([width, height]).toEqual([boxWidth, boxHeight]);
      const { entities } = new Reader().parseSync(toDxf(drawing, { scale: 1 }));
      const texts = entities.filter(({ type }) => type === "TEXT");
      expect(texts.length).toBeGreaterThanOrEqual(onTag(sides[i] ?? (sides[0] as Placed)).length);
      for (const { text, textHeight } of texts) {
        const line = tag.lines.find((one) => one.text.replaceAll("’", "'").includes(text));
        if (line === undefined) continue;
        // In DXF the height is that of the capitals.
        expect(textHeight, text).toBeGreaterThanOrEqual(line.minHeightMm);
      }
    }
  });
});

function apart(a: (readonly [number, number])[], b: (readonly [number, number])[]): boolean {
  const box = (points: (readonly [number, number])[]) => ({
    left: Math.min(...points.map(([x]) => x)),
    right: Math.max(...points.map(([x]) => x)),
    top: Math.min(...points.map(([, y]) => y)),
    bottom: Math.max(...points.map(([, y]) => y)),
  });
  const [p, q] = [box(a), box(b)];
  return p.right <= q.left || q.right <= p.left || p.bottom <= q.top || q.bottom <= p.top;
}

test("Canada: two languages side by side, on a front and a back (SOR/2019-97 ss. 10 to 12)", () => {
  const sides = drawTag({ tag: childTag({ place: "ca", frontCords: true, rearCords: true }) });
  expect(sides.map(({ id }) => id)).toEqual(["tag-front", "tag-back"]);
  const [front] = sides.map((drawing) => onTag(place(drawing, { scale: 1 })));
  const signal = (word: string) => front?.find(({ text }) => text === word)?.at ?? [0, 0];
  expect(signal("WARNING")[1]).toBe(signal("MISE EN GARDE")[1]);
  expect(signal("MISE EN GARDE")[0]).toBeGreaterThan(signal("WARNING")[0] + 60);
});

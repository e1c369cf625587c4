import type { Glyph } from "fontkit";
import type { LetterOutlines, LetterShape, LineShape } from "../drawing/index.ts";
import { onOneLine } from "./printable.ts";
import { rememberedByText } from "./remember.ts";
import { type Face, openFaces, type WorkbookFonts } from "./typeface.ts";

const EM = 1000;
/** Figures of one width, as the drawings are laid out for. */
const FEATURES = ["tnum"];
/** Lines that are remembered before it starts anew: labels and figures come back in drawing after drawing. */
const MOST_LINES = 5_000;

/** Lines of text as outlines of the typeface. */
export function letterOutlines(fonts: WorkbookFonts): LetterOutlines {
  const { regular, semibold } = openFaces(fonts);
  const linesOf = (face: Face) =>
    rememberedByText(MOST_LINES, (text) => layLine(onOneLine(text, face), face));
  const [plain, bold] = [linesOf(regular), linesOf(semibold)];
  return (text, strong) => (strong ? bold(text) : plain(text));
}

function layLine(text: string, face: Face): LineShape {
  const scale = EM / face.font.unitsPerEm;
  const { glyphs, positions } = face.font.layout(text, FEATURES);
  const letters: LetterShape[] = [];
  let x = 0;
  glyphs.forEach((glyph, i) => {
    const { xOffset = 0, yOffset = 0, xAdvance = 0 } = positions[i] ?? {};
    letters.push({
      key: `${face.name}-${glyph.id}`,
      path: pathData(glyph, scale),
      x: (x + xOffset) * scale,
      y: -yOffset * scale,
    });
    x += xAdvance;
  });
  return { letters, width: x * scale };
}

const LETTERS = {
  moveTo: "M",
  lineTo: "L",
  quadraticCurveTo: "Q",
  bezierCurveTo: "C",
  closePath: "Z",
} as const;

const paths = new WeakMap<Glyph, string>();

/** A thousandth of the em is finer than any printer at the size of a label. */
function pathData(glyph: Glyph, scale: number): string {
  const known = paths.get(glyph);
  if (known !== undefined) return known;
  const data = glyph.path.commands
    .map(
      ({ command, args }) =>
        LETTERS[command] +
        args.map((value, i) => Math.round(i % 2 === 0 ? value * scale : -value * scale) || 0).join(" "),
    )
    .join("");
  paths.set(glyph, data);
  return data;
}

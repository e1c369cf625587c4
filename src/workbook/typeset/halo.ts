import type { Glyph } from "fontkit";
import type { Face } from "../../letters/index.ts";
import type { PdfDocument } from "./pdf-kit.ts";
import { num } from "./set-text.ts";

type Outline = PDFKit.PDFKitReference;

/**
 * Borders round the letters of one document. The outline of a letter stands in the document once, as a form
 * (ISO 32000-1:2008, 8.10), and is called wherever it comes back: spelt out each time, outlines were three fifths of all
 * that stood on a page.
 */
export class Halos {
  readonly #doc: PdfDocument;
  readonly #outlines = new Map<string, Outline>();

  constructor(doc: PdfDocument) {
    this.#doc = doc;
  }

  /** Operators that stroke the outlines of a line of text, `widthPt` to either side, with its baseline from (0, 0). */
  operators(face: Face, text: string, sizePt: number, widthPt: number): string {
    const { xobjects } = this.#doc.page as unknown as { xobjects: Record<string, Outline> };
    const scale = sizePt / face.font.unitsPerEm;
    const run = face.shaped(text);
    const parts = [`1 j ${num((2 * widthPt) / scale)} w`];
    let left = 0;
    let leftBefore = 0;
    run.glyphs.forEach((glyph, i) => {
      if (glyph.path.commands.length > 0) {
        const name = `${face.name}${glyph.id}`;
        xobjects[name] ??= this.#outline(name, face, glyph);
        parts.push(`1 0 0 1 ${num(left - leftBefore)} 0 cm /${name} Do`);
        leftBefore = left;
      }
      left += run.positions[i]?.xAdvance ?? 0;
    });
    return parts.join(" ");
  }

  #outline(name: string, face: Face, glyph: Glyph): Outline {
    const known = this.#outlines.get(name);
    if (known !== undefined) return known;
    const { minX, minY, maxX, maxY } = glyph.bbox;
    // As wide a border as an em is more than any that is drawn.
    const em = face.font.unitsPerEm;
    const made = this.#doc.ref({
      Type: "XObject",
      Subtype: "Form",
      BBox: [minX - em, minY - em, maxX + em, maxY + em],
    });
    made.end(outlineOf(face, glyph));
    this.#outlines.set(name, made);
    return made;
  }
}

/** By face and glyph, for all documents. */
const remembered = new WeakMap<Face["font"], Map<number, string>>();

function outlineOf(face: Face, glyph: Glyph): string {
  const known = remembered.get(face.font) ?? new Map<number, string>();
  remembered.set(face.font, known);
  const drawn = known.get(glyph.id) ?? `${operators(glyph)} S`;
  known.set(glyph.id, drawn);
  return drawn;
}

/** The outline in units of the font. */
function operators(glyph: Glyph): string {
  let x = 0;
  let y = 0;
  const parts: string[] = [];
  const to = (operator: string, args: readonly number[]) => {
    parts.push(`${args.map(num).join(" ")} ${operator}`);
    [x = 0, y = 0] = args.slice(-2);
  };
  for (const { command, args } of glyph.path.commands) {
    switch (command) {
      case "moveTo":
        to("m", args);
        break;
      case "lineTo":
        to("l", args);
        break;
      case "bezierCurveTo":
        to("c", args);
        break;
      case "quadraticCurveTo": {
        const [cx = 0, cy = 0, ex = 0, ey = 0] = args;
        // Degree elevation: the cubic with the same shape.
        const third = (from: number, control: number) => from + (2 / 3) * (control - from);
        to("c", [third(x, cx), third(y, cy), third(ex, cx), third(ey, cy), ex, ey]);
        break;
      }
      default:
        parts.push("h");
    }
  }
  return parts.join(" ");
}

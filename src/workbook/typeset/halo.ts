import type { Glyph } from "fontkit";
import type { Face } from "../../letters/index.ts";
import { num } from "./set-text.ts";

/** Outlines in units of the font, as operators, by face and glyph: the same few letters come back all the time. */
const outlines = new WeakMap<Face["font"], Map<number, string>>();

function outline(face: Face, glyph: Glyph): string {
  const known = outlines.get(face.font) ?? new Map<number, string>();
  outlines.set(face.font, known);
  const drawn = known.get(glyph.id) ?? operators(glyph);
  known.set(glyph.id, drawn);
  return drawn;
}

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

/** Operators that stroke the outlines of a line of text, `widthPt` to either side, with its baseline from (0, 0). */
export function haloOperators(face: Face, text: string, sizePt: number, widthPt: number): string {
  const scale = sizePt / face.font.unitsPerEm;
  const run = face.font.layout(text);
  const parts = [`1 j ${num((2 * widthPt) / scale)} w`];
  let left = 0;
  run.glyphs.forEach((glyph, i) => {
    parts.push(`q 1 0 0 1 ${num(left)} 0 cm ${outline(face, glyph)} S Q`);
    left += run.positions[i]?.xAdvance ?? 0;
  });
  return parts.join(" ");
}

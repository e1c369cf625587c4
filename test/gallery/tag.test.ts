import { drawTag, type Placed, place } from "../../src/drawing/index.ts";
import type { Place } from "../../src/job/index.ts";
import { childTag } from "../../src/safety/index.ts";
import { draws } from "./gallery.ts";

function side(at: Place, number: number): Placed {
  const drawing = drawTag({ tag: childTag({ place: at, frontCords: true, rearCords: true }) })[number];
  if (drawing === undefined) throw new Error(`invalid tag: no side ${number}`);
  return place(drawing, { scale: 1 });
}

draws("tag", () => side("gb", 0));
draws("tag-two-languages-front", () => side("ca", 0));
draws("tag-two-languages-back", () => side("ca", 1));

import { drawSheet, type Placed, place } from "../../src/drawing/index.ts";
import { battens, hobbled, tucked } from "./fold-style-windows.ts";
import { draws } from "./gallery.ts";
import { austrian, festoon, gatheredBalloon } from "./gathered-windows.ts";
import { type Case, outside, pleatedBalloon, relaxed, tailed } from "./windows.ts";

/** Small: a picture is thousands of faces. */
const PLATE = { maxWidthMm: 80, maxHeightMm: 110 };

function picture(make: () => Case, raise: number): Placed {
  const { plan, shade } = make();
  return place(drawSheet("picture", plan, shade, { raise }), PLATE);
}

draws("picture-flat", () => picture(outside, 0));
draws("picture-flat-half", () => picture(outside, 0.5));
draws("picture-flat-raised", () => picture(outside, 1));

draws("picture-ribbed", () => picture(battens, 0));
draws("picture-ribbed-half", () => picture(battens, 0.5));
draws("picture-ribbed-raised", () => picture(battens, 1));

draws("picture-hobbled", () => picture(hobbled, 0));
draws("picture-hobbled-half", () => picture(hobbled, 0.5));
draws("picture-hobbled-raised", () => picture(hobbled, 1));

draws("picture-tucked", () => picture(tucked, 0));
draws("picture-tucked-half", () => picture(tucked, 0.5));
draws("picture-tucked-raised", () => picture(tucked, 1));

draws("picture-relaxed", () => picture(relaxed, 0));
draws("picture-relaxed-half", () => picture(relaxed, 0.5));
draws("picture-relaxed-raised", () => picture(relaxed, 1));

draws("picture-tailed", () => picture(tailed, 0));
draws("picture-tailed-half", () => picture(tailed, 0.5));
draws("picture-tailed-raised", () => picture(tailed, 1));

draws("picture-pleated-balloon", () => picture(pleatedBalloon, 0));
draws("picture-pleated-balloon-half", () => picture(pleatedBalloon, 0.5));
draws("picture-pleated-balloon-raised", () => picture(pleatedBalloon, 1));

draws("picture-gathered-balloon", () => picture(gatheredBalloon, 0));
draws("picture-gathered-balloon-half", () => picture(gatheredBalloon, 0.5));
draws("picture-gathered-balloon-raised", () => picture(gatheredBalloon, 1));

draws("picture-austrian", () => picture(austrian, 0));
draws("picture-austrian-half", () => picture(austrian, 0.5));
draws("picture-austrian-raised", () => picture(austrian, 1));

draws("picture-festoon", () => picture(festoon, 0));
draws("picture-festoon-half", () => picture(festoon, 0.5));
draws("picture-festoon-raised", () => picture(festoon, 1));

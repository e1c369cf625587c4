import { drawSheet, place } from "../../src/drawing/index.ts";
import type { SheetKind } from "../../src/shade-plan/index.ts";
import { draws } from "./gallery.ts";
import { austrian, festoon, gatheredBalloon, looseBalloon } from "./gathered-windows.ts";
import { PAGE, PHONE } from "./papers.ts";
import type { Case } from "./windows.ts";

function sheet({ plan, shade }: Case, kind: SheetKind, raise = 0) {
  return place(drawSheet(kind, plan, shade, { raise }), PAGE);
}

draws("austrian-front", () => sheet(austrian(), "front"));
draws("austrian-front-half", () => sheet(austrian(), "front", 0.5));
draws("austrian-front-raised", () => sheet(austrian(), "front", 1));
draws("austrian-back", () => sheet(austrian(), "back"));
draws("austrian-back-half", () => sheet(austrian(), "back", 0.5));
draws("austrian-side", () => sheet(austrian(), "side"));
draws("austrian-side-half", () => sheet(austrian(), "side", 0.5));
draws("austrian-side-raised", () => sheet(austrian(), "side", 1));
draws("austrian-marking", () => sheet(austrian(), "marking"));
draws("austrian-front-phone", () => {
  const { plan, shade } = austrian();
  return place(drawSheet("front", plan, shade), PHONE.fit, PHONE.options);
});

draws("gathered-balloon-front", () => sheet(gatheredBalloon(), "front"));
draws("gathered-balloon-front-half", () => sheet(gatheredBalloon(), "front", 0.5));
draws("gathered-balloon-front-raised", () => sheet(gatheredBalloon(), "front", 1));
draws("gathered-balloon-back", () => sheet(gatheredBalloon(), "back"));
draws("gathered-balloon-side", () => sheet(gatheredBalloon(), "side"));
draws("gathered-balloon-side-half", () => sheet(gatheredBalloon(), "side", 0.5));
draws("gathered-balloon-side-raised", () => sheet(gatheredBalloon(), "side", 1));
draws("gathered-balloon-marking", () => sheet(gatheredBalloon(), "marking"));

draws("loose-balloon-front", () => sheet(looseBalloon(), "front"));
draws("loose-balloon-front-half", () => sheet(looseBalloon(), "front", 0.5));
draws("loose-balloon-side-half", () => sheet(looseBalloon(), "side", 0.5));

draws("festoon-front", () => sheet(festoon(), "front"));
draws("festoon-front-half", () => sheet(festoon(), "front", 0.5));
draws("festoon-front-raised", () => sheet(festoon(), "front", 1));
draws("festoon-back", () => sheet(festoon(), "back"));
draws("festoon-back-half", () => sheet(festoon(), "back", 0.5));
draws("festoon-side", () => sheet(festoon(), "side"));
draws("festoon-side-raised", () => sheet(festoon(), "side", 1));
draws("festoon-marking", () => sheet(festoon(), "marking"));

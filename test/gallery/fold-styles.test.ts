import { drawMarkingStrips, drawSheet, place } from "../../src/drawing/index.ts";
import type { SheetKind } from "../../src/shade-plan/index.ts";
import { battens, cascade, halfFoldRibs, hobbled, hobbledSmall, tucked } from "./fold-style-windows.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";
import type { Case } from "./windows.ts";

function sheet({ plan, shade }: Case, kind: SheetKind, raise = 0) {
  return place(drawSheet(kind, plan, shade, { raise }), PAGE);
}

draws("battens-front", () => sheet(battens(), "front"));
draws("battens-front-half", () => sheet(battens(), "front", 0.5));
draws("battens-front-raised", () => sheet(battens(), "front", 1));
draws("battens-back", () => sheet(battens(), "back"));
draws("battens-back-half", () => sheet(battens(), "back", 0.5));
draws("battens-side", () => sheet(battens(), "side"));
draws("battens-side-half", () => sheet(battens(), "side", 0.5));
draws("battens-side-raised", () => sheet(battens(), "side", 1));
draws("battens-marking", () => sheet(battens(), "marking"));

draws("half-fold-ribs-front", () => sheet(halfFoldRibs(), "front"));
draws("half-fold-ribs-front-half", () => sheet(halfFoldRibs(), "front", 0.5));
draws("half-fold-ribs-front-raised", () => sheet(halfFoldRibs(), "front", 1));
draws("half-fold-ribs-back", () => sheet(halfFoldRibs(), "back"));
draws("half-fold-ribs-back-half", () => sheet(halfFoldRibs(), "back", 0.5));
draws("half-fold-ribs-side", () => sheet(halfFoldRibs(), "side"));
draws("half-fold-ribs-side-half", () => sheet(halfFoldRibs(), "side", 0.5));
draws("half-fold-ribs-side-raised", () => sheet(halfFoldRibs(), "side", 1));
draws("half-fold-ribs-marking", () => sheet(halfFoldRibs(), "marking"));

draws("hobbled-front", () => sheet(hobbled(), "front"));
draws("hobbled-front-half", () => sheet(hobbled(), "front", 0.5));
draws("hobbled-front-raised", () => sheet(hobbled(), "front", 1));
draws("hobbled-back", () => sheet(hobbled(), "back"));
draws("hobbled-back-half", () => sheet(hobbled(), "back", 0.5));
draws("hobbled-side", () => sheet(hobbled(), "side"));
draws("hobbled-side-half", () => sheet(hobbled(), "side", 0.5));
draws("hobbled-side-raised", () => sheet(hobbled(), "side", 1));
draws("hobbled-marking", () => sheet(hobbled(), "marking"));

draws("tucked-front", () => sheet(tucked(), "front"));
draws("tucked-front-half", () => sheet(tucked(), "front", 0.5));
draws("tucked-front-raised", () => sheet(tucked(), "front", 1));
draws("tucked-back", () => sheet(tucked(), "back"));
draws("tucked-back-half", () => sheet(tucked(), "back", 0.5));
draws("tucked-side", () => sheet(tucked(), "side"));
draws("tucked-side-half", () => sheet(tucked(), "side", 0.5));
draws("tucked-side-raised", () => sheet(tucked(), "side", 1));
draws("tucked-marking", () => sheet(tucked(), "marking"));

draws("hobbled-small-front", () => sheet(hobbledSmall(), "front"));
draws("hobbled-small-side", () => sheet(hobbledSmall(), "side"));

draws("cascade-front", () => sheet(cascade(), "front"));
draws("cascade-front-raised", () => sheet(cascade(), "front", 1));
draws("cascade-side-raised", () => sheet(cascade(), "side", 1));

draws("tucked-strips", () => sheet(tucked(), "strips"));

draws("hobbled-strip-cloth-full-size", () => {
  const { plan, shade } = hobbled();
  const strip = drawMarkingStrips(plan, shade).find(({ id }) => id === "strip-cloth-up");
  if (strip === undefined) throw new Error("invalid strips: none for the cloth");
  return place(strip, { scale: 1 });
});

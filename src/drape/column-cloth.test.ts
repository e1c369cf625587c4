import { expect, test } from "vitest";
import { hobbled } from "../../test/gallery/fold-style-windows.ts";
import { austrian, gatheredBalloon } from "../../test/gallery/gathered-windows.ts";
import { outside, pleatedBalloon, tailed } from "../../test/gallery/windows.ts";
import { expectNear } from "../../test/near.ts";
import { STYLE_SHAPES } from "../styles/shapes/index.ts";
import { columnCloth } from "./column-cloth.ts";

// Three ways to one length: stretch by stretch at the column, what the stage of styles gives each stretch, and the cut.
test.each(Object.entries({ outside, hobbled, tailed, pleatedBalloon, gatheredBalloon }))(
  "%s: the cloth at a column is that of all stretches, at every height, and not longer than its piece",
  (_name, make) => {
    const { size, grid, form, folds, style, cloth } = make().shade;
    const clothMm = form.stretches.reduce((sum, stretch) => sum + stretch.clothMm, 0);
    for (const raise of [0, 0.5, 1]) {
      const hang = folds === undefined ? {} : { hang: folds.cloth };
      const { section } = STYLE_SHAPES[style]({ size, grid, form, ...hang }, raise);
      const columnMm = columnCloth(form, grid, section).reduce((sum, { arcMm }) => sum + arcMm, 0);
      expectNear(columnMm, clothMm, 1e-6 * clothMm);
      expect(cloth.layers[0]?.cutLengthMm).toBeGreaterThan(columnMm);
    }
  },
);

test("cloth on tapes: all that was cut below the top line hangs between them, tape and cloth as the plan has them", () => {
  const { size, grid, form, style } = austrian().shade;
  for (const raise of [0, 0.3, 1]) {
    const { section } = STYLE_SHAPES[style]({ size, grid, form }, raise);
    const stretches = columnCloth(form, grid, section);
    const clothMm = form.stretches.reduce((sum, stretch) => sum + stretch.clothMm, 0);
    expectNear(
      stretches.reduce((sum, { arcMm }) => sum + arcMm, 0),
      clothMm,
      1e-6 * clothMm,
    );
    expectNear(
      stretches.reduce((sum, { tapeMm = 0 }) => sum + tapeMm, 0),
      grid.rows[0]?.yMm ?? 0,
      1e-6 * clothMm,
    );
    expect(stretches.filter(({ isFree = false, tapeMm }) => tapeMm !== undefined && !isFree)).toHaveLength(
      grid.rows.length,
    );
  }
});

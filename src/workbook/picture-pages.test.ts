import { expect, test } from "vitest";
import { pleatedBalloon } from "../../test/gallery/windows.ts";
import { FONTS } from "../../test/workbook/fonts.ts";
import { makeWorkbook } from "./make-workbook.ts";

test("the client’s page shows the shade as it hangs, in less than 300 kB with its pictures", async () => {
  const { plan } = pleatedBalloon();
  const page = (colour: string) =>
    makeWorkbook({
      plan: {
        ...plan,
        shades: plan.shades.map((shade) => ({
          ...shade,
          cloth: { ...shade.cloth, layers: shade.cloth.layers.map((layer) => ({ ...layer, colour })) },
        })),
      },
      sets: ["client"],
      paper: "letter",
      fonts: FONTS,
    });
  const blue = await page("#3a5f8a");
  expect(blue.length).toBeLessThan(300_000 + FONT_BYTES);
  expect(blue.length).toBeGreaterThan(30_000);
});

/** The two faces that are set into every workbook. */
const FONT_BYTES = 60_000;

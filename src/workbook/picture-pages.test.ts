import { OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { expect, test } from "vitest";
import { planOne, windowOf } from "../../test/gallery/windows.ts";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf } from "../../test/workbook/read-pdf.ts";
import { makeWorkbook } from "./make-workbook.ts";

test("the client’s page shows the shade as it hangs, in its own colour, in less than 300 kB", async () => {
  const { plan } = planOne(
    "metric",
    windowOf(1000, 1300, { style: "pleated-balloon", mount: "outside", face: "blue", lining: null }),
    {
      cloths: [
        {
          id: "blue",
          name: "Blue",
          usableWidthMm: 1400,
          massGsm: 200,
          kind: "cotton",
          colour: "#3A5F8A",
          demo: true,
        },
      ],
    },
  );
  const bytes = await makeWorkbook({ plan, sets: ["client"], paper: "letter", fonts: FONTS });
  expect(bytes.length).toBeLessThan(300_000);
  const { fnArray, argsArray } = await (await (await openPdf(bytes)).getPage(2)).getOperatorList();
  const fills = fnArray.flatMap((op, i) => (op === OPS.setFillRGBColor ? [String(argsArray[i])] : []));
  const blue = fills.filter((hex) => {
    const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as [
      number,
      number,
      number,
    ];
    return b > 1.3 * g && g > 1.3 * r;
  });
  expect(blue.length).toBeGreaterThan(800);
  expect(new Set(blue).size).toBeGreaterThan(12);
});

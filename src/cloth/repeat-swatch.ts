import { type ClothPhoto, SWATCH_SIDE } from "../job/index.ts";

/** The colours of the marked repeat alone, as many across and down as those of the whole picture. */
export function repeatSwatch(photo: ClothPhoto | undefined): { swatch?: string } {
  if (photo?.swatch === undefined) return {};
  const { swatch, leftShare, topShare, widthShare, heightShare } = photo;
  const at = (from: number, length: number, k: number) => {
    const share = from + (length * (k + 0.5)) / SWATCH_SIDE;
    return Math.min(SWATCH_SIDE - 1, Math.max(0, Math.floor(share * SWATCH_SIDE)));
  };
  let colours = "";
  for (let row = 0; row < SWATCH_SIDE; row++) {
    for (let column = 0; column < SWATCH_SIDE; column++) {
      const place = at(topShare, heightShare, row) * SWATCH_SIDE + at(leftShare, widthShare, column);
      colours += swatch.slice(6 * place, 6 * place + 6);
    }
  }
  return { swatch: colours };
}

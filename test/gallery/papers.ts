/** The type area of a page of the workbook, mm. */
export const PAGE = { maxWidthMm: 150, maxHeightMm: 190 };

/** A phone of 340 CSS px, 96 to the inch, with letters a quarter larger. */
export const PHONE = { fit: { maxWidthMm: 90, maxHeightMm: 150 }, options: { textScale: 1.25 } };

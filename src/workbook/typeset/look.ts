import { painted, type TextStyle, TYPE } from "./type-scale.ts";

/** How the usual things of a page are set: one look for reading at a desk, one for arm’s length. */
export interface PageLook {
  chapter: TextStyle;
  lead: TextStyle;
  section: TextStyle;
  body: TextStyle;
  cell: TextStyle;
  cellStrong: TextStyle;
  label: TextStyle;
  small: TextStyle;
  caption: TextStyle;
  step: TextStyle;
  /** Space over and under the words of a cell, pt. */
  cellPadPt: number;
  /** Size of the words in drawings, against their usual one. */
  drawingText: number;
  /**
   * Drawings have their measures, and all of their caption. Without, names and numbers alone stand in them, and their
   * figures in large letters beside.
   */
  measured: boolean;
}

/** For reading at a desk. */
export const DESK: PageLook = {
  chapter: TYPE.chapter,
  lead: TYPE.lead,
  section: TYPE.section,
  body: TYPE.body,
  cell: TYPE.cell,
  cellStrong: TYPE.cellStrong,
  label: TYPE.label,
  small: TYPE.small,
  caption: TYPE.caption,
  step: TYPE.step,
  cellPadPt: 4,
  drawingText: 1,
  measured: true,
};

/** As at a desk, in long lists: a list that is carried about stays on one page. */
export const LIST: PageLook = { ...DESK, cellPadPt: 1.25 };

/** To hand to a class or hold before a camera: as at a desk, in larger words. */
export const CLASS: PageLook = {
  ...DESK,
  lead: painted(TYPE.tableBody, "pencil"),
  body: TYPE.tableBody,
  cell: TYPE.tableCell,
  cellStrong: TYPE.tableStrong,
  label: TYPE.tableLabel,
  cellPadPt: 0,
  drawingText: 1,
};

/** For the table: words of 12 pt and more, figures of 15 pt. Words of a drawing are 2.9 mm high, that is 8.2 pt, and grow with it. */
export const ARMS_LENGTH: PageLook = {
  chapter: TYPE.chapter,
  lead: painted(TYPE.tableBody, "pencil"),
  section: TYPE.tableSection,
  body: TYPE.tableBody,
  cell: TYPE.tableCell,
  cellStrong: TYPE.tableFigure,
  label: TYPE.tableLabel,
  small: TYPE.tableBody,
  caption: painted(TYPE.tableBody, "pencil"),
  step: TYPE.tableStrong,
  cellPadPt: 2.5,
  drawingText: 1.47,
  measured: false,
};

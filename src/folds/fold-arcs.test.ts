import { expect, test } from "vitest";
import type { Form, Grid } from "../shade-plan/index.ts";
import { foldArcs } from "./fold-arcs.ts";

const grid = (travelMm: number, ...yMm: number[]) =>
  ({ travelMm, rows: yMm.map((y, i) => ({ number: i + 1, yMm: y })) }) as unknown as Grid;
const form = (...stretches: object[]) => ({ stretches }) as unknown as Form;

// Rows stand 100, 300 and 550 mm above the hem, counted down from the head: 900, 700 and 450. Between the outer ones lie
// 450 mm; a travel of 600 leaves 150 mm above the top row to be drawn up.
test("each fold takes the cloth up to the next row, the last one what is left of the travel", () => {
  expect(foldArcs(grid(600, 900, 700, 450), form())).toEqual([200, 250, 150]);
});

test("rows are taken from the lowest up, however they are listed", () => {
  const { rows, ...rest } = grid(600, 900, 700, 450);
  expect(foldArcs({ ...rest, rows: rows.toReversed() } as Grid, form())).toEqual([200, 250, 150]);
});

test("slack of a stretch is added at its own row, without what is sewn away; cloth never gets shorter", () => {
  const lower = { row: 1, clothMm: 260, cordMm: 200 };
  expect(foldArcs(grid(600, 900, 700, 450), form(lower))).toEqual([260, 250, 150]);
  const sewn = { row: 2, clothMm: 330, sewnMm: 30, cordMm: 250 };
  expect(foldArcs(grid(600, 900, 700, 450), form(lower, sewn))).toEqual([260, 300, 150]);
  const tight = { row: 1, clothMm: 190, cordMm: 200 };
  expect(foldArcs(grid(600, 900, 700, 450), form(tight))).toEqual([200, 250, 150]);
});

test("where the travel ends at the top row nothing is folded above it; less than 5 mm folds nowhere", () => {
  expect(foldArcs(grid(450, 900, 700, 450), form())).toEqual([200, 250]);
  expect(foldArcs(grid(400, 900, 700, 450), form())).toEqual([200, 250]);
  expect(foldArcs(grid(455, 900, 700, 450), form())).toEqual([200, 250]);
  expect(foldArcs(grid(456, 900, 700, 450), form())).toEqual([200, 250, 6]);
  expect(foldArcs(grid(600), form())).toEqual([]);
  expect(foldArcs(grid(120, 900), form())).toEqual([120]);
});

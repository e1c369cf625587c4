import { describe, expect, test } from "vitest";
import { toDxf } from "../../src/drawing/dxf/index.ts";
import { type Drawing, drawSheet } from "../../src/drawing/index.ts";
import { LINE_SHEETS } from "../../src/shade-plan/index.ts";
import { readDxf } from "../dxf-reader.ts";
import { CASES } from "../gallery/windows.ts";

const readBack = (drawing: Drawing) => readDxf(toDxf(drawing));

const { plan, shade } = CASES.outside();

describe.each(LINE_SHEETS)("%s", (kind) => {
  test("is read back by an independent reader, with a layer for each entity", () => {
    const { entities, tables, header } = readBack(drawSheet(kind, plan, shade));
    // Group 70 of $INSUNITS: 4 is millimetres (DXF reference, header section).
    expect(header.$INSUNITS).toBe(4);
    expect(entities.length).toBeGreaterThan(15);
    for (const { layer } of entities) expect(Object.keys(tables.layer.layers)).toContain(layer);
    for (const { vertices = [] } of entities)
      for (const { x, y } of vertices) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
  });
});

test("at full size: the finished edge spans width and length in millimetres, y upwards", () => {
  const { entities } = readBack(drawSheet("front", plan, shade));
  const edge = entities.flatMap(({ layer, vertices }) => (layer === "FINISHED-EDGE" ? (vertices ?? []) : []));
  const xs = edge.map(({ x }) => x);
  const ys = edge.map(({ y }) => y);
  expect(Math.min(...xs)).toBeCloseTo(0, 6);
  expect(Math.max(...xs)).toBeCloseTo(shade.size.finishedWidthMm, 6);
  expect(Math.max(...ys)).toBeCloseTo(0, 6);
  expect(Math.min(...ys)).toBeCloseTo(-shade.size.finishedLengthMm, 6);
});

test("the board is as deep as it is long in one scale: millimetres both ways", () => {
  const board = (trueScale: boolean) => {
    const { entities } = readBack(drawSheet("board", plan, shade, { trueScale }));
    const corners = entities.flatMap(({ layer, vertices }) => (layer === "BOARD" ? (vertices ?? []) : []));
    const span = (values: number[]) => Math.max(...values) - Math.min(...values);
    return { length: span(corners.map(({ x }) => x)), depth: span(corners.map(({ y }) => y)) };
  };
  expect(board(true).length).toBeCloseTo(shade.board.lengthMm, 6);
  expect(board(true).depth).toBeCloseTo(shade.board.depthMm, 6);
  // On a page it is drawn deeper, and its caption says so.
  expect(board(false).depth).toBeGreaterThan(2 * shade.board.depthMm);
});

test("every ring point is a circle at its place", () => {
  const { entities } = readBack(drawSheet("marking", plan, shade));
  const rings = entities.filter(({ layer, type }) => layer === "RING" && type === "CIRCLE");
  expect(rings.length).toBe(shade.grid.rows.length * shade.grid.columns.length);
  for (const row of shade.grid.rows)
    for (const column of shade.grid.columns) {
      const x = shade.size.finishedWidthMm - column.xMm;
      expect(
        rings.some(({ center }) => Math.hypot((center?.x ?? 0) - x, (center?.y ?? 0) + row.yMm) < 1e-6),
      ).toBe(true);
    }
});

test("each cord has a layer of its own and is drawn once", () => {
  const { entities } = readBack(drawSheet("back", plan, shade));
  for (const cord of shade.lift.cords) {
    const lines = entities.filter(
      ({ layer, type }) => layer === `CORD-${cord.number}` && type === "LWPOLYLINE",
    );
    expect(lines.length).toBe(1);
  }
});

test("closed areas are closed, and fractions are plain letters", () => {
  const { entities } = readBack(drawSheet("cutting", plan, shade));
  expect(entities.some(({ layer, shape }) => layer === "CUT" && shape === true)).toBe(true);
  const words = entities.flatMap(({ text }) => text ?? []);
  expect(words.length).toBeGreaterThan(5);
  for (const text of words) expect(text).toMatch(/^[\x20-\x7e]*$/);
  expect(words.some((text) => /\d \d\/\d in/.test(text))).toBe(true);
});

test("words cannot end a line of the file", () => {
  const drawing: Drawing = {
    id: "hostile",
    title: "Hostile",
    caption: "",
    primitives: [{ kind: "text", role: "label", at: [0, 0], text: "a\n0\nLINE\r\n0\nEOF", paperMm: 3 }],
    facts: [],
  };
  const { entities } = readBack(drawing);
  expect(entities.map(({ type }) => type)).toEqual(["TEXT"]);
});

test("the same drawing gives the same file", () => {
  const drawing = drawSheet("lock", plan, shade);
  expect(toDxf(drawing)).toBe(toDxf(drawing));
});

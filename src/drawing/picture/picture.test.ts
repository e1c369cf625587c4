import { describe, expect, test } from "vitest";
import { hobbled } from "../../../test/gallery/fold-style-windows.ts";
import { pleatedBalloon, relaxed } from "../../../test/gallery/windows.ts";
import { expectNear } from "../../../test/near.ts";
import { drapeShade } from "../../drape/index.ts";
import type { Facets } from "../model.ts";
import { place } from "../placing/place.ts";
import { drawSheet } from "../sheets/index.ts";
import { toSvg } from "../svg/svg.ts";
import { type Camera, seenBy } from "./camera.ts";
import { addTriangle, emptyDepthMap, nearestAt } from "./depth-map.ts";
import { litHex } from "./lit-colour.ts";
import { refined } from "./refine.ts";
import { thinned } from "./thinned.ts";

const PAGE = { maxWidthMm: 150, maxHeightMm: 190 };

function facetsOf({ primitives }: { primitives: readonly { kind: string }[] }): Facets["faces"] {
  return primitives.flatMap((one) => (one.kind === "facets" ? [...(one as Facets).faces] : []));
}

describe("colours under light", () => {
  test("half the light is what sRGB writes for it: #ffffff becomes #bcbcbc (IEC 61966-2-1: 0.5 is 188 of 255)", () => {
    expect(litHex("#ffffff", 0.5)).toBe("#bcbcbc");
    expect(litHex("#d9c7a3", 1)).toBe("#d9c7a3");
    expect(litHex("#d9c7a3", 0)).toBe("#000000");
    expect(litHex("#d9c7a3", 9)).toBe("#ffffff");
  });
});

describe("a camera", () => {
  const straight: Camera = { aim: [100, 200, 0], distanceMm: 1000, aroundRad: 0, aboveRad: 0 };

  test("what it aims at keeps its size; what is half as far is seen twice as large", () => {
    const see = seenBy(straight);
    expect(see([130, 240, 0]).at).toEqual([130, 240]);
    const near = see([130, 240, 500]);
    expect(near.at).toEqual([160, 280]);
    expect(near.nearMm).toBe(500);
  });

  test("from the right, what stands out moves to the left", () => {
    const see = seenBy({ ...straight, aroundRad: 0.3 });
    expect(see([100, 200, 50]).at[0]).toBeLessThan(100);
    const above = seenBy({ ...straight, aboveRad: 0.3 });
    expect(above([100, 200, 50]).at[1]).toBeGreaterThan(200);
  });
});

test("a depth map tells the nearer of two faces", () => {
  const square = (nearMm: number, size: number) => [
    0,
    0,
    nearMm,
    size,
    0,
    nearMm,
    size,
    size,
    nearMm,
    0,
    size,
    nearMm,
  ];
  const points = Float64Array.from([...square(0, 40), ...square(7, 20)]);
  const map = emptyDepthMap(points, 4);
  for (const a of [0, 4]) {
    addTriangle(map, points, a, a + 1, a + 2);
    addTriangle(map, points, a, a + 2, a + 3);
  }
  expect(nearestAt(map, 10, 10)).toBe(7);
  expect(nearestAt(map, 32, 32)).toBe(0);
  expect(nearestAt(map, 90, 10)).toBe(Number.NEGATIVE_INFINITY);
});

test("dividing cloth keeps its nodes, and adds none where it hangs flat", () => {
  const cloth = drapeShade(relaxed().shade, 0.5).cloth;
  const fine = refined(cloth, 9000);
  expect(fine.across * fine.along).toBeGreaterThan(1.5 * cloth.across * cloth.along);
  const places = (one: typeof cloth) =>
    new Set(
      Array.from({ length: one.across * one.along }, (_, n) => one.placesMm.slice(3 * n, 3 * n + 3).join()),
    );
  const all = places(fine);
  for (const place of places(cloth)) expect(all.has(place)).toBe(true);
  const flat = drapeShade(hobbled().shade, 0).cloth;
  expect(
    refined({ ...flat, placesMm: flat.placesMm.map((v, k) => (k % 3 === 2 ? 0 : v)) }, 9000).across,
  ).toBe(flat.across);
});

test("cloth of more lines than a page shows keeps as many as it does, evenly and with both edges", () => {
  const { cloth } = drapeShade(relaxed().shade, 0.5);
  expect(thinned(cloth, cloth.across * cloth.along)).toBe(cloth);
  const most = Math.floor((cloth.across * cloth.along) / 6);
  const thin = thinned(cloth, most);
  expect(thin.across * thin.along).toBeLessThanOrEqual(most);
  expect(thin.across * thin.along).toBeGreaterThan(most / 2);
  expect(thin.strands).toHaveLength(thin.along);
  const corners = ({ across, along, placesMm }: typeof cloth) =>
    [0, across - 1, across * (along - 1), across * along - 1].map((n) => [
      ...placesMm.slice(3 * n, 3 * n + 3),
    ]);
  expect(corners(thin)).toEqual(corners(cloth));
  const lines = Array.from({ length: thin.across }, (_, i) => thin.flatMm[2 * i] as number);
  const gaps = lines.slice(1).map((xMm, i) => xMm - (lines[i] as number));
  expect(Math.min(...gaps)).toBeGreaterThan(0);
});

describe("the picture", () => {
  const { plan, shade } = pleatedBalloon();
  const drawing = drawSheet("picture", plan, shade, { raise: 0.5 });

  test("has as many faces as a page bears, every one wound one way and lit", () => {
    const faces = facetsOf(drawing);
    expect(faces.length).toBeGreaterThan(1500);
    expect(faces.length).toBeLessThan(7000);
    for (const { points, light } of faces) {
      expect(points.flat().every(Number.isFinite)).toBe(true);
      expect(light).toBeGreaterThanOrEqual(0);
      expect(light).toBeLessThan(1.6);
    }
  });

  test("cloth has its own colour on either paper", () => {
    const placed = place(drawing, PAGE);
    const colours = (svg: string) => [...svg.matchAll(/ color="(#[0-9a-f]{6})"/g)].map(([, hex]) => hex);
    expect(colours(toSvg(placed, "dark"))).toEqual(colours(toSvg(placed, "light")));
    expect(colours(toSvg(placed)).length).toBeGreaterThan(500);
  });

  test("flat cloth that faces the room is as bright as its own colour, within a tenth", () => {
    const { plan: lowered, shade: flat } = relaxed();
    const face = flat.cloth.layers.find(({ layer }) => layer === "face");
    const lights = facetsOf(drawSheet("picture", lowered, flat)).filter(
      ({ colour }) => colour === face?.colour,
    );
    const middle = lights.map(({ light }) => light).sort((a, b) => a - b)[Math.floor(lights.length / 2)];
    expectNear(middle ?? 0, 1, 0.1);
  });

  test("all its walls stand still while the shade is raised", () => {
    const wall = (raise: number) => facetsOf(drawSheet("picture", plan, shade, { raise })).slice(0, 5);
    expect(wall(1)).toEqual(wall(0));
  });
});

import { describe, expect, test } from "vitest";
import { hobbled } from "../../../test/gallery/fold-style-windows.ts";
import { pleatedBalloon, relaxed } from "../../../test/gallery/windows.ts";
import { expectNear } from "../../../test/near.ts";
import { drapeShade } from "../../drape/index.ts";
import type { Facets } from "../model.ts";
import { place } from "../placing/place.ts";
import { drawSheet } from "../sheets/index.ts";
import { pictureScene, smallPicture } from "../sheets/picture.ts";
import { drawRoom } from "../sheets/room.ts";
import { toSvg } from "../svg/svg.ts";
import { type Camera, seenBy } from "./camera.ts";
import { addTriangle, emptyDepthMap, nearestAt } from "./depth-map.ts";
import { litHex } from "./lit-colour.ts";
import { refined } from "./refine.ts";
import type { SeenFace } from "./seen-face.ts";
import { shadedParts } from "./shaded-parts.ts";
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
    expect(colours(toSvg(placed, { theme: "dark" }))).toEqual(colours(toSvg(placed, { theme: "light" })));
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

describe("a small picture", () => {
  const { plan, shade } = relaxed();
  const faces = smallPicture(pictureScene({ shade, units: plan.units, raise: 0.5 }));
  const ends = (k: 0 | 1) => {
    const all = faces.flatMap(({ points }) => points.map((point) => point[k]));
    return [Math.min(...all), Math.max(...all)] as const;
  };

  test("lies on the elevation where the shade hangs, in few faces", () => {
    const { placesMm } = drapeShade(shade, 0.5).cloth;
    const of = (k: number) => placesMm.filter((_, at) => at % 3 === k);
    // Seen straight on from afar nothing moves: what the cloth itself reaches, to the edge of a face.
    expectNear(ends(0)[0], Math.min(...of(0)), 5);
    expectNear(ends(0)[1], Math.max(...of(0)), 5);
    expectNear(ends(1)[1], Math.max(...of(1)), 5);
    expect(faces.length).toBeLessThan(1500);
  });

  test("stands in its room in the place of the lines of its cloth; those of its opening stay", () => {
    const view = { roomId: "room", roomName: "Room", shades: [shade] };
    const drawn = drawRoom(plan, view, { raise: 0.5, pictures: new Map([[shade.shadeId, faces]]) });
    const inLines = drawRoom(plan, view, { raise: 0.5 });
    const roles = ({ primitives }: typeof drawn) => primitives.map(({ role }) => role);
    expect(roles(inLines)).toContain("faceCloth");
    expect(roles(drawn)).not.toContain("faceCloth");
    expect(facetsOf(drawn)).toHaveLength(faces.length);
    expect(roles(drawn).filter((role) => role === "opening")).toEqual(
      roles(inLines).filter((role) => role === "opening"),
    );
  });
});

describe("light from face to face", () => {
  const square = (x: number, nodes: [number, number, number, number], light: number): SeenFace => ({
    nodes,
    corners: [
      [x, 0],
      [x + 60, 0],
      [x + 60, 60],
      [x, 60],
    ],
    isFace: true,
    light,
  });

  test("one light all over is one part; two run into each other in steps", () => {
    expect(shadedParts([square(0, [0, 1, 4, 3], 0.7)]).map(({ light }) => light)).toEqual([0.7]);
    const parts = shadedParts([square(0, [0, 1, 4, 3], 0.4), square(60, [1, 2, 5, 4], 0.8)]);
    const lights = parts.map(({ light }) => light);
    expect(lights.length).toBeGreaterThan(4);
    expect(lights).toEqual([...lights].sort((a, b) => a - b));
    // At the edge that they share both are at the mean: 0.6 ± half a part.
    const middle = lights.length / 2;
    expect((lights[middle - 1] as number) + (lights[middle] as number)).toBeCloseTo(1.2, 9);
  });

  test("what is seen from the back does not light what is seen from the front", () => {
    const back = { ...square(60, [1, 2, 5, 4], 0.8), isFace: false };
    expect(shadedParts([square(0, [0, 1, 4, 3], 0.4), back]).map(({ light }) => light)).toEqual([0.4, 0.8]);
  });

  test("a page is not overrun: where everything changes, steps get larger", () => {
    const many = Array.from({ length: 4000 }, (_, k) =>
      square(60 * k, [2 * k, 2 * k + 2, 2 * k + 3, 2 * k + 1], k % 2 === 0 ? 0.2 : 1),
    );
    expect(shadedParts(many).length).toBeLessThanOrEqual(4500);
  });
});

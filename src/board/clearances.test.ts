import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { plan, type ShadePlan } from "../plan/index.ts";
import { alongHeadMm } from "../shade-plan/index.ts";

const anyShade = fc
  .record({
    widthMm: fc.integer({ min: 500, max: 2400 }),
    eyeMm: fc.integer({ min: 6, max: 24 }),
    mount: fc.constantFrom("inside" as const, "outside" as const),
    section: fc.constantFrom("board-1x2", "board-1x3", "board-1x4"),
    controlSide: fc.constantFrom("left" as const, "right" as const),
    kind: fc.constantFrom("cord-lock" as const, "cleat" as const),
    topDropMm: fc.constantFrom(0, 300),
    fallMm: fc.constantFrom(0, 0, 250),
    spacing: fc.integer({ min: 200, max: 320 }),
  })
  .map(({ widthMm, eyeMm, mount, section, controlSide, kind, topDropMm, fallMm, spacing }): ShadePlan => {
    const [shade] = plan(
      jobWith(
        {
          opening: {
            widthsMm: [widthMm],
            heightsMm: [1500],
            ...(fallMm > 0 && topDropMm === 0 ? { head: { kind: "angled", fallMm, high: "left" } } : {}),
          },
          shade: {
            mount,
            making: {
              lift: { kind, eye: "mine", controlSide },
              board: { section },
              fold: { topDropMm },
              columns: { largestSpacingMm: spacing },
            },
          },
        },
        {
          units: { system: "metric", ruler: "1 mm" },
          hardware: { eyes: [{ id: "mine", name: "My eye", outsideDiameterMm: eyeMm }] },
        },
      ),
    ).shades;
    if (shade === undefined) throw new Error("invalid test job: no shade");
    return shade;
  });

/** A box under the board: along it, from the wall, and down from its underside, mm. */
type Box = [x: [number, number], z: [number, number], y: [number, number]];

const overlap = ([a, b]: [number, number], [c, d]: [number, number]) => a < d - 1e-6 && c < b - 1e-6;
const meets = (one: Box, other: Box) => one.every((range, i) => overlap(range, other[i] ?? [0, 0]));

/** Written from the plan alone, without a word of how fixings and seats are placed. */
function boxesOf(shade: ShadePlan) {
  const { lift, board, size } = shade;
  if (lift.takeUp === "tube") throw new Error("invalid test job: a tube");
  const at = (xMm: number) => alongHeadMm(size, 0, xMm);
  const box = (xMm: number, half: number, z: [number, number], y: [number, number]): Box => [
    [at(xMm) - half, at(xMm) + half],
    z,
    y,
  ];
  const d = lift.cordDiameterMm;
  const eye = lift.eyeDiameterMm;
  const about = (zMm: number, half: number): [number, number] => [zMm - half, zMm + half];
  const eyes = [...lift.eyes, ...(lift.topRail?.eyes ?? [])].map(({ xMm, zMm }) =>
    box(xMm, eye / 10, about(zMm, eye / 2), [0, eye]),
  );
  const fixings = board.brackets.map(({ xMm }) =>
    board.fixing === "brackets"
      ? box(xMm, 10, [0, board.depthMm], [0, 5])
      : box(xMm, 4, about(board.screwsZMm ?? board.depthMm / 2, 4), [0, 60]),
  );
  const locks: Box[] = [
    ...(lift.takeUp === "lock"
      ? [box(lift.seat.xMm, lift.housingLengthMm / 2, about(lift.seat.zMm, lift.housingWidthMm / 2), [0, 60])]
      : []),
    ...(lift.topRail === undefined
      ? []
      : [
          box(
            lift.topRail.seat.xMm,
            lift.topRail.housingLengthMm / 2,
            about(lift.topRail.seat.zMm, lift.topRail.housingWidthMm / 2),
            [0, 60],
          ),
        ]),
  ];
  // Each stretch of a cord in short pieces, where it lies in its eye: on the lower edge of the opening.
  const inEye = 0.8 * eye - d / 2;
  const level = lift.takeUp === "lock" ? Math.min(lift.entry.mouthLevelMm, inEye) : inEye;
  const pieces = (path: readonly { xMm: number; zMm: number }[], belowMm: number): Box[] =>
    path.slice(1).flatMap((b, i) => {
      const a = path[i];
      if (a === undefined) return [];
      return Array.from({ length: 24 }, (_, k): Box => {
        const p = (share: number) => a.xMm + share * (b.xMm - a.xMm);
        const q = (share: number) => a.zMm + share * (b.zMm - a.zMm);
        const [x1, x2] = [at(p(k / 24)), at(p((k + 1) / 24))];
        const [z1, z2] = [q(k / 24), q((k + 1) / 24)];
        return [
          [Math.min(x1, x2), Math.max(x1, x2)],
          [Math.min(z1, z2) - d / 2, Math.max(z1, z2) + d / 2],
          [belowMm - d / 2, belowMm + d / 2],
        ];
      });
    });
  const liftCords = lift.takeUp === "lock" ? lift.cords.map(({ path }) => pieces(path, level)) : [];
  const railCords = (lift.topRail?.cords ?? []).map(({ path }) => pieces(path, inEye));
  return { eyes, fixings, locks, liftCords, railCords };
}

describe("what is screwed under a board keeps clear of the rest", () => {
  test("the seat of every eye, screw, bracket and cord that is not its own; fixings of every cord", () => {
    let clear = 0;
    fc.assert(
      fc.property(anyShade, (shade) => {
        const said = new Set(shade.findings.map(({ id }) => id));
        const { eyes, fixings, locks, liftCords, railCords } = boxesOf(shade);
        const seatTold = said.has("rig.no-seat") || said.has("rig.rail-no-room");
        const fixingTold = said.has("board.fixing-not-clear");
        if (!seatTold) {
          for (const lock of locks) expect(eyes.some((eye) => meets(lock, eye))).toBe(false);
          expect(locks.length < 2 || !meets(locks[0] as Box, locks[1] as Box)).toBe(true);
          if (!fixingTold) {
            for (const lock of locks) expect(fixings.some((one) => meets(lock, one))).toBe(false);
          }
          const [own, rail] = shade.lift.takeUp === "lock" ? locks : [undefined, locks[0]];
          for (const cord of railCords.flat()) expect(own !== undefined && meets(own, cord)).toBe(false);
          for (const cord of liftCords.flat()) expect(rail !== undefined && meets(rail, cord)).toBe(false);
        }
        if (!fixingTold) for (const eye of eyes) expect(fixings.some((one) => meets(one, eye))).toBe(false);
        if (!said.has("board.fixing-in-cord-way") && !fixingTold) {
          for (const cord of [...liftCords, ...railCords].flat()) {
            expect(fixings.some((one) => meets(one, cord))).toBe(false);
          }
          clear++;
        }
      }),
      { numRuns: 60 },
    );
    // A property that is always excused shows nothing.
    expect(clear).toBeGreaterThan(20);
  });

  test("a small eye holds the cords against the arms of the brackets: found, and a larger one answers it", () => {
    const [shade] = plan(
      jobWith(
        {
          opening: { widthsMm: [1500], heightsMm: [1500] },
          shade: { mount: "outside", making: { lift: { eye: "small" } } },
        },
        { hardware: { eyes: [{ id: "small", name: "Small eye", outsideDiameterMm: 6 }] } },
      ),
    ).shades;
    const finding = shade?.findings.find(({ id }) => id === "board.fixing-in-cord-way");
    expect(finding?.severity).toBe("fix");
    expect(finding?.text).toMatch(/Bracket \d+ stands in the way of .*cord/);
    expect(finding?.remedies.map(({ label }) => label).join(" ")).toContain("Screw eye 12 mm");
  });

  test("inside, the screws go in beside the cords, and the sheet says where", () => {
    const [shade] = plan(
      jobWith({ opening: { widthsMm: [1500], heightsMm: [1500] }, shade: { mount: "inside" } }),
    ).shades;
    expect(shade?.board.screwsZMm).toBeCloseTo((shade?.board.depthMm ?? 0) / 4, 9);
    expect(shade?.steps.find(({ id }) => id === "board-fixing")?.text).toContain("beside the cords to come");
  });
});

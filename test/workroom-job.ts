import fc from "fast-check";
import { type JobInput, LIFT_KINDS, REAR_GUIDES } from "../src/job/index.ts";
import { jobWith } from "./job-with.ts";

/** Styles whose steps state figures alone; differences of two stand in those of the others. */
const STYLES = ["flat", "gathered-balloon", "austrian", "festoon"] as const;
const UNITS = [
  { system: "imperial", ruler: "1/8 in" },
  { system: "imperial", ruler: "1/16 in" },
  { system: "metric", ruler: "1 mm" },
] as const;
const LAYERS = [
  { lining: null },
  {},
  { interlining: "domett" },
  { interlining: "domett", blackout: "blackout-lining" },
] as const;
const RIBS = ["none", "lining-pocket", "through-pocket", "strip-pocket"] as const;

/** What a maker may ask of the cloth beyond the plainest make. */
const MAKES: NonNullable<NonNullable<JobInput["workshop"]>>[] = [
  {},
  { hems: { corner: "mitred", sideTurnMm: 30, sideTurns: 1 } },
  { hems: { makeUp: "bagged-out" }, lining: { blackoutCut: "as-lining" } },
  {
    banding: { where: "sides-and-bottom", widthMm: 60, insetMm: 30 },
    board: { returns: "pieces", dustStripMm: 40 },
  },
  {
    banding: { where: "all-round", widthMm: 45, insetMm: 0, corners: "butted", bottomBandMm: 180 },
    board: { returns: "wrapped" },
  },
  {
    lining: { squaringMm: 60, innerNarrowerMm: 20, innerLongerMm: 30, interliningCut: "as-lining" },
    pattern: { place: "free", offsetMm: 70, railroad: "always" },
  },
  { relax: { lowerEdge: "straight", widening: "even" }, pleat: { cut: "inserts" } },
  { relax: { extraWidthMm: 40, weight: "none" }, pleat: { held: "pressed", bar: "none", kind: "box" } },
  { pouf: { marks: 0 }, pleat: { edges: "none", centreLine: true, cut: "inserts" } },
];

/** Shades that a workroom makes: every mount, layers, ribs, fixing and side, on every ruler. */
export const workroomJob = fc
  .record({
    units: fc.constantFrom(...UNITS),
    mount: fc.constantFrom("inside" as const, "outside" as const, "to-size" as const),
    layers: fc.constantFrom(...LAYERS),
    kind: fc.constantFrom(...RIBS),
    attachment: fc.constantFrom("staple" as const, "hook-and-loop" as const),
    controlSide: fc.constantFrom("left" as const, "right" as const),
    lift: fc.constantFrom(...LIFT_KINDS),
    rearCords: fc.constantFrom(...REAR_GUIDES),
    widthOverFinishedMm: fc.constantFrom(0, 25.4),
    lengthOverFinishedMm: fc.constantFrom(undefined, 20),
    widthMm: fc.integer({ min: 400, max: 2600 }),
    heightMm: fc.integer({ min: 700, max: 2600 }),
    shrink: fc.constantFrom(0, 0.03),
    make: fc.constantFrom(...MAKES),
    style: fc.constantFrom(...STYLES),
    repeat: fc.constantFrom(
      undefined,
      { verticalMm: 320, match: "straight" as const },
      { verticalMm: 640, match: "half-drop" as const },
    ),
  })
  .map((r) => {
    const face = {
      id: "face",
      name: "Own cloth",
      usableWidthMm: 1370,
      massGsm: 220,
      shrinkLength: r.shrink,
      shrinkWidth: r.shrink,
      repeat: r.repeat,
    };
    const unlined = "lining" in r.layers;
    const ribKind = unlined && r.kind === "lining-pocket" ? "strip-pocket" : r.kind;
    return jobWith(
      {
        opening: {
          widthsMm: [r.widthMm],
          heightsMm: [r.heightMm],
          sillAboveFloorMm: 800,
          recessDepthMm: 120,
        },
        shade: {
          style: r.style,
          mount: r.mount,
          face: "face",
          ...r.layers,
          making: {
            ...r.make,
            ribs: { kind: ribKind },
            board: { ...r.make.board, attachment: r.attachment },
            lift: { kind: r.lift, rearCords: r.rearCords, controlSide: r.controlSide },
            lining: {
              ...r.make.lining,
              widthOverFinishedMm: r.widthOverFinishedMm,
              ...(r.lengthOverFinishedMm === undefined
                ? {}
                : { lengthOverFinishedMm: r.lengthOverFinishedMm }),
            },
          },
        },
      },
      { units: r.units, cloths: [face] } satisfies Partial<JobInput>,
    );
  });

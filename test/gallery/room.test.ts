import { drawRoom, type Placed, place, roomViews } from "../../src/drawing/index.ts";
import { type InLine, jobSchema } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { draws } from "./gallery.ts";
import { PAGE, PHONE } from "./papers.ts";

type Opening = {
  name: string;
  widthMm: number;
  heightMm: number;
  sillMm?: number;
  mount?: "inside" | "outside";
};

function room(
  openings: readonly Opening[],
  inLine: InLine | undefined,
  raise: number,
  paper: object,
  face?: string,
): Placed {
  const planned = plan(
    jobSchema.parse({
      format: "shadewright-job",
      version: 1,
      id: "gallery",
      name: "Gallery",
      demo: true,
      units: { system: "metric", ruler: "1 mm" },
      rooms: [
        {
          id: "kitchen",
          name: "Kitchen",
          ...(inLine === undefined ? {} : { inLine }),
          windows: openings.map(({ name, widthMm, heightMm, sillMm, mount = "inside" }, i) => ({
            id: `window-${i}`,
            name,
            opening: {
              widthsMm: [widthMm],
              heightsMm: [heightMm],
              ...(sillMm === undefined ? {} : { sillAboveFloorMm: sillMm }),
            },
            shade: { mount, ...(face === undefined ? {} : { face }) },
          })),
        },
      ],
      cloths: [
        {
          id: "leaf",
          name: "Leaf",
          usableWidthMm: 1370,
          massGsm: 220,
          repeat: { verticalMm: 320, match: "straight" },
        },
      ],
      workshop: { lift: { kind: "spring" } },
    }),
  );
  const [view] = roomViews(planned);
  if (view === undefined) throw new Error("invalid plan: no room");
  const { fit = paper, options = {} } = paper as { fit?: typeof PAGE; options?: object };
  return place(drawRoom(planned, view, { raise }), fit as typeof PAGE, options);
}

const KITCHEN: readonly Opening[] = [
  { name: "Left", widthMm: 760, heightMm: 1210, sillMm: 905 },
  { name: "Sink", widthMm: 1240, heightMm: 1050, sillMm: 1065 },
  { name: "Garden door", widthMm: 860, heightMm: 2060, sillMm: 25 },
  { name: "Larder", widthMm: 480, heightMm: 620, sillMm: 1420, mount: "outside" },
];

/** One head, two sills: two raised hems can meet. */
const STAIRCASE: readonly Opening[] = [
  { name: "Left", widthMm: 900, heightMm: 1200, sillMm: 900 },
  { name: "Window over the stairs", widthMm: 900, heightMm: 1350, sillMm: 750 },
  { name: "Right", widthMm: 900, heightMm: 1200, sillMm: 900 },
];

draws("room", () => room(KITCHEN, true, 0, PAGE));
draws("room-half", () => room(KITCHEN, true, 0.5, PAGE));
draws("room-raised", () => room(STAIRCASE, true, 1, PAGE));
draws("room-motif", () => room(STAIRCASE, true, 0, PAGE, "leaf"));
draws("room-phone", () => room(STAIRCASE, true, 0, PHONE));
draws("room-own", () => room(KITCHEN, undefined, 0, PAGE));
draws("room-one-unmeasured", () =>
  room([...KITCHEN.slice(0, 2), { name: "Stairs", widthMm: 700, heightMm: 900 }], true, 0, PAGE),
);

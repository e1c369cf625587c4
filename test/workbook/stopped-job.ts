import type { Job, LiftKind, Place, Purpose, RearGuide } from "../../src/job/index.ts";
import type { UnitChoice } from "../../src/units/index.ts";
import { jobWith } from "../job-with.ts";

export interface CordedJob {
  place?: Place;
  purpose?: Purpose;
  units?: UnitChoice;
  kind?: LiftKind;
  rearCords?: RearGuide;
  name?: string;
}

/** A window 900 × 1500 mm above a sill at 800 mm, with cords over a lock unless told. */
export function cordedJob({
  name = "East window",
  kind = "cord-lock",
  rearCords,
  ...job
}: CordedJob = {}): Job {
  return jobWith(
    {
      id: "east",
      name,
      opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 800, recessDepthMm: 120 },
      shade: {
        mount: "inside",
        making: { lift: { kind, ...(rearCords === undefined ? {} : { rearCords }) } },
      },
    },
    { name: "Ferry House", units: { system: "metric", ruler: "1 mm" }, ...job },
  );
}

/** Cords over a lock, for sale in Canada: SOR/2019-97 ss. 5 to 8 are broken, and the review stops it. */
export function stoppedJob(): Job {
  return cordedJob({ place: "ca", purpose: "for-sale", units: { system: "imperial", ruler: "1/8 in" } });
}

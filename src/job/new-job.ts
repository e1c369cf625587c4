import { SYSTEM_DEFAULT_RULER, type UnitSystem } from "../units/index.ts";
import {
  JOB_FORMAT,
  JOB_VERSION,
  type Job,
  jobSchema,
  type Mount,
  type Place,
  type Purpose,
  type Window,
  windowSchema,
} from "./job.ts";

export interface NewJob {
  id: string;
  name: string;
  system: UnitSystem;
  place?: Place;
  purpose?: Purpose;
}

/** An empty job with one room. The caller brings the id, since the core draws no random numbers. */
export function newJob({ id, name, system, place, purpose }: NewJob): Job {
  return jobSchema.parse({
    format: JOB_FORMAT,
    version: JOB_VERSION,
    id,
    name,
    place,
    purpose,
    units: { system, ruler: SYSTEM_DEFAULT_RULER[system] },
    rooms: [{ id: "room-1", name: "Room", windows: [] }],
  });
}

export interface NewWindow {
  id: string;
  name: string;
  widthMm: number;
  heightMm: number;
  mount?: Mount;
}

/** A window from one width and one height: all that a shade needs to begin with. */
export function newWindow({ id, name, widthMm, heightMm, mount }: NewWindow): Window {
  return windowSchema.parse({
    id,
    name,
    opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
    shade: mount === undefined ? {} : { mount },
  });
}

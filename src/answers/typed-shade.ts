import {
  CATALOGUE,
  JOB_FORMAT,
  JOB_VERSION,
  type Job,
  type JobIssue,
  openJob,
  type Place,
  type Purpose,
} from "../job/index.ts";
import { inches, type UnitChoice } from "../units/index.ts";

/** A shade in a few numbers, all in mm but the weight of its cloth. */
export interface TypedShade {
  widthMm: number;
  lengthMm: number;
  /** Rows of rings at most so far apart. */
  rowsApartMm: number;
  /** Columns of rings at most so far apart. */
  columnsApartMm: number;
  /** Cloth kept flat under the board; as its parts need where it is left out. */
  headrailMm?: number;
  cordMm: number;
  /** Width of the cloth without its selvedges. */
  clothMm: number;
  /** Height of one repeat; 0 is plain. */
  repeatMm: number;
  match: "straight" | "half-drop";
  massGsm: number;
  place?: Place;
  purpose?: Purpose;
}

/** The numbers of a usual window, until others are typed. */
export const USUAL_SHADE: TypedShade = {
  widthMm: inches(36),
  lengthMm: inches(60),
  rowsApartMm: inches(8),
  columnsApartMm: inches(10),
  cordMm: 1.4,
  clothMm: inches(54),
  repeatMm: 0,
  match: "straight",
  massGsm: 230,
};

export type TypedNumber = Exclude<keyof TypedShade, "match" | "place" | "purpose">;

/** Where a number stands in the document, so that trouble with it is told by its own name. */
const FIELDS: Record<TypedNumber, string> = {
  widthMm: "rooms[0].windows[0].opening.widthsMm[0]",
  lengthMm: "rooms[0].windows[0].opening.heightsMm[0]",
  rowsApartMm: "rooms[0].windows[0].shade.making.fold.largestSpacingMm",
  columnsApartMm: "rooms[0].windows[0].shade.making.columns.largestSpacingMm",
  headrailMm: "rooms[0].windows[0].shade.making.fold.headrailMm",
  cordMm: "hardware.cords[0].diameterMm",
  clothMm: "cloths[0].usableWidthMm",
  repeatMm: "cloths[0].repeat.verticalMm",
  massGsm: "cloths[0].massGsm",
};

export type TypedJob =
  | { ok: true; job: Job }
  | { ok: false; issues: (JobIssue & { number?: TypedNumber })[] };

/** A job of one lined shade over a cord lock with these numbers: what is asked of numbers is asked of a real plan. */
export function typedJob(typed: TypedShade, units: UnitChoice): TypedJob {
  const { repeatMm, match, place, purpose } = typed;
  const opened = openJob({
    format: JOB_FORMAT,
    version: JOB_VERSION,
    id: "typed",
    name: "From typed numbers",
    place,
    purpose,
    units,
    cloths: [
      {
        id: "typed-cloth",
        name: "Your cloth",
        usableWidthMm: typed.clothMm,
        massGsm: typed.massGsm,
        ...(repeatMm === 0 ? {} : { repeat: { verticalMm: repeatMm, match } }),
      },
    ],
    hardware: { cords: cordsOf(typed.cordMm) },
    rooms: [
      {
        id: "room",
        name: "Room",
        windows: [
          {
            id: "window",
            name: "Window",
            opening: { widthsMm: [typed.widthMm], heightsMm: [typed.lengthMm] },
            shade: {
              mount: "to-size",
              face: "typed-cloth",
              making: {
                fold: {
                  largestSpacingMm: typed.rowsApartMm,
                  ...(typed.headrailMm === undefined ? {} : { headrailMm: typed.headrailMm }),
                },
                columns: { largestSpacingMm: typed.columnsApartMm },
                lift: { kind: "cord-lock", cord: cordIdOf(typed.cordMm) },
              },
            },
          },
        ],
      },
    ],
  });
  if (opened.ok) return { ok: true, job: opened.job };
  return { ok: false, issues: opened.issues.map((issue) => ({ ...issue, ...numberAt(issue.field) })) };
}

function numberAt(field: string): { number?: TypedNumber } {
  const found = (Object.keys(FIELDS) as TypedNumber[]).find((number) => FIELDS[number] === field);
  return found === undefined ? {} : { number: found };
}

const OWN_CORD = "typed-cord";

/** One of the catalogue where it is as thick; else one of which nothing but this is known. */
function cordIdOf(diameterMm: number): string {
  return CATALOGUE.cords.find((cord) => cord.diameterMm === diameterMm)?.id ?? OWN_CORD;
}

function cordsOf(diameterMm: number): { id: string; name: string; diameterMm: number }[] {
  return cordIdOf(diameterMm) === OWN_CORD ? [{ id: OWN_CORD, name: "Your cord", diameterMm }] : [];
}

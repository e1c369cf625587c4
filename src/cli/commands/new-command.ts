import { randomUUID } from "node:crypto";
import { type Command, Option } from "commander";
import {
  EXISTING_TASKS,
  type ExistingTask,
  JOB_FORMAT,
  JOB_VERSION,
  type JobIssue,
  jobText,
  LIFT_KINDS,
  type LiftKind,
  MOUNTS,
  type Mount,
  openJob,
  PLACES,
  type Place,
  PURPOSES,
  type Purpose,
  STYLES,
  type StyleKind,
} from "../../job/index.ts";
import {
  bareUnit,
  LENGTH_EXAMPLES,
  parseLength,
  SYSTEM_DEFAULT_RULER,
  UNIT_SYSTEMS,
  type UnitChoice,
  type UnitSystem,
} from "../../units/index.ts";
import { BadInput, badInput } from "../bad-input.ts";
import { idFromName } from "../file-names.ts";
import type { Io } from "../io.ts";
import { plainLine } from "../plain-text.ts";
import { writeNewFile } from "../write-files.ts";

interface NewOptions {
  name: string;
  width?: string;
  length?: string;
  mount?: Mount;
  style?: StyleKind;
  units: UnitSystem;
  place?: Place;
  purpose?: Purpose;
  existing?: ExistingTask[];
  strung?: LiftKind;
  rows?: string;
  rowsRight?: string;
  columns?: string;
  out?: string;
}

/** Fields of the document that an option fills, so that trouble is told in the user's words. */
const FIELD_OPTIONS: Record<string, string> = {
  name: "--name",
  "rooms[0].windows[0].opening.widthsMm[0]": "--width",
  "rooms[0].windows[0].opening.heightsMm[0]": "--length",
  "rooms[0].windows[0].shade.existing.rowsFromHemMm": "--rows",
  "rooms[0].windows[0].shade.existing.rowsFromHemRightMm": "--rows-right",
  "rooms[0].windows[0].shade.existing.columnsFromLeftMm": "--columns",
};

function lengthOf(option: string, text: string | undefined, units: UnitChoice): number {
  if (text === undefined) throw badInput(option, "nothing", `a length, written like ${LENGTH_EXAMPLES}`);
  const parsed = parseLength(text, bareUnit(units));
  if (!parsed.ok) throw badInput(option, JSON.stringify(text), parsed.reason);
  return parsed.lengthMm;
}

/** Lengths with semicolons between, since a comma may stand in a length. */
function lengthsOf(option: string, text: string | undefined, units: UnitChoice): number[] {
  if (text === undefined)
    throw badInput(option, "nothing", `lengths with ; between, such as "4; 11 1/2; 19"`);
  return text
    .split(";")
    .filter((part) => part.trim() !== "")
    .map((part) => lengthOf(option, part, units));
}

/** What only a shade that hangs already has. */
const STRAYS = [
  ["strung", "--strung"],
  ["rows", "--rows"],
  ["rowsRight", "--rows-right"],
  ["columns", "--columns"],
] as const;

/** A shade that hangs already: what is to be done to it, and its rows and columns as measured. */
function existingOf(options: NewOptions, units: UnitChoice) {
  const { existing: tasks, strung } = options;
  if (tasks === undefined) {
    const stray = STRAYS.find(([option]) => options[option] !== undefined);
    if (stray !== undefined)
      throw badInput(stray[1], JSON.stringify(options[stray[0]]), "--existing with what is to be done");
    return undefined;
  }
  return {
    tasks,
    strung,
    rowsFromHemMm: lengthsOf("--rows", options.rows, units),
    ...(options.rowsRight === undefined
      ? {}
      : { rowsFromHemRightMm: lengthsOf("--rows-right", options.rowsRight, units) }),
    columnsFromLeftMm: lengthsOf("--columns", options.columns, units),
  };
}

function inOptionWords(issue: JobIssue): JobIssue {
  const option = FIELD_OPTIONS[issue.field];
  if (option === undefined) return issue;
  const isLength = option !== "--name";
  return {
    field: option,
    given: isLength ? `${issue.given} mm` : issue.given,
    wanted: isLength ? `${issue.wanted} mm` : issue.wanted,
  };
}

function jobFrom(options: NewOptions): string {
  const units: UnitChoice = { system: options.units, ruler: SYSTEM_DEFAULT_RULER[options.units] };
  const existing = existingOf(options, units);
  const opened = openJob({
    format: JOB_FORMAT,
    version: JOB_VERSION,
    id: `${idFromName(options.name)}-${randomUUID().slice(0, 8)}`,
    name: options.name,
    place: options.place,
    purpose: options.purpose,
    units,
    rooms: [
      {
        id: "room-1",
        name: "Room",
        windows: [
          {
            id: "window-1",
            name: "Window",
            opening: {
              widthsMm: [lengthOf("--width", options.width, units)],
              heightsMm: [lengthOf("--length", options.length, units)],
            },
            shade: {
              // One that hangs is measured itself.
              mount: options.mount ?? (existing === undefined ? undefined : "to-size"),
              style: options.style,
              existing,
            },
          },
        ],
      },
    ],
  });
  if (!opened.ok) throw new BadInput("The new job", opened.issues.map(inOptionWords));
  return jobText(opened.job);
}

/** `shadewright new`: a job of one window from a width and a length. */
export function addNew(program: Command, io: Io): void {
  program
    .command("new")
    .description("Begin a job with one window, from its width and its length")
    .option("--width <length>", `width of the opening, such as '35 3/8', '90,5 cm' or 905`)
    .option("--length <length>", "height of the opening, written likewise")
    .option("--name <name>", "name of the job", "New job")
    .addOption(
      new Option("--mount <mount>", "where it hangs; to-size takes width and length as finished").choices(
        MOUNTS,
      ),
    )
    .addOption(new Option("--style <style>", "style of the shade; flat where it is left out").choices(STYLES))
    .addOption(
      new Option("--units <system>", "how lengths are read and shown")
        .choices(UNIT_SYSTEMS)
        .default("imperial"),
    )
    .addOption(new Option("--place <place>", "where it will hang, for the cautions").choices(PLACES))
    .addOption(new Option("--purpose <purpose>", "whom it is for").choices(PURPOSES))
    .addOption(
      new Option(
        "--existing <task...>",
        "it hangs already: what is to be done; width and length are then its own",
      ).choices(EXISTING_TASKS),
    )
    .addOption(
      new Option("--strung <lift>", "how it is raised now; a cleat where it is left out").choices(LIFT_KINDS),
    )
    .option("--rows <lengths>", "its rows of rings above the hem, with ; between: '4; 11 1/2; 19'")
    .option("--rows-right <lengths>", "the same rows at its right edge, where they slant")
    .option("--columns <lengths>", "its columns from the left edge, with ; between")
    .option("--out <file>", "new file to write; without it the job is printed")
    .option("--json", "print the job, also when it is written to a file")
    .action(async (options: NewOptions & { json?: boolean }) => {
      const text = jobFrom(options);
      const file = options.out === "-" ? undefined : options.out;
      if (file !== undefined) {
        await writeNewFile(file, text);
        io.err(`Wrote ${plainLine(file)}. Next: shadewright plan ${plainLine(file)} --out DIR\n`);
      }
      if (file === undefined || options.json) io.out(text);
    });
}

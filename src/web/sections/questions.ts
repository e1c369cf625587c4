import { footholdsOf, type Job, type Window } from "../../job/index.ts";
import type { WindowIndex } from "../state/planning.ts";
import type { SectionId } from "./sections.ts";

/** Something that only the maker knows and the job does not say yet. */
export interface Question {
  section: SectionId;
  /** JSON pointer of the field that answers it. */
  pointer: string;
  text: string;
}

const WIDTHS = ["Width at the top", "Width in the middle", "Width at the bottom"];
const HEIGHTS = ["Height at the left", "Height in the centre", "Height at the right"];

/** What is still to be answered for a window, in the order of its page; each has its field there. */
export function questionsOf(job: Job, { room, window: at }: WindowIndex): Question[] {
  const window = job.rooms[room]?.windows[at];
  if (!window) return [];
  const pointer = `/rooms/${room}/windows/${at}`;
  return [...ofOpening(window, pointer), ...ofWall(job, window, pointer), ...ofPlace(job)];
}

function ofOpening({ opening, shade }: Window, pointer: string): Question[] {
  const ask = (key: string, text: string): Question => ({
    section: "measure",
    pointer: `${pointer}/opening/${key}`,
    text,
  });
  const { widthsMm, heightsMm, diagonalsMm, recessDepthMm, sillAboveFloorMm } = opening;
  // What is made to a given size has no opening to measure.
  const measured = shade.mount !== "to-size";
  return [
    measured && widthsMm.length < 3
      ? ask(`widthsMm/${widthsMm.length}`, WIDTHS[widthsMm.length] ?? "Width")
      : undefined,
    measured && heightsMm.length < 3
      ? ask(`heightsMm/${heightsMm.length}`, HEIGHTS[heightsMm.length] ?? "Height")
      : undefined,
    measured && diagonalsMm === undefined ? ask("diagonalsMm/0", "Both diagonals") : undefined,
    shade.mount === "inside" && recessDepthMm === undefined
      ? ask("recessDepthMm", "Depth of the recess")
      : undefined,
    sillAboveFloorMm === undefined ? ask("sillAboveFloorMm", "Sill above the floor") : undefined,
    footholdsOf(opening) === undefined ? ask("footholds", "What a child can stand on") : undefined,
  ].filter((one) => one !== undefined);
}

function ofWall({ workshop }: Job, { shade }: Window, pointer: string): Question[] {
  const known = shade.making?.board?.substrate ?? workshop?.board?.substrate ?? "unknown";
  if (known !== "unknown") return [];
  const field = `${pointer}/shade/making/board/substrate`;
  return [{ section: "board", pointer: field, text: "What it is screwed into" }];
}

function ofPlace({ place, purpose }: Job): Question[] {
  return [
    place === undefined
      ? ({ section: "safety", pointer: "/place", text: "Where it will hang" } as const)
      : undefined,
    purpose === undefined
      ? ({ section: "safety", pointer: "/purpose", text: "What its use is" } as const)
      : undefined,
  ].filter((one) => one !== undefined);
}

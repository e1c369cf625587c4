import { drapeShade, type HangingCloth, surfaceFigures } from "../../drape/index.ts";
import type { Drawing, Facet } from "../model.ts";
import type { Camera } from "../picture/camera.ts";
import { type ClothColours, clothFaces } from "../picture/cloth-faces.ts";
import { BATTEN, CORD, lineFaces } from "../picture/line-faces.ts";
import { refined } from "../picture/refine.ts";
import { windowFaces } from "../picture/window-faces.ts";
import { hangingControl } from "./hanging-control.ts";
import { differenceWords, pictureFacts } from "./picture-facts.ts";
import { clothColours, drapeInput, methodWords, windowBehind } from "./picture-things.ts";
import { shapeNow } from "./shape-now.ts";
import { line } from "./shapes.ts";
import { lengthFact, raiseName, type SheetInput } from "./sheet-input.ts";

/** Where the eye stands, mm and rad: a little to the right of the middle, before the shade, farther from a large one. */
const LEAST_DISTANCE_MM = 3200;
const DISTANCES = 1.8;
const AROUND_RAD = 0.24;
const ABOVE_RAD = 0.06;
/** Faces that a cloth is divided into at first and at most, and how many of them ought to be seen: others are hidden in its folds. */
const FIRST_FACES = 4500;
/** A pattern is told face by face. */
const FIRST_PATTERNED = 8000;
const MOST_FACES = 14_000;
const SEEN_FACES = 2600;

/** The shade as it hangs, seen from the room: its cloth brought to rest, in its own colours. */
export function drawPicture(input: SheetInput): Drawing {
  const { shade, units, raise } = input;
  const { size } = shade;
  const { id, words } = raiseName(raise);
  const draped = drapeInput(shade);
  const hanging = drapeShade(draped, raise);
  const figures = surfaceFigures(draped, raise, hanging);
  const camera: Camera = {
    aim: [size.finishedWidthMm / 2, size.finishedLengthMm / 2, 0],
    distanceMm: Math.max(
      LEAST_DISTANCE_MM,
      DISTANCES * Math.max(size.finishedWidthMm, size.finishedLengthMm),
    ),
    ...{ aroundRad: AROUND_RAD, aboveRad: ABOVE_RAD },
  };
  const behind = windowBehind(shade);
  return {
    id: `picture${id}`,
    title: "Picture",
    caption: `As it hangs, seen from the right of its middle. ${words}. ${methodWords(hanging.method)}${differenceWords(figures)}`,
    primitives: [
      {
        kind: "facets",
        role: "picture",
        faces: [
          ...windowFaces(behind, camera),
          // What hangs at the control side hangs from under the board, behind the cloth.
          ...lineFaces(
            hangingControl(input, raise),
            { z: -shade.board.depthMm / 2, bottom: behind.wall.bottom, colour: CORD },
            camera,
          ),
          ...enoughFaces(hanging.cloth, camera, clothColours(shade)),
          ...battens(input, hanging.cloth, camera),
        ],
      },
    ],
    facts: [lengthFact("Finished width", size.finishedWidthMm, units), ...pictureFacts(figures, units)],
  };
}

/** Divided more finely where most of it is hidden. */
function enoughFaces(cloth: HangingCloth, camera: Camera, colours: ClothColours): Facet[] {
  const largestMm = colours.pattern?.largestMm;
  const most = largestMm === undefined ? FIRST_FACES : FIRST_PATTERNED;
  const first = clothFaces(refined(cloth, most, largestMm), camera, colours);
  const wanted = Math.min(MOST_FACES, (most * SEEN_FACES) / Math.max(1, first.length));
  return wanted < 1.2 * most ? first : clothFaces(refined(cloth, wanted, largestMm), camera, colours);
}

/** Battens bare on the face, before the cloth that they lie on. */
function battens(input: SheetInput, cloth: HangingCloth, camera: Camera): Facet[] {
  return shapeNow(input)
    .lines.filter(({ kind, seenFrom }) => kind === "rib" && seenFrom !== "back")
    .flatMap(({ points }) => {
      const y = points.reduce((sum, [, down]) => sum + down, 0) / points.length;
      const z = foremostAt(cloth, y) + BATTEN_OUT_MM;
      return lineFaces(
        [line("rib", points, { closed: true })],
        { z, bottom: Number.POSITIVE_INFINITY, colour: BATTEN },
        camera,
      );
    });
}

/** How far the cloth stands out at a height, mm. */
function foremostAt({ placesMm }: HangingCloth, yMm: number): number {
  let foremost = 0;
  for (let at = 0; at < placesMm.length; at += 3)
    if (Math.abs((placesMm[at + 1] as number) - yMm) < BATTEN_MM)
      foremost = Math.max(foremost, placesMm[at + 2] as number);
  return foremost;
}

/** A batten's face before the cloth, and its height, mm. */
const BATTEN_OUT_MM = 4;
const BATTEN_MM = 10;

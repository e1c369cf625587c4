import { type DrapeInput, drapeShade, type HangingCloth, surfaceFigures } from "../../drape/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import type { Drawing, Facet, Point, Primitive } from "../model.ts";
import type { Camera } from "../picture/camera.ts";
import { type ClothColours, paintFaces, seenCloth } from "../picture/cloth-faces.ts";
import { BATTEN, CORD, lineFaces } from "../picture/line-faces.ts";
import { refined } from "../picture/refine.ts";
import { thinned } from "../picture/thinned.ts";
import { type WindowBehind, windowFaces } from "../picture/window-faces.ts";
import { hangingControl } from "./hanging-control.ts";
import { differenceWords, pictureFacts } from "./picture-facts.ts";
import { type BareBatten, bareBattens } from "./picture-rig.ts";
import {
  COARSE_WORDS,
  clothColours,
  drapeInput,
  methodWords,
  type SceneColours,
  sceneColours,
  windowBehind,
} from "./picture-things.ts";
import { line } from "./shapes.ts";
import { lengthFact, raiseName, type SheetInput } from "./sheet-input.ts";

/** Where the eye stands, mm and rad: a little to the right of the middle, before the shade, farther from a large one. */
const LEAST_DISTANCE_MM = 3200;
const DISTANCES = 1.8;
const AROUND_RAD = 0.24;
const ABOVE_RAD = 0.06;
/** Faces that a cloth is divided into at first and at most, and how many of them ought to be seen: others are hidden in its folds. */
const FIRST_FACES = 4500;
const MOST_FACES = 14_000;
const SEEN_FACES = 2600;
/** Of cloth with a pattern, whose parts come on top. */
const PRINTED_SHARE = 0.6;

/** What a picture at one height follows from, and nothing else: it can be sent to another thread. */
export interface PictureScene {
  drape: DrapeInput;
  raise: number;
  units: UnitChoice;
  behind: WindowBehind;
  colours: SceneColours;
  /** What hangs at the control side, and battens bare on the face, mm as on the shade. */
  control: readonly Primitive[];
  battens: readonly BareBatten[];
}

export function pictureScene(input: SheetInput): PictureScene {
  const { shade, units, raise } = input;
  return {
    ...{ drape: drapeInput(shade), raise, units },
    behind: windowBehind(shade),
    colours: sceneColours(shade),
    control: hangingControl(input, raise),
    battens: bareBattens(shade, units, raise),
  };
}

/** The shade as it hangs, seen from the room: its cloth brought to rest, in its own colours. */
export function drawPicture(input: SheetInput): Drawing {
  return drawScene(pictureScene(input));
}

/** The same from its scene; `coarse`: near enough to look at while the better one is on its way. */
export function drawScene(scene: PictureScene, { coarse = false }: { coarse?: boolean } = {}): Drawing {
  const { drape, raise, units, behind, control, battens } = scene;
  const { size } = drape;
  const hanging = drapeShade(drape, raise, { coarse });
  const figures = coarse ? [] : surfaceFigures(drape, raise, hanging);
  const { words } = raiseName(raise);
  const camera = cameraOf(scene);
  const how = coarse ? COARSE_WORDS : `${methodWords(hanging.method)}${differenceWords(figures)}`;
  return {
    ...namedScene(scene),
    caption: `As it hangs, seen from the right of its middle. ${words}. ${how}`,
    primitives: [
      {
        kind: "facets",
        role: "picture",
        faces: [
          ...windowFaces(behind, camera),
          // What hangs at the control side hangs from under the board, behind the cloth.
          ...lineFaces(
            control,
            { z: -drape.board.depthMm / 2, bottom: behind.wall.bottom, colour: CORD },
            camera,
          ),
          ...enoughFaces(hanging.cloth, camera, clothColours(scene.colours, laidFlat(hanging.cloth))),
          ...battens.flatMap((batten) => battenFaces(batten, hanging.cloth, camera)),
        ],
      },
    ],
    facts: [lengthFact("Finished width", size.finishedWidthMm, units), ...pictureFacts(figures, units)],
  };
}

/** Faces of a picture as small as a card. */
const SMALL_FACES = 700;
/** So far away that nothing is seen smaller for being behind, mm. */
const AFAR_MM = 1e7;

/**
 * The shade of a scene alone, seen straight on: where it hangs on the elevation of its window, mm as on the shade. In few
 * faces, for cards and rows of windows.
 */
export function smallPicture({ drape, raise, colours, battens }: PictureScene): Facet[] {
  const { finishedWidthMm, finishedLengthMm } = drape.size;
  const camera: Camera = {
    aim: [finishedWidthMm / 2, finishedLengthMm / 2, 0],
    distanceMm: AFAR_MM,
    ...{ aroundRad: 0, aboveRad: 0 },
  };
  const { cloth } = drapeShade(drape, raise);
  const small = refined(thinned(cloth, 2 * SMALL_FACES), SMALL_FACES);
  return [
    ...paintFaces(seenCloth(small, camera), clothColours(colours, laidFlat(cloth))),
    ...battens.flatMap((batten) => battenFaces(batten, cloth, camera)),
  ];
}

/** The wall and window of a scene alone: as large as its picture at any height. */
export function drawSceneFrame(scene: PictureScene): Drawing {
  return {
    ...namedScene(scene),
    caption: "",
    primitives: [{ kind: "facets", role: "picture", faces: windowFaces(scene.behind, cameraOf(scene)) }],
    facts: [],
  };
}

function namedScene({ raise }: PictureScene): Pick<Drawing, "id" | "title"> {
  return { id: `picture${raiseName(raise).id}`, title: "Picture" };
}

function cameraOf({ drape: { size } }: PictureScene): Camera {
  return {
    aim: [size.finishedWidthMm / 2, size.finishedLengthMm / 2, 0],
    distanceMm: Math.max(
      LEAST_DISTANCE_MM,
      DISTANCES * Math.max(size.finishedWidthMm, size.finishedLengthMm),
    ),
    ...{ aroundRad: AROUND_RAD, aboveRad: ABOVE_RAD },
  };
}

/** Divided more finely where most of it is hidden. */
function enoughFaces(whole: HangingCloth, camera: Camera, colours: ClothColours): Facet[] {
  const cloth = thinned(whole, MOST_FACES);
  const share = colours.print?.isPatterned === true ? PRINTED_SHARE : 1;
  const firstFaces = share * FIRST_FACES;
  const first = seenCloth(refined(cloth, firstFaces), camera);
  const wanted = Math.min(MOST_FACES, (firstFaces * share * SEEN_FACES) / Math.max(1, first.order.length));
  return paintFaces(wanted < 1.2 * firstFaces ? first : seenCloth(refined(cloth, wanted), camera), colours);
}

function laidFlat({ across, along, clothMm }: HangingCloth): { widthMm: number; lengthMm: number } {
  const last = across * along - 1;
  const widthMm = (clothMm[2 * last] as number) - (clothMm[2 * (last - across + 1)] as number);
  // At its edge: a hem that is cut in a curve is longer midway.
  return { widthMm, lengthMm: clothMm[2 * last + 1] as number };
}

/** A batten bare on the face, before the cloth that it lies on. */
function battenFaces({ left, right, top, bottom }: BareBatten, cloth: HangingCloth, camera: Camera): Facet[] {
  const z = foremostAt(cloth, (top + bottom) / 2) + BATTEN_OUT_MM;
  const outline: Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return lineFaces(
    [line("rib", outline, { closed: true })],
    { z, bottom: Number.POSITIVE_INFINITY, colour: BATTEN },
    camera,
  );
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

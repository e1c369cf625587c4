import {
  BoxGeometry,
  CanvasTexture,
  Color,
  CylinderGeometry,
  Group,
  Matrix4,
  MeshLambertMaterial,
  Quaternion,
  Sprite,
  SpriteMaterial,
  SRGBColorSpace,
  TorusGeometry,
  Vector3,
} from "three";
import { BATTEN, type BareBatten, CORD, type RigLine } from "../../../drawing/index.ts";
import { Instances } from "./instances.ts";

const RING_MM = 7;
const WIRE_MM = 1.6;
const CORD_MM = 2;
const TAG_MM = 58;
/** Rings hang this far behind the cloth, cords run behind it and tags behind those, mm. */
const RING_BEHIND_MM = 4;
const CORD_BEHIND_MM = 4;
/** A cord is laid behind the cloth in pieces so long, mm. */
const PIECE_MM = 40;
const TAG_BEHIND_MM = 30;
const BATTEN_DEEP_MM = 6;
const LEAST_BATTEN_MM = 6;
const UP = new Vector3(0, 1, 0);

/** Rings, cords in their colours with their numbers, and what hangs at the control side. */
export class Rig {
  readonly group = new Group();
  readonly #rings = new Instances(
    new TorusGeometry(RING_MM, WIRE_MM, 6, 14),
    new MeshLambertMaterial({ color: "#c9ccd2" }),
  );
  readonly #battens = new Instances(
    new BoxGeometry(1, 1, 1),
    new MeshLambertMaterial({ color: BATTEN }),
    true,
  );
  /** Of all colours. */
  readonly #cords = new Instances(
    new CylinderGeometry(CORD_MM, CORD_MM, 1, 6, 1, true),
    new MeshLambertMaterial(),
  );
  readonly #colours = new Map<string, Color>();
  readonly #tags = new Map<number, Sprite>();

  constructor() {
    this.group.add(this.#rings.group, this.#battens.group, this.#cords.group);
  }

  /**
   * Puts rings and cords where they are at this height; `backAt` tells how far back the cloth reaches at a place. From the
   * front, cloth hides whatever lies behind it: there, only what hangs beside it is laid.
   */
  hang(
    ringsMm: Float64Array,
    lines: readonly RigLine[],
    fromBehind: boolean,
    backAt: (x: number, y: number) => number,
  ): void {
    this.#rings.begin();
    for (let k = 0; fromBehind && k < ringsMm.length; k += 3) {
      const [x, y, z] = [ringsMm[k] as number, ringsMm[k + 1] as number, ringsMm[k + 2] as number];
      this.#rings.set(PLACED.makeTranslation(x, -y - RING_MM, z - RING_BEHIND_MM));
    }
    this.#rings.end();
    this.#cords.begin();
    for (const tag of this.#tags.values()) tag.visible = false;
    for (const { number, colour = CORD, points: straight } of lines) {
      if (number !== undefined && !fromBehind) continue;
      const points = number === undefined ? straight : behindCloth(straight, backAt);
      for (let k = 1; k < points.length; k++)
        this.#layCord(points[k - 1] as Place, points[k] as Place, this.#colourOf(colour));
      const [low] = points;
      if (number !== undefined && low !== undefined) this.#tag(number, colour, low);
    }
    this.#cords.end();
  }

  /** Battens on the face, before the cloth that they lie on. */
  lay(battens: readonly BareBatten[], frontAt: (x: number, y: number) => number): void {
    this.#battens.begin();
    for (const { left, right, top, bottom } of battens) {
      const [x, y] = [(left + right) / 2, (top + bottom) / 2];
      SIZE.set(right - left, Math.max(LEAST_BATTEN_MM, bottom - top), BATTEN_DEEP_MM);
      MIDDLE.set(x, -y, frontAt(x, y) + BATTEN_DEEP_MM / 2);
      this.#battens.set(PLACED.compose(MIDDLE, UNTURNED, SIZE));
    }
    this.#battens.end();
  }

  dispose(): void {
    for (const instances of [this.#rings, this.#battens, this.#cords]) instances.dispose();
    for (const { material } of this.#tags.values()) {
      material.map?.dispose();
      material.dispose();
    }
  }

  #colourOf(colour: string): Color {
    const known = this.#colours.get(colour) ?? new Color(colour);
    this.#colours.set(colour, known);
    return known;
  }

  #layCord([ax, ay, az]: Place, [bx, by, bz]: Place, colour: Color): void {
    WAY.set(bx - ax, ay - by, bz - az);
    const length = WAY.length();
    if (length < 1) return;
    MIDDLE.set((ax + bx) / 2, -(ay + by) / 2, (az + bz) / 2);
    TURN.setFromUnitVectors(UP, WAY.divideScalar(length));
    this.#cords.set(PLACED.compose(MIDDLE, TURN, SIZE.set(1, length, 1)), colour);
  }

  #tag(number: number, colour: string, [x, y, z]: Place): void {
    const known = this.#tags.get(number);
    const tag = known ?? new Sprite(tagMaterial(number, colour));
    if (known === undefined) {
      this.#tags.set(number, tag);
      tag.scale.set(TAG_MM, TAG_MM, 1);
      this.group.add(tag);
    }
    tag.visible = true;
    tag.position.set(x, -y - TAG_MM * 0.8, z - TAG_BEHIND_MM);
  }
}

// Filled anew for each of hundreds of pieces.
const PLACED = new Matrix4();
const MIDDLE = new Vector3();
const WAY = new Vector3();
const SIZE = new Vector3();
const TURN = new Quaternion();
const UNTURNED = new Quaternion();

type Place = readonly [x: number, y: number, z: number];

/** A cord runs up behind the cloth, wherever that hangs behind the rings. */
function behindCloth(points: readonly Place[], backAt: (x: number, y: number) => number): Place[] {
  return points.flatMap((to, k): Place[] => {
    const from = points[k - 1];
    const pieces = from === undefined ? 1 : Math.max(1, Math.ceil(Math.abs(to[1] - from[1]) / PIECE_MM));
    return Array.from({ length: pieces }, (_, piece): Place => {
      const share = (piece + 1) / pieces;
      const [x, y] = [0, 1].map((c) => {
        const start = from?.[c as 0 | 1] ?? to[c as 0 | 1];
        return start + share * (to[c as 0 | 1] - start);
      }) as [number, number];
      return [x, y, Math.min(to[2], backAt(x, y)) - CORD_BEHIND_MM];
    });
  });
}

function tagMaterial(number: number, colour: string): SpriteMaterial {
  const side = 96;
  const canvas = document.createElement("canvas");
  canvas.width = side;
  canvas.height = side;
  const draw = canvas.getContext("2d");
  if (draw) {
    draw.beginPath();
    draw.arc(side / 2, side / 2, side / 2 - 6, 0, 2 * Math.PI);
    draw.fillStyle = "#fffdf8";
    draw.fill();
    draw.lineWidth = 9;
    draw.strokeStyle = colour;
    draw.stroke();
    draw.fillStyle = "#1e2a4a";
    draw.font = `600 ${side * 0.52}px "Source Sans 3", sans-serif`;
    draw.textAlign = "center";
    draw.textBaseline = "middle";
    draw.fillText(String(number), side / 2, side * 0.54);
  }
  const map = new CanvasTexture(canvas);
  map.colorSpace = SRGBColorSpace;
  return new SpriteMaterial({ map });
}

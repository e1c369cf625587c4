import {
  BoxGeometry,
  CanvasTexture,
  CylinderGeometry,
  Group,
  InstancedMesh,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  Quaternion,
  Sprite,
  SpriteMaterial,
  SRGBColorSpace,
  TorusGeometry,
  Vector3,
} from "three";
import { BATTEN, type BareBatten, CORD, type RigLine } from "../../../drawing/index.ts";

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
  readonly #ring = new TorusGeometry(RING_MM, WIRE_MM, 8, 18);
  readonly #metal = new MeshLambertMaterial({ color: "#c9ccd2" });
  readonly #round = new CylinderGeometry(CORD_MM, CORD_MM, 1, 7, 1, true);
  readonly #slat = new BoxGeometry(1, 1, 1);
  readonly #paints = new Map<string, MeshLambertMaterial>();
  readonly #tags = new Map<number, SpriteMaterial>();

  /** Puts rings and cords where they are at this height; `backAt` tells how far back the cloth reaches at a place. */
  hang(ringsMm: Float64Array, lines: readonly RigLine[], backAt: (x: number, y: number) => number): void {
    this.group.clear();
    const rings = new InstancedMesh(this.#ring, this.#metal, ringsMm.length / 3);
    for (let k = 0; k < ringsMm.length / 3; k++) {
      const [x, y, z] = [0, 1, 2].map((c) => ringsMm[3 * k + c] as number) as [number, number, number];
      rings.setMatrixAt(k, new Matrix4().makeTranslation(x, -y - RING_MM, z - RING_BEHIND_MM));
    }
    rings.frustumCulled = false;
    this.group.add(rings);
    for (const { number, colour = CORD, points: straight } of lines) {
      const points = number === undefined ? straight : behindCloth(straight, backAt);
      for (let k = 1; k < points.length; k++) this.#cord(points[k - 1] as Place, points[k] as Place, colour);
      const [low] = points;
      if (number !== undefined && low !== undefined) this.#tag(number, colour, low);
    }
  }

  /** Battens on the face, before the cloth that they lie on. */
  lay(battens: readonly BareBatten[], frontAt: (x: number, y: number) => number): void {
    for (const { left, right, top, bottom } of battens) {
      const [x, y] = [(left + right) / 2, (top + bottom) / 2];
      const batten = new Mesh(this.#slat, this.#paint(BATTEN));
      batten.scale.set(right - left, Math.max(LEAST_BATTEN_MM, bottom - top), BATTEN_DEEP_MM);
      batten.position.set(x, -y, frontAt(x, y) + BATTEN_DEEP_MM / 2);
      batten.castShadow = true;
      this.group.add(batten);
    }
  }

  dispose(): void {
    this.#ring.dispose();
    this.#round.dispose();
    this.#slat.dispose();
    for (const { map } of this.#tags.values()) map?.dispose();
  }

  #cord([ax, ay, az]: Place, [bx, by, bz]: Place, colour: string): void {
    const way = new Vector3(bx - ax, ay - by, bz - az);
    const length = way.length();
    if (length < 1) return;
    const mesh = new Mesh(this.#round, this.#paint(colour));
    mesh.position.set((ax + bx) / 2, -(ay + by) / 2, (az + bz) / 2);
    mesh.quaternion.copy(new Quaternion().setFromUnitVectors(UP, way.divideScalar(length)));
    mesh.scale.set(1, length, 1);
    this.group.add(mesh);
  }

  #paint(colour: string): MeshLambertMaterial {
    const known = this.#paints.get(colour) ?? new MeshLambertMaterial({ color: colour });
    this.#paints.set(colour, known);
    return known;
  }

  #tag(number: number, colour: string, [x, y, z]: Place): void {
    const known = this.#tags.get(number) ?? tagMaterial(number, colour);
    this.#tags.set(number, known);
    const tag = new Sprite(known);
    tag.scale.set(TAG_MM, TAG_MM, 1);
    tag.position.set(x, -y - TAG_MM * 0.8, z - TAG_BEHIND_MM);
    this.group.add(tag);
  }
}

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

import {
  BackSide,
  BufferAttribute,
  BufferGeometry,
  CanvasTexture,
  Color,
  DoubleSide,
  FrontSide,
  Group,
  Mesh,
  MeshLambertMaterial,
  RepeatWrapping,
  ShaderChunk,
  type Side,
  SRGBColorSpace,
} from "three";
import type { CommonNet, PlayedCloth } from "../../../drape/index.ts";
import type { PatternTile } from "../pattern-tile.ts";
import { behindEach, openEach } from "./cloth-shade.ts";

/** Both sides of a cloth, and how much light goes through it. */
export interface ClothLook {
  face: string;
  back: string;
  /** Share of the light that comes through all its layers. */
  through: number;
  pattern?: PatternTile;
}

/** Cloth that lies on cloth is drawn so much before it: between its points it would show through, mm. */
const APART_MM = 0.5;
/** Keeps a pattern sharp where it is seen at a slant. */
const ANISOTROPY = 8;

const LIT = "float dotNL = saturate( dot( geometryNormal, directLight.direction ) );";
/** What falls on the far side comes through as many layers as lie there. */
const LIT_THROUGH = `float facing = dot( geometryNormal, directLight.direction );
	float dotNL = saturate( facing ) + saturate( - facing ) * pow( through, 1.0 + vBehind );`;

/** The cloth: one net of points, drawn once for each of its sides. */
export class ClothMesh {
  readonly group = new Group();
  readonly #face = sideOf(FrontSide);
  readonly #back = sideOf(BackSide);
  #geometry = new BufferGeometry();
  #net: CommonNet | undefined;
  #isRefined = false;
  #casts = true;

  /** Puts the cloth where it hangs; `refine` once it rests. */
  hang(net: CommonNet, cloth: PlayedCloth): void {
    if (this.#net?.across !== net.across || this.#net.along !== net.along) this.#lay(net);
    this.#net = net;
    const position = this.#geometry.getAttribute("position") as BufferAttribute;
    const places = position.array as Float32Array;
    const { placesMm, strands } = cloth;
    const last = strands[net.along - 1] as number;
    for (let j = 0; j < net.along; j++) {
      const beforeMm = APART_MM * (last - (strands[j] as number));
      const end = 3 * net.across * (j + 1);
      for (let at = end - 3 * net.across; at < end; at += 3) {
        places[at] = placesMm[at] as number;
        places[at + 1] = -(placesMm[at + 1] as number);
        places[at + 2] = (placesMm[at + 2] as number) + beforeMm;
      }
    }
    position.needsUpdate = true;
    const normal = this.#geometry.getAttribute("normal") as BufferAttribute;
    writeNormals(places, normal.array as Float32Array, net);
    normal.needsUpdate = true;
    const uv = this.#geometry.getAttribute("uv") as BufferAttribute;
    (uv.array as Float32Array).set(cloth.clothMm);
    uv.needsUpdate = true;
    const open = this.#geometry.getAttribute("color") as BufferAttribute;
    openEach(net, places, normal.array as Float32Array, open.array as Float32Array);
    open.needsUpdate = true;
    this.#isRefined = false;
  }

  /** What is seen only when one looks closely, and takes as long as all the rest: how much cloth lies behind cloth. */
  refine(): void {
    if (this.#isRefined || this.#net === undefined) return;
    this.#isRefined = true;
    const { array } = this.#geometry.getAttribute("position") as BufferAttribute;
    const behind = this.#geometry.getAttribute("behind") as BufferAttribute;
    behindEach(this.#net, array as Float32Array, behind.array as Float32Array);
    behind.needsUpdate = true;
  }

  /** How far back the cloth reaches near a place, and how far forward, mm; 0 where there is none. */
  reachAt(x: number, y: number, nearMm: number): { back: number; front: number } {
    const net = this.#net;
    if (net === undefined) return { back: 0, front: 0 };
    const { array } = this.#geometry.getAttribute("position") as BufferAttribute;
    let upright = 0;
    for (let i = 0; i < net.across; i++)
      if (Math.abs((array[3 * i] as number) - x) < Math.abs((array[3 * upright] as number) - x)) upright = i;
    let [back, front] = [0, 0];
    for (let j = 0; j < net.along; j++) {
      const at = 3 * (j * net.across + upright);
      if (Math.abs((array[at + 1] as number) + y) >= nearMm) continue;
      back = Math.min(back, array[at + 2] as number);
      front = Math.max(front, array[at + 2] as number);
    }
    return { back, front };
  }

  look({ face, back, through, pattern }: ClothLook): void {
    this.#face.material.color = new Color(pattern === undefined ? face : "#ffffff");
    this.#back.material.color = new Color(back);
    this.#face.through.value = through;
    this.#back.through.value = through;
    this.#face.material.map?.dispose();
    const texture = pattern === undefined ? null : new CanvasTexture(pattern.canvas);
    this.#face.material.map = texture;
    this.#face.material.needsUpdate = true;
    if (pattern === undefined || texture === null) return;
    texture.colorSpace = SRGBColorSpace;
    texture.wrapS = RepeatWrapping;
    texture.wrapT = RepeatWrapping;
    texture.anisotropy = ANISOTROPY;
    // Texture places are the cloth's own, in mm: one tile is one step.
    const [x, y] = pattern.originMm;
    const [w, h] = pattern.tileMm;
    texture.repeat.set(1 / w, -1 / h);
    texture.offset.set(-x / w, y / h);
  }

  castsShadow(casts: boolean): void {
    this.#casts = casts;
    const [face] = this.group.children;
    if (face !== undefined) face.castShadow = casts;
  }

  dispose(): void {
    this.#geometry.dispose();
    this.#face.material.map?.dispose();
    this.#face.material.dispose();
    this.#back.material.dispose();
  }

  #lay({ across, along }: CommonNet): void {
    this.#geometry.dispose();
    const count = across * along;
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(new Float32Array(3 * count), 3));
    geometry.setAttribute("normal", new BufferAttribute(new Float32Array(3 * count), 3));
    geometry.setAttribute("color", new BufferAttribute(new Float32Array(3 * count), 3));
    geometry.setAttribute("uv", new BufferAttribute(new Float32Array(2 * count), 2));
    geometry.setAttribute("behind", new BufferAttribute(new Float32Array(count), 1));
    const corners: number[] = [];
    for (let j = 0; j + 1 < along; j++) {
      for (let i = 0; i + 1 < across; i++) {
        const [a, b] = [j * across + i, j * across + i + 1];
        const [c, d] = [b + across, a + across];
        corners.push(a, d, c, a, c, b);
      }
    }
    geometry.setIndex(corners);
    this.#geometry = geometry;
    this.group.clear();
    for (const { material } of [this.#face, this.#back]) {
      const mesh = new Mesh(geometry, material);
      mesh.receiveShadow = true;
      // Once for both sides.
      mesh.castShadow = this.#casts && material === this.#face.material;
      // It is what the picture is of: never out of sight.
      mesh.frustumCulled = false;
      this.group.add(mesh);
    }
  }
}

function sideOf(side: Side) {
  const through = { value: 0 };
  const material = new MeshLambertMaterial({ side, shadowSide: DoubleSide, vertexColors: true });
  material.onBeforeCompile = (shader) => {
    shader.uniforms.through = through;
    shader.vertexShader = shader.vertexShader.replace(
      "void main() {",
      "attribute float behind;\nvarying float vBehind;\nvoid main() {\n\tvBehind = behind;",
    );
    const lambert = ShaderChunk.lights_lambert_pars_fragment.replace(LIT, LIT_THROUGH);
    shader.fragmentShader = shader.fragmentShader.replace(
      "#include <lights_lambert_pars_fragment>",
      `uniform float through;\nvarying float vBehind;\n${lambert}`,
    );
  };
  return { material, through };
}

/** Which way the cloth faces at each point, by its neighbours along and across. */
function writeNormals(places: Float32Array, normals: Float32Array, { across, along }: CommonNet): void {
  for (let j = 0; j < along; j++) {
    const up = across * Math.max(0, j - 1);
    const down = across * Math.min(along - 1, j + 1);
    for (let i = 0; i < across; i++) {
      const left = 3 * (j * across + Math.max(0, i - 1));
      const right = 3 * (j * across + Math.min(across - 1, i + 1));
      const [a, b] = [3 * (up + i), 3 * (down + i)];
      const ux = (places[right] as number) - (places[left] as number);
      const uy = (places[right + 1] as number) - (places[left + 1] as number);
      const uz = (places[right + 2] as number) - (places[left + 2] as number);
      const vx = (places[b] as number) - (places[a] as number);
      const vy = (places[b + 1] as number) - (places[a + 1] as number);
      const vz = (places[b + 2] as number) - (places[a + 2] as number);
      const nx = vy * uz - vz * uy;
      const ny = vz * ux - vx * uz;
      const nz = vx * uy - vy * ux;
      const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
      const to = 3 * (j * across + i);
      normals[to] = nx / length;
      normals[to + 1] = ny / length;
      normals[to + 2] = nz / length;
    }
  }
}

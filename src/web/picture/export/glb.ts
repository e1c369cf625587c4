import { ColorUtils, Document, type Material, type Primitive, WebIO } from "@gltf-transform/core";
import type { CommonNet, PlayedCloth } from "../../../drape/index.ts";

/** What a saved model shows on its two sides. */
export interface GlbLook {
  face: string;
  back: string;
  /** One tile of the pattern as PNG, and the cloth that it covers, mm, with where one begins. */
  pattern?: {
    png: Uint8Array;
    originMm: readonly [x: number, y: number];
    tileMm: readonly [width: number, height: number];
  };
}

const MM_PER_M = 1000;
/** glTF's number for a texture that is repeated. */
const REPEAT = 10497;

/**
 * The cloth as binary glTF 2.0 (ISO/IEC 12113): metres, y up, its face towards +z. Face and back are two surfaces of one net,
 * each seen from its own side.
 */
export async function clothGlb(
  net: CommonNet,
  cloth: PlayedCloth,
  look: GlbLook,
  name: string,
): Promise<Uint8Array> {
  const document = new Document();
  document.getRoot().getAsset().generator = "Shadewright";
  const buffer = document.createBuffer();
  const count = net.across * net.along;
  const accessor = (
    array: Float32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>,
    type: "VEC3" | "VEC2" | "SCALAR",
  ) => document.createAccessor().setType(type).setArray(array).setBuffer(buffer);
  const places = Float32Array.from({ length: 3 * count }, (_, k) => {
    const value = (cloth.placesMm[k] as number) / MM_PER_M;
    return k % 3 === 1 ? -value : value;
  });
  const corners = cornersOf(net, places);
  const normals = normalsOf(places, corners);
  const { originMm, tileMm } = look.pattern ?? { originMm: [0, 0], tileMm: [MM_PER_M, MM_PER_M] };
  const onTile = Float32Array.from(
    { length: 2 * count },
    (_, k) => ((cloth.clothMm[k] as number) - (originMm[k % 2] as number)) / (tileMm[k % 2] as number),
  );
  const position = accessor(places, "VEC3");
  const texture = accessor(onTile, "VEC2");
  const side = (
    indices: Uint32Array<ArrayBuffer>,
    facing: Float32Array<ArrayBuffer>,
    material: Material,
  ): Primitive =>
    document
      .createPrimitive()
      .setAttribute("POSITION", position)
      .setAttribute("NORMAL", accessor(facing, "VEC3"))
      .setAttribute("TEXCOORD_0", texture)
      .setIndices(accessor(indices, "SCALAR"))
      .setMaterial(material);
  const face = plain(document, "Face", look.face);
  if (look.pattern !== undefined) {
    face.setBaseColorFactor([1, 1, 1, 1]);
    face.setBaseColorTexture(
      document.createTexture("Pattern").setImage(look.pattern.png).setMimeType("image/png"),
    );
    face.getBaseColorTextureInfo()?.setWrapS(REPEAT).setWrapT(REPEAT);
  }
  const mesh = document
    .createMesh(name)
    .addPrimitive(side(corners, normals, face))
    .addPrimitive(
      side(
        corners.map((_, k) => corners[k - (k % 3) + (2 - (k % 3))] as number),
        normals.map((part) => -part),
        plain(document, "Back", look.back),
      ),
    );
  const node = document.createNode(name).setMesh(mesh);
  document.createScene(name).addChild(node);
  return new WebIO().writeBinary(document);
}

function plain(document: Document, name: string, colour: string): Material {
  return document
    .createMaterial(name)
    .setBaseColorFactor(ColorUtils.hexToFactor(Number.parseInt(colour.slice(1), 16), [0, 0, 0, 1]))
    .setRoughnessFactor(1)
    .setMetallicFactor(0);
}

/** Triangles of the net without those that have no area: a line that stands twice has none beside it. */
function cornersOf({ across, along }: CommonNet, places: Float32Array): Uint32Array<ArrayBuffer> {
  const corners: number[] = [];
  const isSame = (a: number, b: number) => [0, 1, 2].every((c) => places[3 * a + c] === places[3 * b + c]);
  const add = (a: number, b: number, c: number) => {
    if (!isSame(a, b) && !isSame(b, c) && !isSame(a, c)) corners.push(a, b, c);
  };
  for (let j = 0; j + 1 < along; j++) {
    for (let i = 0; i + 1 < across; i++) {
      const a = j * across + i;
      add(a, a + across, a + across + 1);
      add(a, a + across + 1, a + 1);
    }
  }
  return Uint32Array.from(corners);
}

/** Each point faces as its triangles do on the mean, by their areas. */
function normalsOf(places: Float32Array, corners: Uint32Array): Float32Array<ArrayBuffer> {
  const normals = new Float32Array(places.length);
  const at = (n: number, c: number) => places[3 * n + c] as number;
  for (let k = 0; k < corners.length; k += 3) {
    const [a, b, c] = [corners[k] as number, corners[k + 1] as number, corners[k + 2] as number];
    const u = [0, 1, 2].map((d) => at(b, d) - at(a, d)) as [number, number, number];
    const v = [0, 1, 2].map((d) => at(c, d) - at(a, d)) as [number, number, number];
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    for (const corner of [a, b, c])
      for (let d = 0; d < 3; d++)
        normals[3 * corner + d] = (normals[3 * corner + d] as number) + (n[d] as number);
  }
  for (let k = 0; k < normals.length; k += 3) {
    const length = Math.hypot(normals[k] as number, normals[k + 1] as number, normals[k + 2] as number);
    if (length === 0) normals.set([0, 0, 1], k);
    else for (let d = 0; d < 3; d++) normals[k + d] = (normals[k + d] as number) / length;
  }
  return normals;
}

import { type BufferGeometry, Color, Group, InstancedMesh, type Material, type Matrix4 } from "three";

const FIRST_ROOM = 64;
const WHITE = new Color();

/** Many of one shape: one call to the painter for all of them, and kept from one height to the next. */
export class Instances {
  readonly group = new Group();
  readonly #geometry: BufferGeometry;
  readonly #material: Material;
  readonly #castsShadow: boolean;
  #mesh: InstancedMesh | undefined;
  #room = 0;
  #count = 0;

  constructor(geometry: BufferGeometry, material: Material, castsShadow = false) {
    this.#geometry = geometry;
    this.#material = material;
    this.#castsShadow = castsShadow;
  }

  /** Forgets those that were set; what is set now is shown by `end`. */
  begin(): void {
    this.#count = 0;
  }

  /** In a colour of its own, if all are. */
  set(place: Matrix4, colour?: Color): void {
    if (this.#count === this.#room) this.#makeRoom();
    this.#mesh?.setMatrixAt(this.#count, place);
    if (colour !== undefined) this.#mesh?.setColorAt(this.#count, colour);
    this.#count += 1;
  }

  end(): void {
    if (this.#mesh === undefined) return;
    this.#mesh.count = this.#count;
    this.#mesh.visible = this.#count > 0;
    this.#mesh.instanceMatrix.needsUpdate = true;
    if (this.#mesh.instanceColor !== null) this.#mesh.instanceColor.needsUpdate = true;
  }

  dispose(): void {
    this.#mesh?.dispose();
  }

  #makeRoom(): void {
    const before = this.#mesh;
    this.#room = Math.max(FIRST_ROOM, 2 * this.#room);
    const mesh = new InstancedMesh(this.#geometry, this.#material, this.#room);
    // Each lies elsewhere than the one that it was made for.
    mesh.frustumCulled = false;
    mesh.castShadow = this.#castsShadow;
    if (before !== undefined) {
      mesh.instanceMatrix.array.set(before.instanceMatrix.array);
      if (before.instanceColor !== null) {
        mesh.setColorAt(0, WHITE);
        mesh.instanceColor?.array.set(before.instanceColor.array);
      }
      this.group.remove(before);
      before.dispose();
    }
    this.group.add(mesh);
    this.#mesh = mesh;
  }
}

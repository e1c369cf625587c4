import {
  BoxGeometry,
  type BufferGeometry,
  DoubleSide,
  Group,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type Object3D,
  PlaneGeometry,
  ShadowMaterial,
} from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import { sashBoxes, WINDOW_COLOURS, type WindowBehind } from "../../../drawing/index.ts";

/** A wall goes on so far beyond what a picture shows of it, mm. */
const BEYOND_MM = 2500;
const SASH_DEEP_MM = 30;

/** How dark the shadow of a shade lies on the wall of a photo. */
const PHOTO_SHADOW = 0.28;

/** Wall, opening with pane and sash, and the board: what stands round a shade. */
export class RoomAround {
  readonly room: Group;
  readonly board: Group;
  readonly #plaster = new MeshLambertMaterial({ color: WINDOW_COLOURS.wall });
  /** Seen through, but for the shadow on it: what lies behind it is hidden all the same. */
  readonly #catcher = new ShadowMaterial({ opacity: PHOTO_SHADOW });

  constructor(behind: WindowBehind) {
    this.room = roomGroup(behind, this.#plaster);
    this.board = boardGroup(behind.board);
  }

  /** In a photo the wall is that of the photo, and so is the window. */
  inPhoto(is: boolean): void {
    this.room.visible = true;
    for (const part of this.room.children) {
      const isWall = part.name === WALL_PART;
      part.visible = isWall || !is;
      // Before everything else, so that it hides what comes after.
      part.renderOrder = is ? -1 : 0;
      if (isWall) (part as Mesh).material = is ? this.#catcher : this.#plaster;
    }
  }

  dispose(): void {
    for (const group of [this.room, this.board])
      group.traverse((one: Object3D) => {
        if (!(one instanceof Mesh)) return;
        one.geometry.dispose();
        for (const material of [one.material].flat()) material.dispose();
      });
    this.#catcher.dispose();
  }
}

const WALL_PART = "wall";

function roomGroup({ wall, wallZ, opening, paneZ }: WindowBehind, plaster: MeshLambertMaterial): Group {
  const room = new Group();
  const edge = {
    left: wall.left - BEYOND_MM,
    right: wall.right + BEYOND_MM,
    top: wall.top - BEYOND_MM,
    bottom: wall.bottom + BEYOND_MM,
  };
  const hole = opening ?? { x: 0, y: 0, width: 0, height: 0 };
  const [right, bottom] = [hole.x + hole.width, hole.y + hole.height];
  const plane = (x0: number, y0: number, x1: number, y1: number, z: number) =>
    new PlaneGeometry(x1 - x0, y1 - y0).translate((x0 + x1) / 2, -(y0 + y1) / 2, z);
  // Whole from top to bottom beside the opening: light would come in by a seam.
  const walls = (
    [
      [edge.left, edge.top, hole.x, edge.bottom],
      [right, edge.top, edge.right, edge.bottom],
      [hole.x, edge.top, right, hole.y],
      [hole.x, bottom, right, edge.bottom],
    ] as const
  )
    .filter(([x0, y0, x1, y1]) => x1 - x0 >= 1 && y1 - y0 >= 1)
    .map(([x0, y0, x1, y1]) => plane(x0, y0, x1, y1, wallZ));
  const plastered = new Mesh(inOne(walls), plaster);
  plastered.receiveShadow = true;
  plastered.castShadow = true;
  plastered.name = WALL_PART;
  plaster.shadowSide = DoubleSide;
  room.add(plastered);
  if (opening === undefined) return room;
  const deep = wallZ - paneZ;
  const z = (wallZ + paneZ) / 2;
  const [cx, cy] = [hole.x + hole.width / 2, hole.y + hole.height / 2];
  const [quarter, level, upright] = [Math.PI / 2, [hole.width, deep] as const, [deep, hole.height] as const];
  const reveal = new Mesh(
    inOne([
      new PlaneGeometry(...level).rotateX(quarter).translate(cx, -hole.y, z),
      new PlaneGeometry(...level).rotateX(-quarter).translate(cx, -bottom, z),
      new PlaneGeometry(...upright).rotateY(quarter).translate(hole.x, -cy, z),
      new PlaneGeometry(...upright).rotateY(-quarter).translate(right, -cy, z),
    ]),
    new MeshLambertMaterial({ color: WINDOW_COLOURS.reveal }),
  );
  reveal.receiveShadow = true;
  const pane = new Mesh(
    plane(hole.x, hole.y, right, bottom, paneZ - SASH_DEEP_MM),
    new MeshBasicMaterial({ color: WINDOW_COLOURS.pane }),
  );
  const bars = sashBoxes([hole.x, hole.y, right, bottom]).map(([x0, y0, x1, y1]) =>
    new BoxGeometry(x1 - x0, y1 - y0, SASH_DEEP_MM).translate(
      (x0 + x1) / 2,
      -(y0 + y1) / 2,
      paneZ - SASH_DEEP_MM / 2,
    ),
  );
  const sash = new Mesh(inOne(bars), new MeshLambertMaterial({ color: WINDOW_COLOURS.frame }));
  sash.castShadow = true;
  room.add(reveal, pane, sash);
  return room;
}

/** Parts of one paint as one shape: a call to the painter costs as much as thousands of points. */
function inOne(parts: BufferGeometry[]): BufferGeometry {
  const whole = mergeGeometries(parts);
  for (const part of parts) part.dispose();
  return whole;
}

function boardGroup({ left, right, thickness, depth }: WindowBehind["board"]): Group {
  const group = new Group();
  const wood = new Mesh(
    new BoxGeometry(right - left, thickness, depth),
    new MeshLambertMaterial({ color: WINDOW_COLOURS.wood }),
  );
  // Its front a hair behind the cloth that is stapled to it.
  wood.position.set((left + right) / 2, -thickness / 2, -depth / 2 - 1);
  wood.castShadow = true;
  wood.receiveShadow = true;
  group.add(wood);
  return group;
}

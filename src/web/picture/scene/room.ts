import {
  BoxGeometry,
  DoubleSide,
  Group,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type Object3D,
  PlaneGeometry,
  ShadowMaterial,
} from "three";
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
  const wallPart = (x0: number, y0: number, x1: number, y1: number) => {
    if (x1 - x0 < 1 || y1 - y0 < 1) return;
    const part = new Mesh(new PlaneGeometry(x1 - x0, y1 - y0), plaster);
    part.position.set((x0 + x1) / 2, -(y0 + y1) / 2, wallZ);
    part.receiveShadow = true;
    part.castShadow = true;
    part.name = WALL_PART;
    room.add(part);
  };
  // Whole from top to bottom beside the opening: light would come in by a seam.
  wallPart(edge.left, edge.top, hole.x, edge.bottom);
  wallPart(right, edge.top, edge.right, edge.bottom);
  wallPart(hole.x, edge.top, right, hole.y);
  wallPart(hole.x, bottom, right, edge.bottom);
  plaster.shadowSide = DoubleSide;
  if (opening !== undefined) {
    const deep = wallZ - paneZ;
    const reveal = new MeshLambertMaterial({ color: WINDOW_COLOURS.reveal });
    const side = (width: number, height: number, x: number, y: number, turn: "x" | "y", angle: number) => {
      const part = new Mesh(new PlaneGeometry(width, height), reveal);
      part.position.set(x, -y, (wallZ + paneZ) / 2);
      part.rotation[turn] = angle;
      part.receiveShadow = true;
      room.add(part);
    };
    const [cx, cy] = [hole.x + hole.width / 2, hole.y + hole.height / 2];
    side(hole.width, deep, cx, hole.y, "x", Math.PI / 2);
    side(hole.width, deep, cx, bottom, "x", -Math.PI / 2);
    side(deep, hole.height, hole.x, cy, "y", Math.PI / 2);
    side(deep, hole.height, right, cy, "y", -Math.PI / 2);
    const pane = new Mesh(
      new PlaneGeometry(hole.width, hole.height),
      new MeshBasicMaterial({ color: WINDOW_COLOURS.pane }),
    );
    pane.position.set(cx, -cy, paneZ - SASH_DEEP_MM);
    room.add(pane);
    const paint = new MeshLambertMaterial({ color: WINDOW_COLOURS.frame });
    for (const [x0, y0, x1, y1] of sashBoxes([hole.x, hole.y, right, bottom]) as [
      number,
      number,
      number,
      number,
    ][]) {
      const bar = new Mesh(new BoxGeometry(x1 - x0, y1 - y0, SASH_DEEP_MM), paint);
      bar.position.set((x0 + x1) / 2, -(y0 + y1) / 2, paneZ - SASH_DEEP_MM / 2);
      bar.castShadow = true;
      room.add(bar);
    }
  }
  return room;
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

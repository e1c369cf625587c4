import {
  AmbientLight,
  Color,
  DirectionalLight,
  HemisphereLight,
  Matrix4,
  PCFShadowMap,
  PerspectiveCamera,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import type { CommonNet, PlayedCloth } from "../../../drape/index.ts";
import {
  type BareBatten,
  KEY,
  KEY_SHARE,
  type RigLine,
  ROOM_SHARE,
  SKY_SHARE,
  type WindowBehind,
} from "../../../drawing/index.ts";
import type { PlanarPose } from "../../../mechanics/index.ts";
import { type ClothLook, ClothMesh } from "./cloth-mesh.ts";
import type { Orbit } from "./orbit.ts";
import { Rig } from "./rig.ts";
import { RoomAround } from "./room.ts";

export type LightFrom = "room" | "window";

/** Light that adds up to a cloth's own colour: a diffuse face sends back a share 1/π of what falls on it. */
const FULL = Math.PI;
/** Daylight through the window, against the light of a room, and what is left of that: a picture's choice. */
const DAY_SHARE = 1.9;
const DIM = { room: 0.2, sky: 0.12 };
/** From where the sun stands behind the wall. */
const DAY = new Vector3(0.3, 0.75, -1).normalize();
/** Cords and battens lie on cloth that hangs no farther above or below them than this, mm. */
const CORD_NEAR_MM = 25;
const BATTEN_NEAR_MM = 10;
const LIGHT_AWAY_MM = 4000;
/** The shadow's fineness, and the picture's, at rest and while it moves: what moves is not looked at so closely. */
const SHADOW_PX = { rest: 1024, moving: 512 };
const MOVING_SHARE = 0.5;
const BACKGROUND = new Color("#e6e1d8");
/** The eye stands so far off, in the larger side of what is seen, and never nearer than this, mm. */
const DISTANCES = 1.9;
const LEAST_DISTANCE_MM = 3000;
/** The nearest and farthest that is drawn, in the distance of the eye: no wider than need be, or near layers are mixed up. */
const NEAREST = 0.35;
const FARTHEST = 6;
/** What is seen beyond the wall that a picture shows, as a share. */
const MARGIN = 1.02;
const MOST_PIXEL_RATIO = 2;

/** Everything that is seen, and the light on it. Draws when asked, and not otherwise. */
export class LiveScene {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(30, 1, 50, 60_000);
  readonly #key = new DirectionalLight("#ffffff");
  readonly #room = new AmbientLight("#ffffff");
  readonly #sky = new HemisphereLight("#ffffff", "#000000");
  readonly #cloth = new ClothMesh();
  readonly #rig = new Rig();
  #around: RoomAround | undefined;
  #behind: WindowBehind | undefined;
  #lightFrom: LightFrom = "room";
  /** Seen from behind, as on the table: the light of the room comes from there too. */
  #fromBehind = false;
  #hung: { ringsMm: Float64Array; rig: readonly RigLine[] } = { ringsMm: new Float64Array(0), rig: [] };
  #isMoving = false;

  /** Throws where the browser has no WebGL 2. */
  constructor(canvas: HTMLCanvasElement) {
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, preserveDrawingBuffer: true });
    this.#renderer.shadowMap.enabled = true;
    this.#renderer.shadowMap.type = PCFShadowMap;
    this.#renderer.shadowMap.autoUpdate = false;
    this.#scene.background = BACKGROUND;
    this.#key.castShadow = true;
    this.#key.shadow.mapSize.set(SHADOW_PX.rest, SHADOW_PX.rest);
    this.#key.shadow.bias = -0.002;
    this.#key.shadow.normalBias = 3;
    this.#scene.add(this.#key, this.#key.target, this.#room, this.#sky, this.#cloth.group, this.#rig.group);
    this.light("room");
  }

  /** Drawn more coarsely, and so at once, until it rests. */
  set isMoving(isMoving: boolean) {
    if (this.#isMoving === isMoving) return;
    this.#isMoving = isMoving;
    const { shadow } = this.#key;
    const px = isMoving ? SHADOW_PX.moving : SHADOW_PX.rest;
    shadow.mapSize.set(px, px);
    shadow.map?.dispose();
    shadow.map = null;
    this.#renderer.shadowMap.needsUpdate = true;
  }

  /** Wall, opening and board round the shade. */
  stand(behind: WindowBehind): void {
    this.#takeDown();
    this.#around = new RoomAround(behind);
    this.#behind = behind;
    this.#scene.add(this.#around.room, this.#around.board);
    this.light(this.#lightFrom);
  }

  /** Cloth, rings and cords at one height. */
  hang(net: CommonNet, cloth: PlayedCloth, rig: readonly RigLine[], battens: readonly BareBatten[]): void {
    this.#cloth.hang(net, cloth);
    this.#hung = { ringsMm: cloth.ringsMm, rig };
    this.#hangRig();
    this.#rig.lay(battens, (x, y) => this.#cloth.reachAt(x, y, BATTEN_NEAR_MM).front);
    this.#renderer.shadowMap.needsUpdate = true;
  }

  #hangRig(): void {
    const { ringsMm, rig } = this.#hung;
    const backAt = (x: number, y: number) => this.#cloth.reachAt(x, y, CORD_NEAR_MM).back;
    this.#rig.hang(ringsMm, rig, this.#fromBehind, backAt);
  }

  look(look: ClothLook): void {
    this.#cloth.look(look);
  }

  /** By day from behind the cloth, or by the light of the room. */
  light(from: LightFrom): void {
    this.#lightFrom = from;
    const isDay = from === "window";
    const { x, y, reach } = this.#middle();
    const way = isDay ? DAY : new Vector3(KEY[0], -KEY[1], this.#fromBehind ? -KEY[2] : KEY[2]);
    this.#key.target.position.set(x, y, 0);
    this.#key.position.copy(this.#key.target.position).addScaledVector(way, LIGHT_AWAY_MM + reach);
    this.#key.intensity = FULL * (isDay ? DAY_SHARE : KEY_SHARE);
    this.#room.intensity = FULL * (isDay ? DIM.room : ROOM_SHARE);
    this.#sky.intensity = FULL * (isDay ? DIM.sky : SKY_SHARE);
    const { camera } = this.#key.shadow;
    Object.assign(camera, {
      left: -reach,
      right: reach,
      top: reach,
      bottom: -reach,
      near: 100,
      far: 2 * (LIGHT_AWAY_MM + reach),
    });
    camera.updateProjectionMatrix();
    // Through cloth the light is told by its layers; only wall, board and sash stand in its way.
    this.#cloth.castsShadow(!isDay);
    this.#renderer.shadowMap.needsUpdate = true;
  }

  draw(orbit: Orbit, widthPx: number, heightPx: number): void {
    if (widthPx < 1 || heightPx < 1) return;
    this.#prepare(widthPx, heightPx);
    this.#aim(orbit, widthPx / heightPx);
    const fromBehind = this.#camera.position.z < 0;
    if (this.#around) this.#around.room.visible = !fromBehind;
    if (fromBehind !== this.#fromBehind) {
      this.#fromBehind = fromBehind;
      this.#hangRig();
      this.light(this.#lightFrom);
    }
    this.#renderer.render(this.#scene, this.#camera);
  }

  /** Into a photo of the window, which shows through: the wall only hides what lies behind it, and takes the shadow. */
  drawInPhoto({ pose, opening, photo }: InPhoto, widthPx: number, heightPx: number, ratio?: number): void {
    if (widthPx < 1 || heightPx < 1) return;
    const renderer = this.#renderer;
    this.#prepare(widthPx, heightPx, ratio);
    this.#scene.background = null;
    this.#around?.inPhoto(true);
    const camera = this.#camera;
    const view = viewOf(pose, opening, this.#behind?.wallZ ?? 0);
    camera.matrixAutoUpdate = false;
    camera.matrixWorld.copy(view).invert();
    camera.matrix.copy(camera.matrixWorld);
    camera.matrix.decompose(camera.position, camera.quaternion, camera.scale);
    camera.fov = (2 * Math.atan(photo.height / 2 / pose.focalPx) * 180) / Math.PI;
    camera.aspect = photo.width / photo.height;
    reachFrom(camera, Math.hypot(...pose.originMm));
    camera.updateProjectionMatrix();
    renderer.render(this.#scene, camera);
    camera.matrixAutoUpdate = true;
    this.#around?.inPhoto(false);
    this.#scene.background = BACKGROUND;
  }

  clear(): void {
    this.#renderer.clear();
  }

  dispose(): void {
    this.#takeDown();
    this.#cloth.dispose();
    this.#rig.dispose();
    this.#renderer.dispose();
  }

  /** As fine as the moment wants it. A canvas is emptied whenever it is sized: only where it is to be another. */
  #prepare(widthPx: number, heightPx: number, ratio?: number): void {
    const fine = Math.min(MOST_PIXEL_RATIO, devicePixelRatio);
    const wanted = ratio ?? (this.#isMoving ? MOVING_SHARE * fine : fine);
    const renderer = this.#renderer;
    const now = renderer.getSize(new Vector2());
    if (!this.#isMoving) this.#cloth.refine();
    if (renderer.getPixelRatio() === wanted && now.x === widthPx && now.y === heightPx) return;
    renderer.setDrawingBufferSize(widthPx, heightPx, wanted);
  }

  #aim({ aroundRad, aboveRad, near }: Orbit, aspect: number): void {
    const { x, y, width, height } = this.#middle();
    const distance = Math.max(LEAST_DISTANCE_MM, DISTANCES * Math.max(width, height));
    const camera = this.#camera;
    reachFrom(camera, distance);
    const flat = distance * Math.cos(aboveRad);
    camera.position.set(
      x + flat * Math.sin(aroundRad),
      y + distance * Math.sin(aboveRad),
      flat * Math.cos(aroundRad),
    );
    camera.lookAt(x, y, 0);
    const half = (MARGIN * Math.max(height, width / aspect)) / 2 / near;
    camera.fov = (2 * Math.atan(half / distance) * 180) / Math.PI;
    camera.aspect = aspect;
    camera.updateProjectionMatrix();
  }

  #takeDown(): void {
    if (this.#around === undefined) return;
    this.#scene.remove(this.#around.room, this.#around.board);
    this.#around.dispose();
  }

  #middle() {
    const { left, right, top, bottom } = this.#behind?.wall ?? { left: 0, right: 1000, top: 0, bottom: 1500 };
    const [width, height] = [right - left, bottom - top];
    return {
      x: (left + right) / 2,
      y: -(top + bottom) / 2,
      width,
      height,
      reach: 0.62 * Math.hypot(width, height),
    };
  }
}

function reachFrom(camera: PerspectiveCamera, distanceMm: number): void {
  camera.near = NEAREST * distanceMm;
  camera.far = FARTHEST * distanceMm;
}

/** A photo of the window: from where it was taken, and where the opening is on the shade. */
export interface InPhoto {
  pose: PlanarPose;
  opening: { x: number; y: number };
  photo: { width: number; height: number };
}

/** From the scene (y up) to the camera of a photo (y up, z towards it), by the pose of the opening in the wall. */
function viewOf({ axes, originMm }: PlanarPose, opening: { x: number; y: number }, wallZ: number): Matrix4 {
  const [right, down, away] = axes;
  const row = (c: 0 | 1 | 2, sign: 1 | -1) => {
    const [x, y, z] = [right[c], -down[c], -away[c]] as const;
    // The opening's corner is the origin of the pose.
    const shift = originMm[c] - x * opening.x + y * opening.y - z * wallZ;
    return [sign * x, sign * y, sign * z, sign * shift] as const;
  };
  return new Matrix4().set(...row(0, 1), ...row(1, -1), ...row(2, -1), 0, 0, 0, 1);
}

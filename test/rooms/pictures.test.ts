import { randomUUID } from "node:crypto";
import { deflateSync } from "node:zlib";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Job } from "../../src/job/index.ts";
import { openCodecs, openEmbedded } from "../../src/server/index.ts";
import { pngOf } from "../e2e/png.ts";
import { jobOf, operationOf, type TestPerson, TestWorkroom } from "./room-for-tests.ts";

let here: TestWorkroom;
let owner: TestPerson;
beforeAll(async () => {
  here = new TestWorkroom(await openEmbedded());
  owner = await here.workroom();
});
afterAll(() => here.close());

const SECRET = "GPS 51.4779 N 0.0015 W";

function urlOf(kind: string, bytes: Uint8Array): string {
  return `data:image/${kind};base64,${Buffer.from(bytes).toString("base64")}`;
}

/** A picture whose left half is red and whose right half is blue. */
async function jpegOf(width: number, height: number): Promise<Buffer> {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let at = 0; at < width * height; at++) {
    data.set(at % width < width / 2 ? [220, 20, 20, 255] : [20, 20, 220, 255], at * 4);
  }
  return Buffer.from(await (await openCodecs()).encodeJpeg({ data, width, height }, 90));
}

/** A camera's note (Exif, CIPA DC-008: APP1 after the beginning), how the camera was turned, and a place. */
function withNote(jpeg: Buffer, orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write("MM", 0, "latin1");
  tiff.writeUInt16BE(42, 2);
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(0x01_12, 10);
  tiff.writeUInt16BE(3, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  const body = Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff, Buffer.from(SECRET, "latin1")]);
  const head = Buffer.alloc(4);
  head.writeUInt16BE(0xff_e1, 0);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2), Buffer.from(SECRET, "latin1")]);
}

function clothWith(image: string) {
  const photo = { image, leftShare: 0, topShare: 0, widthShare: 1, heightShare: 1 };
  return { id: "own-cloth", name: "Own", usableWidthMm: 1370, photo };
}

function jobWith(image: string): unknown {
  return { ...jobOf(), cloths: [clothWith(image)] };
}

const imageOf = (job: Job) => job.cloths?.[0]?.photo?.image ?? "";

async function kept(image: string): Promise<string> {
  const job = jobWith(image) as Job;
  await owner.ask("makeJob", { body: { request: randomUUID(), job } }, 201);
  return imageOf((await owner.ask("job", { params: { job: job.id } }, 200)).body.job);
}

async function pixelsOf(url: string) {
  const bytes = Buffer.from(url.slice(url.indexOf(",") + 1), "base64");
  return await (await openCodecs()).decode.jpeg(new Uint8Array(bytes).buffer);
}

test("a picture is written anew: it shows the same, and the camera’s note and what hid behind its end are gone", async () => {
  const sent = urlOf("jpeg", withNote(await jpegOf(64, 32), 1));
  const own = await kept(sent);
  expect(own.startsWith("data:image/jpeg;base64,")).toBe(true);
  const bytes = Buffer.from(own.slice(own.indexOf(",") + 1), "base64");
  expect(bytes.includes("GPS")).toBe(false);
  expect(bytes.includes("Exif")).toBe(false);
  const { width, height, data } = await pixelsOf(own);
  expect([width, height]).toEqual([64, 32]);
  expect(data[0]).toBeGreaterThan(180);
  expect(data[4 * 63]).toBeLessThan(60);
  // One that was made here goes through untouched: undo and copies lose nothing.
  expect(await kept(own)).toBe(own);
});

test("it is turned as the camera noted, since the note does not stay", async () => {
  // Exif 2.32, 4.6.4: orientation 6 is shown turned a quarter clockwise, so that the left half is on top.
  const { width, height, data } = await pixelsOf(
    await kept(urlOf("jpeg", withNote(await jpegOf(64, 32), 6))),
  );
  expect([width, height]).toEqual([32, 64]);
  expect(data[0]).toBeGreaterThan(180);
  expect(data[4 * 32 * 63]).toBeLessThan(60);
});

test("PNG becomes JPEG, whatever it calls itself; what shines through becomes white", async () => {
  const own = await kept(
    urlOf(
      "webp",
      pngOf(40, 20, (x) => (x < 20 ? [220, 20, 20] : [20, 20, 220])),
    ),
  );
  const { width, data } = await pixelsOf(own);
  expect([width, own.slice(0, 15)]).toEqual([40, "data:image/jpeg"]);
  expect(data[0]).toBeGreaterThan(180);
});

/** Small in bytes and vast once it is unpacked: 30,000 × 30,000 of one colour. */
function bomb(): Buffer {
  const png = Buffer.from(pngOf(1, 1, () => [0, 0, 0]));
  png.writeUInt32BE(30_000, 16);
  png.writeUInt32BE(30_000, 20);
  return Buffer.concat([png, deflateSync(Buffer.alloc(1_000_000))]);
}

test.each([
  ["text", () => Buffer.from("<svg onload='alert(1)'/>".repeat(4)), "PNG, JPEG or WebP"],
  ["a bomb", bomb, "pixels"],
  ["a picture cut short", () => pngOf(40, 40, (x, y) => [x, y, 7]).subarray(0, 60), "can be opened"],
])(
  "%s is no picture: the job is refused by field, and of several edits that one alone",
  async (_what, bytes, wanted) => {
    const image = urlOf("png", bytes());
    const job = jobWith(image);
    const told = await owner.ask("makeJob", { body: { request: randomUUID(), job } });
    expect([told.status, told.body.issues[0].field]).toEqual([400, "cloths.0.photo.image"]);
    expect(told.body.issues[0].wanted).toContain(wanted);
    const { id } = await owner.makeJob();
    const { answers } = await owner.sendAll(id, [
      operationOf(id, 0, [{ path: ["note"], to: "before" }]),
      operationOf(id, 0, [{ path: ["cloths", { id: "own-cloth" }], to: clothWith(image) }]),
      operationOf(id, 0, [{ path: ["client"], to: "after" }]),
    ]);
    expect(answers.map(({ ok }) => ok)).toEqual([true, false, true]);
  },
);

test("in an edit too; and who takes the picture away again means the one that it became", async () => {
  const { id } = await owner.makeJob();
  const sent = urlOf("jpeg", withNote(await jpegOf(48, 48), 1));
  const path = ["cloths", { id: "own-cloth" }];
  const other = { ...clothWith(sent).photo, leftShare: 0.5, widthShare: 0.5 };
  const first = await owner.send(id, 0, { path, to: clothWith(sent) });
  const numbered = first.answers[0];
  expect(JSON.stringify(numbered)).not.toContain(sent.slice(-40));
  const { answers } = await owner.send(id, 0, {
    path: [...path, "photo"],
    from: clothWith(sent).photo,
    to: other,
  });
  expect(answers[0]).toMatchObject({ ok: true, operation: { conflicts: [] } });
});

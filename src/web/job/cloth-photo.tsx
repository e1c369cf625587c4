import { type ChangeEvent, type PointerEvent, useRef, useState } from "react";
import { type ClothPhoto, clothPhotoSchema, LARGEST_PHOTO_CHARS, type Repeat } from "../../job/index.ts";
import { lengthText } from "../../units/index.ts";
import { Field } from "../inputs/field.tsx";
import { number } from "../inputs/spec.ts";
import { openPhoto } from "../picture/photo/open-photo.ts";
import { swatchOf } from "../picture/photo/straighten.ts";
import { withLimits } from "../settings/limits.ts";
import { editField, useCanEdit, useField, useUnits } from "../state/fields.ts";
import { StraightenPhoto } from "./straighten-photo.tsx";
import "./cloth-photo.css";

/** Longest side of the picture that the job keeps, px. */
const KEPT_PX = 900;
const QUALITIES = [0.85, 0.7, 0.5, 0.35];

const SHARES = withLimits(clothPhotoSchema, {
  leftShare: number("Repeat begins, from the left", 0, 1, "", "share of the picture"),
  topShare: number("Repeat begins, from the top", 0, 1, "", "share of the picture"),
  widthShare: number("Repeat’s width", 0.01, 1, "", "share of the picture"),
  heightShare: number("Repeat’s height", 0.01, 1, "", "share of the picture"),
});

/** A picture of the cloth in which one repeat is marked: drag over it, or type the shares; first made straight, where it is not. */
export function ClothPhotoFields({ pointer }: { pointer: string }) {
  const photo = useField(pointer) as ClothPhoto | undefined;
  const repeat = useField(pointer.replace(/photo$/, "repeat")) as Repeat | undefined;
  const mine = useCanEdit();
  const [trouble, setTrouble] = useState<string>();
  const [slanted, setSlanted] = useState(false);
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    event.target.value = "";
    if (!file) return;
    const opened = await openPhoto(file, KEPT_PX);
    if (opened.kind === "refused") return setTrouble(opened.why);
    setTrouble(keepPhoto(pointer, opened.bitmap, WHOLE, "Photo of the cloth"));
    opened.bitmap.close();
  };
  return (
    <div className="field-wide cloth-photo">
      {photo === undefined ? (
        <label className="cloth-photo-add">
          <span>Photo of the cloth, lying flat</span>
          <input
            type="file"
            accept="image/png,image/jpeg,image/webp"
            disabled={!mine}
            onChange={(event) => void take(event)}
          />
        </label>
      ) : (
        <>
          {slanted ? (
            <StraightenPhoto
              photo={photo}
              repeat={repeat}
              onDone={(made) => {
                setSlanted(false);
                if (made) setTrouble(keepPhoto(pointer, made.canvas, made, "Photo made straight"));
              }}
            />
          ) : (
            <>
              <p className="quiet small">
                Drag from corner to corner over one repeat. It is then shown on the shade at its true size and
                place.
              </p>
              <Marked photo={photo} pointer={pointer} />
              <Scale photo={photo} />
            </>
          )}
          <div className="fields">
            {(Object.keys(SHARES) as (keyof typeof SHARES)[]).map((key) => (
              <Field
                key={key}
                pointer={`${pointer}/${key}`}
                spec={SHARES[key]}
                needed="a share from 0 to 1"
              />
            ))}
          </div>
          <p>
            <button
              type="button"
              className="button-plain small"
              disabled={!mine || slanted}
              onClick={() => setSlanted(true)}
            >
              Taken at a slant: make it straight
            </button>{" "}
            <button
              type="button"
              className="button-plain small"
              disabled={!mine}
              onClick={() => editField(pointer, undefined, "No photo")}
            >
              Delete the photo
            </button>
          </p>
        </>
      )}
      {trouble === undefined ? null : (
        <p className="field-error" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

type MarkedRepeat = Pick<ClothPhoto, "leftShare" | "topShare" | "widthShare" | "heightShare">;

const WHOLE: MarkedRepeat = { leftShare: 0, topShare: 0, widthShare: 1, heightShare: 1 };

/** Keeps a picture in the job, small, with its colours for drawings on paper; says why where it cannot. */
function keepPhoto(
  pointer: string,
  picture: HTMLCanvasElement | ImageBitmap,
  {
    leftShare,
    topShare,
    widthShare,
    heightShare,
    straightened,
  }: MarkedRepeat & Pick<ClothPhoto, "straightened">,
  label: string,
): string | undefined {
  const image = asJpeg(picture);
  const swatch = swatchOf(picture);
  if (image === undefined) return TOO_DETAILED;
  const photo: ClothPhoto = {
    ...{ image, leftShare, topShare, widthShare, heightShare },
    ...(swatch === undefined ? {} : { swatch }),
    ...(straightened === undefined ? {} : { straightened }),
  };
  editField(pointer, photo, label);
  return undefined;
}

const TOO_DETAILED =
  "This picture is too large for a job even when it is made small. Take a part of it, about one repeat, or one with less detail.";

/** How true the scale of a straightened photo is. */
function Scale({ photo: { straightened } }: { photo: ClothPhoto }) {
  const units = useUnits();
  if (straightened === undefined) return null;
  const share = (100 * straightened.errorShare).toFixed(1);
  const by = { repeat: "one repeat", square: "a square of known size" }[straightened.by];
  return (
    <p className="quiet small">
      Made straight by the corners of {by}: its scale is true within about {share} %,{" "}
      {lengthText(1000 * straightened.errorShare, units)} in {lengthText(1000, units)}.
    </p>
  );
}

type Corner = readonly [x: number, y: number];

function Marked({ photo, pointer }: { photo: ClothPhoto; pointer: string }) {
  const mine = useCanEdit();
  const frame = useRef<HTMLDivElement>(null);
  const [from, setFrom] = useState<Corner>();
  const [to, setTo] = useState<Corner>();
  const at = (event: PointerEvent): Corner => {
    const box = frame.current?.getBoundingClientRect();
    if (!box) return [0, 0];
    const share = (value: number, start: number, length: number) =>
      Math.min(1, Math.max(0, (value - start) / length));
    return [share(event.clientX, box.left, box.width), share(event.clientY, box.top, box.height)];
  };
  const shown = from && to ? between(from, to) : photo;
  return (
    <div
      ref={frame}
      className="cloth-photo-frame"
      data-testid="cloth-photo"
      onPointerDown={(event) => {
        if (!mine) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        setFrom(at(event));
        setTo(undefined);
      }}
      onPointerMove={(event) => {
        if (from) setTo(at(event));
      }}
      onPointerUp={() => {
        const marked = from && to ? between(from, to) : undefined;
        if (marked && marked.widthShare >= 0.01 && marked.heightShare >= 0.01) {
          editField(pointer, { ...photo, ...marked }, "Repeat in the photo");
        }
        setFrom(undefined);
        setTo(undefined);
      }}
    >
      <img src={photo.image} alt="The cloth, lying flat" draggable={false} />
      <span
        className="cloth-photo-repeat"
        style={{
          left: `${shown.leftShare * 100}%`,
          top: `${shown.topShare * 100}%`,
          width: `${shown.widthShare * 100}%`,
          height: `${shown.heightShare * 100}%`,
        }}
      />
    </div>
  );
}

function between([ax, ay]: Corner, [bx, by]: Corner): MarkedRepeat {
  return {
    leftShare: Math.min(ax, bx),
    topShare: Math.min(ay, by),
    widthShare: Math.abs(ax - bx),
    heightShare: Math.abs(ay - by),
  };
}

/** The picture small enough to live in the job, as JPEG. */
function asJpeg(picture: HTMLCanvasElement | ImageBitmap): string | undefined {
  const canvas = document.createElement("canvas");
  canvas.width = picture.width;
  canvas.height = picture.height;
  canvas.getContext("2d")?.drawImage(picture, 0, 0);
  return QUALITIES.map((quality) => canvas.toDataURL("image/jpeg", quality)).find(
    (url) => url.length <= LARGEST_PHOTO_CHARS,
  );
}

import { useId, useState } from "react";
import type { ClothPhoto, Repeat } from "../../job/index.ts";
import { bareUnit, lengthText, parseLength } from "../../units/index.ts";
import { Segments } from "../inputs/segments.tsx";
import { type CornerShares, FourCorners } from "../picture/photo/four-corners.tsx";
import { straightened } from "../picture/photo/straighten.ts";
import { useUnits } from "../state/fields.ts";

const FIRST: CornerShares = [
  [0.2, 0.2],
  [0.8, 0.2],
  [0.8, 0.8],
  [0.2, 0.8],
];
const BY = { repeat: "One repeat", square: "A square" } as const;
/** Longest side of the straightened picture, px; a square lies in cloth of so many times its size at each side. */
const LONGEST_PX = 900;
const MOST_BEYOND = 4;

type Made = Pick<ClothPhoto, "leftShare" | "topShare" | "widthShare" | "heightShare" | "straightened"> & {
  canvas: HTMLCanvasElement;
};

interface StraightenPhotoProps {
  photo: ClothPhoto;
  repeat: Repeat | undefined;
  /** With the picture as made, or nothing where it was left. */
  onDone: (made?: Made) => void;
}

/** Four corners of a repeat, or of a square of paper that lies on the cloth, make a slanted photo straight and give its scale. */
export function StraightenPhoto({ photo, repeat, onDone }: StraightenPhotoProps) {
  const units = useUnits();
  const id = useId();
  const [corners, setCorners] = useState(FIRST);
  const [by, setBy] = useState<keyof typeof BY>("repeat");
  const [side, setSide] = useState("");
  const [trouble, setTrouble] = useState<string>();
  const wide = repeat?.horizontalMm;
  const make = async () => {
    const read = by === "square" ? parseLength(side, bareUnit(units)) : undefined;
    const squareMm = read?.ok === true ? read.lengthMm : 0;
    if (repeat === undefined || wide === undefined)
      return setTrouble("Give the repeat of the cloth first, down and across: the picture is scaled to it.");
    if (by === "square" && !(squareMm > 0))
      return setTrouble(`“${side}” is no length: type the side of the square, as ${lengthText(100, units)}.`);
    const image = new Image();
    image.src = photo.image;
    await image.decode();
    const size =
      by === "repeat"
        ? { widthMm: wide, heightMm: repeat.verticalMm }
        : { widthMm: squareMm, heightMm: squareMm };
    const largest = Math.max(wide, repeat.verticalMm);
    const beyondShare = by === "repeat" ? 0 : Math.min(MOST_BEYOND, Math.max(0.5, largest / squareMm));
    const made = straightened(image, { corners, ...size, beyondShare, longestPx: LONGEST_PX });
    if (made === undefined)
      return setTrouble("The four corners do not go round anything: put each on its own corner, in order.");
    const [widthShare, heightShare] = [
      Math.min(1, wide / made.widthMm),
      Math.min(1, repeat.verticalMm / made.heightMm),
    ];
    onDone({
      canvas: made.canvas,
      ...{ leftShare: (1 - widthShare) / 2, topShare: (1 - heightShare) / 2, widthShare, heightShare },
      straightened: { by, errorShare: Math.round(1e4 * made.errorShare) / 1e4 },
    });
  };
  return (
    <div className="straighten">
      <Segments label="The corners are those of" options={BY} value={by} onChange={(next) => setBy(next)} />
      {by === "square" ? (
        <p>
          <label htmlFor={id}>Side of the square</label>{" "}
          <input
            id={id}
            className="straighten-side"
            value={side}
            onChange={(event) => setSide(event.target.value)}
          />
        </p>
      ) : null}
      <div className="cloth-photo-frame" data-testid="straighten">
        <img src={photo.image} alt="The cloth, as it was taken" draggable={false} />
        <FourCorners
          of={by === "repeat" ? "of the repeat" : "of the square"}
          corners={corners}
          onMove={setCorners}
        />
      </div>
      <p>
        <button type="button" className="button small" onClick={() => void make()}>
          Make it straight
        </button>{" "}
        <button type="button" className="button-plain small" onClick={() => onDone()}>
          Leave it
        </button>
      </p>
      {trouble === undefined ? null : (
        <p className="field-error" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

import { type KeyboardEvent, type MouseEvent, memo, useMemo, useRef } from "react";
import { type PhotoOfCloth, type Placed, type PlacedText, svgNodes } from "../../drawing/index.ts";
import type { Motif, SheetKind } from "../../shade-plan/index.ts";
import { useShade, useShadeNow } from "../shade/shade-context.tsx";
import { useJob, useUnits } from "../state/fields.ts";
import { useRaise } from "../state/raise.ts";
import { type Picked, pick, usePlanner } from "../state/store.ts";
import { FactsTable } from "./facts-table.tsx";
import { HemHandle } from "./hem-handle.tsx";
import { MotifHandle } from "./motif-handle.tsx";
import { photoOfFace } from "./photo-of-face.ts";
import { type Bounds, CAPTION_REM, type OnScreen, placeSheet, RAISED_SHEETS } from "./sheet-placing.ts";
import { SvgElement } from "./svg-node.tsx";
import { targetBox } from "./target-box.ts";
import type { ElementSize } from "./use-box.ts";

/** Pixels for one millimetre of paper where letters are 16 px: notes of 2.9 mm are then 12 px, the least on a screen. */
const PX_PER_MM = 4.3;

/** How large a sheet may be in a box on the screen. */
export function paperOf(box: ElementSize, letters = 1): Bounds & { pxPerMm: number } {
  const heightPx = Math.max(60, box.heightPx - CAPTION_REM * box.remPx);
  const pxPerMm = (PX_PER_MM * letters * box.remPx) / 16;
  return { pxPerMm, maxWidthMm: box.widthPx / pxPerMm, maxHeightMm: heightPx / pxPerMm };
}

interface SheetProps {
  kind: SheetKind;
  box: ElementSize;
  /** Letters larger than on a screen at arm's length, for the bench. */
  letters?: number;
}

/** One drawing of the shade, live: what is tied to a figure or a field can be pressed. */
export function Sheet({ kind, box, letters = 1 }: SheetProps) {
  const { plan } = useShadeNow();
  const units = useUnits();
  const raise = useRaise();
  const { pxPerMm, maxWidthMm, maxHeightMm } = paperOf(box, letters);
  const onScreen = useMemo(
    () => placeSheet(kind, plan, units, raise, { maxWidthMm, maxHeightMm }),
    [kind, plan, units, raise, maxWidthMm, maxHeightMm],
  );
  const job = useJob();
  const photo = useMemo(() => (kind === "front" ? photoOfFace(job, plan) : undefined), [kind, job, plan]);
  const face = plan.cloth.layers.find(({ layer }) => layer === "face");
  // Where the cloth hangs flat its pattern can be taken hold of.
  const motif = kind === "front" && raise <= 0 && plan.form.across === "flat" ? face?.motif : undefined;
  return (
    <PlacedSheet
      onScreen={onScreen}
      pxPerMm={pxPerMm}
      photo={photo}
      motif={motif}
      isRaised={RAISED_SHEETS.has(kind)}
    />
  );
}

/** A sheet that has been laid out. */
export const PlacedSheet = memo(function PlacedSheet({
  onScreen,
  pxPerMm,
  photo,
  motif,
  isRaised,
}: {
  onScreen: OnScreen;
  pxPerMm: number;
  photo?: PhotoOfCloth | undefined;
  motif?: Motif | undefined;
  isRaised: boolean;
}) {
  const { placed, box } = onScreen;
  const targets = useMemo(() => targetsOf(placed), [placed]);
  const svg = useRef<SVGSVGElement>(null);
  const nodes = useMemo(() => svgNodes(placed, undefined, photo).children ?? [], [placed, photo]);
  return (
    <figure className="sheet">
      {/* biome-ignore lint/a11y/useSemanticElements: SVG has no fieldset of its own */}
      <svg
        ref={svg}
        className="sheet-svg"
        width={box.widthMm * pxPerMm}
        height={box.heightMm * pxPerMm}
        viewBox={`${box.xMm} ${box.yMm} ${box.widthMm} ${box.heightMm}`}
        role="group"
        aria-label={`${placed.title}. ${placed.caption}`}
        onClick={onPress}
        onKeyDown={(event) => moveFocus(event, svg.current)}
      >
        {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in the picture takes the focus; the targets above it do */}
        <g aria-hidden="true">
          {nodes.map((node, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is painted in order; its items have no names
            <SvgElement key={at} node={node} />
          ))}
        </g>
        {isRaised ? <HemHandle placed={placed} box={box} pxPerMm={pxPerMm} /> : null}
        {motif === undefined ? null : <MotifHandle placed={placed} motif={motif} mmPerPx={1 / pxPerMm} />}
        <g>
          {targets.map((target, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: targets follow the order of the drawing
            <Target key={at} target={target} pxPerMm={pxPerMm} first={at === 0} />
          ))}
        </g>
      </svg>
      <figcaption className="sheet-caption">
        <span className="caption-words">{placed.caption}</span> <FactsTable facts={placed.facts} />
      </figcaption>
    </figure>
  );
});

/** The place to press for a figure; what it is called is told a moment after it stands there. */
function Target({ target, pxPerMm, first }: { target: PlacedText; pxPerMm: number; first: boolean }) {
  const { workings } = useShade();
  const isPicked = usePlanner(({ view }) => samePick(view.picked, target));
  const label = target.figure === undefined ? undefined : workings.get(target.figure)?.label;
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no button of its own
    <rect
      className="target"
      role="button"
      tabIndex={first ? 0 : -1}
      aria-label={
        label === undefined ? `${target.text}: change it` : `${target.text}: ${label}, show the working`
      }
      aria-expanded={isPicked}
      data-figure={target.figure}
      data-field={target.field}
      {...targetBox(target, pxPerMm)}
      rx={1}
    />
  );
}

function targetsOf({ items }: Placed): PlacedText[] {
  return items.filter(
    (item): item is PlacedText =>
      item.kind === "text" && (item.figure !== undefined || item.field !== undefined),
  );
}

function samePick(picked: Picked | undefined, { figure, field }: Picked): boolean {
  return picked !== undefined && picked.figure === figure && picked.field === field;
}

function onPress(event: MouseEvent<SVGSVGElement>): void {
  if (event.target instanceof Element) press(event.target.closest<SVGElement>("[data-figure], [data-field]"));
}

function press(element: SVGElement | null): void {
  if (!element) return;
  const { figure, field } = element.dataset;
  const pressed: Picked = {
    ...(figure === undefined ? {} : { figure }),
    ...(field === undefined ? {} : { field }),
  };
  element.focus({ preventScroll: true });
  pick(samePick(usePlanner.getState().view.picked, pressed) ? undefined : pressed);
}

const STEPS: Record<string, number> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** One stop for the tab key; arrows go from figure to figure. */
function moveFocus(event: KeyboardEvent, svg: SVGSVGElement | null): void {
  const { key, target } = event;
  if (!(target instanceof SVGElement) || !svg) return;
  if (key === "Enter" || key === " ") {
    event.preventDefault();
    press(target);
    return;
  }
  const step = STEPS[key];
  if (step === undefined) return;
  event.preventDefault();
  const all = [...svg.querySelectorAll<SVGElement>(".target")];
  const next = all[(all.indexOf(target) + step + all.length) % all.length];
  for (const one of all) one.tabIndex = one === next ? 0 : -1;
  next?.focus();
}

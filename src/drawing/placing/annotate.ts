import type { Dimension, Marker, Primitive } from "../model.ts";
import type { PlacedItem } from "../placed.ts";
import { placeCallout } from "./place-callout.ts";
import { placeDimension } from "./place-dimension.ts";
import { placeMarker, placeStack } from "./place-marker.ts";
import { placeRunning } from "./place-running.ts";
import { placeSliding } from "./place-sliding.ts";
import { placeText } from "./place-text.ts";
import type { Scaling } from "./scaling.ts";
import { TakenSpots } from "./text-box.ts";

/** Words stand at least this far apart, mm. */
const APART_MM = 0.5;

export interface Words {
  items: PlacedItem[];
  /** What markers became: they are painted in order with the shapes. */
  marks: Map<Primitive, PlacedItem[]>;
}

/** Everything that is sized on paper, about the model's own origin. Fixed words first, yielding ones last. */
export function annotate(primitives: readonly Primitive[], scaling: Scaling): Words {
  const taken = new TakenSpots(APART_MM * scaling.textScale);
  const fixed: PlacedItem[] = [];
  const marks: Words["marks"] = new Map();
  const dimensions: Dimension[] = [];
  const running = new Map<string, Dimension[]>();
  const stacks = new Map<string, Marker[]>();
  const sliding: Marker[] = [];
  const yielding: Primitive[] = [];
  for (const primitive of primitives) {
    switch (primitive.kind) {
      case "text":
        if (primitive.yields === true) yielding.push(primitive);
        else fixed.push(...placeText(primitive, scaling, taken));
        break;
      case "callout":
        yielding.push(primitive);
        break;
      case "marker":
        if (primitive.along !== undefined) sliding.push(primitive);
        else if (primitive.stack === undefined) marks.set(primitive, placeMarker(primitive, scaling, taken));
        else joinGroup(stacks, primitive.stack, primitive);
        break;
      case "dimension":
        if (primitive.running === undefined) dimensions.push(primitive);
        else joinGroup(running, primitive.running, primitive);
        break;
      default:
    }
  }
  const tags = [
    ...[...stacks.values()].flatMap((stack) => placeStack(stack, scaling, taken)),
    ...sliding.flatMap((marker) => placeSliding(marker, scaling, taken)),
  ];
  const measures = [
    ...dimensions.flatMap((dimension) => placeDimension(dimension, scaling, taken)),
    ...[...running.values()].flatMap((group) => placeRunning(group, scaling, taken)),
  ];
  const late = yielding.flatMap((primitive) =>
    primitive.kind === "callout"
      ? placeCallout(primitive, scaling, taken)
      : primitive.kind === "text"
        ? placeText(primitive, scaling, taken)
        : [],
  );
  // Lines first: then the border of every word covers what runs under it.
  const items = [...measures, ...late, ...fixed];
  const isText = (item: PlacedItem) => item.kind === "text";
  return { items: [...items.filter((item) => !isText(item)), ...items.filter(isText), ...tags], marks };
}

function joinGroup<T>(groups: Map<string, T[]>, name: string, one: T): void {
  const group = groups.get(name);
  if (group === undefined) groups.set(name, [one]);
  else group.push(one);
}

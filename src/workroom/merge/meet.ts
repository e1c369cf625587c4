import type { FieldChange, Json } from "../protocol/index.ts";
import type { FieldConflict } from "./conflict.ts";
import { type FieldPath, isWithin, ORDER, pathKey } from "./field-change.ts";
import { isJsonObject, keysOf, sameJson } from "./json.ts";
import { missingAbove, shapeAt, valueIn, withValue } from "./place.ts";
import { byKey, JOB_SHAPE, type Shape } from "./shape.ts";

/** What was numbered before the changes that are done now. */
export interface NumberedChanges {
  version: number;
  changes: readonly FieldChange[];
}

/** The document after changes met it, and what did not go together. */
export interface Met {
  document: Json;
  conflicts: FieldConflict[];
  /** Changes within something that is not there, and that nobody is known to have taken away. */
  lost: FieldChange[];
}

export function meet(
  document: Json,
  changes: readonly FieldChange[],
  later: readonly NumberedChanges[],
): Met {
  const meeting = new Meeting(document, later);
  for (const change of changes) meeting.take(change);
  return meeting.met();
}

/** Both sides of a field, as a conflict. */
export function conflictAt(
  path: FieldPath,
  sides: { base?: Json | undefined; mine?: Json | undefined; theirs?: Json | undefined },
  later: readonly NumberedChanges[],
): FieldConflict {
  const touches = ({ changes }: NumberedChanges) =>
    changes.some((change) => isWithin(change.path, path) || isWithin(path, change.path));
  const theirVersion = later.findLast(touches)?.version;
  const { base, mine, theirs } = sides;
  return {
    path: [...path],
    ...(base === undefined ? {} : { base }),
    ...(mine === undefined ? {} : { mine }),
    ...(theirs === undefined ? {} : { theirs }),
    ...(theirVersion === undefined ? {} : { theirVersion }),
  };
}

class Meeting {
  #document: Json;
  readonly #later: readonly NumberedChanges[];
  readonly #conflicts: FieldConflict[] = [];
  readonly #lost: FieldChange[] = [];
  /** What was brought back since a change lies in it, by its path. */
  readonly #broughtBack = new Map<string, { path: FieldPath; base: Json }>();

  constructor(document: Json, later: readonly NumberedChanges[]) {
    this.#document = document;
    this.#later = later;
  }

  take(change: FieldChange): void {
    const { path, from, to } = change;
    const shape = shapeAt(path);
    const missing = missingAbove(this.#document, JOB_SHAPE, path);
    // What lies in what is gone is gone as well.
    if (missing !== undefined && to === undefined) return;
    if (shape === undefined || (missing !== undefined && !this.#bringBack(missing))) this.#lost.push(change);
    else if (path.at(-1) === ORDER) this.#order(path, from, to);
    else this.#settle(path, shape, from, to);
  }

  met(): Met {
    const broughtBack = [...this.#broughtBack.values()].map(({ path, base }) =>
      conflictAt(path, { base, mine: this.#at(path) }, this.#later),
    );
    return {
      document: this.#document,
      conflicts: [...broughtBack, ...this.#conflicts],
      lost: this.#lost,
    };
  }

  #at(path: FieldPath): Json | undefined {
    return valueIn(this.#document, JOB_SHAPE, path);
  }

  #set(path: FieldPath, to: Json | undefined): void {
    this.#document = withValue(this.#document, JOB_SHAPE, path, to) ?? this.#document;
  }

  #conflict(path: FieldPath, base: Json | undefined, mine: Json | undefined, theirs: Json | undefined): void {
    this.#conflicts.push(conflictAt(path, { base, mine, theirs }, this.#later));
  }

  /** Brings back what somebody took away, as it was then; false where nobody is known to have. */
  #bringBack(path: FieldPath): boolean {
    const taken = this.#later
      .flatMap(({ changes }) => changes)
      .findLast((change) => change.to === undefined && isWithin(path, change.path));
    const shape = taken && shapeAt(taken.path);
    const base = taken && shape && valueIn(taken.from, shape, path.slice(taken.path.length));
    if (base === undefined || missingAbove(this.#document, JOB_SHAPE, path) !== undefined) return false;
    this.#set(path, base);
    this.#broughtBack.set(pathKey(path), { path, base });
    return true;
  }

  /** One field, group, list or item: what it was when I changed it, what I made of it, and what it is now. */
  #settle(path: FieldPath, shape: Shape, from: Json | undefined, to: Json | undefined): void {
    const here = this.#at(path);
    if (sameJson(here, to)) return;
    if (sameJson(here, from)) this.#set(path, to);
    else if (to === undefined && here !== undefined) this.#takeAway(path, shape, from, here);
    else if (from !== undefined || to === undefined || !this.#join(path, shape, to, here)) {
      this.#conflict(path, from, to, here);
      this.#set(path, to);
    }
  }

  /** Takes away what others changed meanwhile: loose things lose what I knew of, the rest stays whole. */
  #takeAway(path: FieldPath, shape: Shape, from: Json | undefined, here: Json): void {
    const isItem = typeof path.at(-1) === "object";
    const parts = isItem ? undefined : partsOf(shape, from);
    if (parts !== undefined && shape.isOptional && (shape.kind === "list" || isLoose(shape))) {
      for (const part of parts) this.#settle([...path, part.step], part.shape, part.value, undefined);
      const left = this.#at(path);
      if (left !== undefined && isEmpty(left)) this.#set(path, undefined);
      return;
    }
    this.#conflict(path, from, undefined, here);
    if (shape.kind === "field" && !isItem) this.#set(path, undefined);
  }

  /** Both put something here: part by part, where it has parts. */
  #join(path: FieldPath, shape: Shape, to: Json, here: Json | undefined): boolean {
    const [mine, theirs] = [partsOf(shape, to), partsOf(shape, here)];
    if (mine === undefined || theirs === undefined) return false;
    for (const part of mine) this.#settle([...path, part.step], part.shape, undefined, part.value);
    return true;
  }

  #order(path: FieldPath, from: Json | undefined, to: Json | undefined): void {
    const here = this.#at(path);
    if (!(Array.isArray(here) && Array.isArray(from) && Array.isArray(to))) return;
    const inBoth = new Set((from as Json[]).filter((key) => here.includes(key) && to.includes(key)));
    const ofBoth = (order: Json) => (order as Json[]).filter((key) => inBoth.has(key));
    const isMoved = !sameJson(ofBoth(here), ofBoth(from)) && !sameJson(ofBoth(here), ofBoth(to));
    const shape = shapeAt(path);
    // In what order texts stand that are their own keys, such as ticks, says nothing.
    const tells = shape?.kind === "list" && shape.keyField !== undefined;
    if (isMoved && tells) this.#conflict(path, from, to, here);
    this.#set(path, to);
  }
}

interface Part {
  step: FieldPath[number];
  shape: Shape;
  value: Json;
}

/** What a group or list consists of; undefined where it is one value, or where its items cannot be told apart. */
function partsOf(shape: Shape, value: Json | undefined): Part[] | undefined {
  if (shape.kind === "group" && isJsonObject(value)) {
    return keysOf(value).flatMap((key): Part[] => {
      const [below, inner] = [shape.under(key), value[key]];
      return below === undefined || inner === undefined ? [] : [{ step: key, shape: below, value: inner }];
    });
  }
  if (shape.kind !== "list" || !Array.isArray(value)) return undefined;
  const items = byKey(shape, value as Json[]);
  return items && [...items].map(([id, item]) => ({ step: { id }, shape: shape.item, value: item }));
}

function isLoose(shape: Shape): boolean {
  return shape.kind === "group" && shape.isLoose;
}

function isEmpty(value: Json): boolean {
  return Array.isArray(value) ? value.length === 0 : isJsonObject(value) && keysOf(value).length === 0;
}

import { posix } from "node:path";
import { importsOf, nodesOf, type SourceFile, type SyntaxNode } from "./source-tree.ts";

/** Floors of the house, ground floor first. A room imports only from floors below its own. */
export const FLOORS: readonly (readonly string[])[] = [
  ["units", "sources", "mechanics", "words"],
  ["figures", "job", "shade-plan"],
  [
    "workroom",
    "measure",
    "styles",
    "existing",
    "cloth",
    "folds",
    "lift",
    "board",
    "safety",
    "cutting",
    "align",
    "steps",
  ],
  ["cost", "drape"],
  ["plan"],
  ["diagnose"],
  ["answers"],
  ["drawing", "tables"],
  ["letters"],
  ["workbook"],
  ["server"],
  ["cli", "web"],
];
/** The library's front door, `src/index.ts`: an edge like those of the top floor. */
const DOOR = "index.ts";
const TOP = FLOORS.length - 1;
/** Rooms up to this floor compute and nothing else. */
const LAST_PURE_FLOOR = 7;

function roomOf(path: string): string {
  return path.split("/")[1] ?? "";
}

function floorOf(room: string): number | undefined {
  if (room === DOOR) return TOP;
  const floor = FLOORS.findIndex((rooms) => rooms.includes(room));
  return floor < 0 ? undefined : floor;
}

/** What breaks the order of the house in one file, in words. */
export function breachesOf(file: SourceFile): string[] {
  const room = roomOf(file.path);
  const floor = floorOf(room);
  if (floor === undefined) return [`${file.path}: no room is called ${room}`];
  return [
    ...importsOf(file).flatMap((target) => importBreach(file.path, room, floor, target)),
    ...(floor <= LAST_PURE_FLOOR ? impurities(file) : []),
  ];
}

function importBreach(path: string, room: string, floor: number, target: string): string[] {
  if (target.startsWith("node:")) {
    return floor <= LAST_PURE_FLOOR ? [`${path}: a pure room imports ${target}`] : [];
  }
  if (!target.startsWith(".")) return [];
  const resolved = posix.join(posix.dirname(path), target);
  if (!resolved.startsWith("src/")) {
    return /^(?:examples\/|package\.json$)/.test(resolved) ? [] : [`${path}: imports ${target}, outside src`];
  }
  const targetRoom = roomOf(resolved);
  if (targetRoom === room) return room === "styles" ? styleBreach(path, resolved) : [];
  const targetFloor = floorOf(targetRoom);
  if (targetFloor === undefined || targetFloor >= floor) {
    return [`${path}: ${room} imports ${targetRoom}, which is not below it`];
  }
  // A room can have a side door beside its front door: `src/drawing/dxf/index.ts`.
  return resolved.endsWith("/index.ts") ? [] : [`${path}: imports past the door of ${targetRoom}`];
}

/** Within `src/styles`: what every style takes from, the techniques, and the kinds, which know nothing of each other. */
const STYLE_FOLDERS = ["base", "folding", "gathering", "draping", "kinds"];

function styleBreach(path: string, target: string): string[] {
  const [own = "", ownKind] = path.split("/").slice(2);
  const [folder = "", kind] = target.split("/").slice(2);
  const isSame = own === folder && (own !== "kinds" || ownKind === kind);
  const isBelow = STYLE_FOLDERS.indexOf(folder) < STYLE_FOLDERS.indexOf(own);
  const isDoor = !STYLE_FOLDERS.includes(own);
  return isSame || isBelow || isDoor ? [] : [`${path}: imports ${target}, which is not below it`];
}

/**
 * Names whose mere mention reaches for the clock, chance or the machine. Those of a browser or of Node alone
 * (`window`, `process`) are type errors in these rooms already.
 */
const BANNED = /^(?:performance|console|crypto|globalThis|setTimeout|setInterval|Intl)$/;
const BANNED_MEMBERS = /^(?:Date\.now|Math\.random|\w+\.toLocale(?:|Date|Time)String)$/;

function impurities(file: SourceFile): string[] {
  const found: string[] = [];
  for (const { node, parent } of nodesOf(file)) {
    const name = impurityOf(node, parent);
    if (name) found.push(`${file.path}: a pure room uses ${name}`);
  }
  return found;
}

function impurityOf(node: SyntaxNode, parent: SyntaxNode | undefined): string | undefined {
  if (node.type === "MemberExpression") {
    const { object, property } = node as unknown as Record<"object" | "property", SyntaxNode>;
    const name = `${object.name ?? "it"}.${property.name ?? property.value}`;
    return BANNED_MEMBERS.test(name) ? name : undefined;
  }
  if (node.type === "NewExpression" || node.type === "CallExpression") {
    const isDate = (node.callee as SyntaxNode).name === "Date";
    return isDate && (node.arguments as unknown[]).length === 0 ? "Date()" : undefined;
  }
  if (node.type !== "Identifier" || !BANNED.test(String(node.name))) return undefined;
  // The name of a property or of a key is not the global of that name.
  const isKey = (parent?.type === "MemberExpression" && parent.property === node) || parent?.key === node;
  return isKey && !parent?.computed ? undefined : String(node.name);
}

import { SOURCES, type SourceId, type SourceKind } from "../src/sources/index.ts";
import { nodesOf, type SourceFile, type SyntaxNode } from "./source-tree.ts";

export interface Citation {
  source: SourceId;
  file: string;
  /** Clause, table, or what is guessed, where the citation says it. */
  at: string;
}

function isSourceId(value: unknown): value is SourceId {
  return typeof value === "string" && Object.hasOwn(SOURCES, value);
}

/** Every place of a file that names a source: `cite("…", "…")`, `{ source: "…", at: "…" }`, or bare. */
export function citationsOf(file: SourceFile): Citation[] {
  const found: Citation[] = [];
  if (file.path === "src/sources/sources.ts") return found;
  for (const { node, parent } of nodesOf(file)) {
    if (node.type !== "Literal" || !isSourceId(node.value)) continue;
    if (parent?.type === "TSLiteralType") continue;
    found.push({ source: node.value, file: file.path, at: placeOf(node, parent, file) });
  }
  return found;
}

function placeOf(node: SyntaxNode, parent: SyntaxNode | undefined, file: SourceFile): string {
  const next = parent?.type === "CallExpression" ? (parent.arguments as SyntaxNode[])[1] : undefined;
  if (next) return literalText(next, file);
  if (parent?.type === "CallExpression") return "";
  const line = file.text.slice(file.text.lastIndexOf("\n", node.start) + 1).split("\n")[0] ?? "";
  return line.trim();
}

function literalText(node: SyntaxNode, file: SourceFile): string {
  return typeof node.value === "string" ? node.value : file.text.slice(node.start, node.end);
}

/** Sources of these kinds stand for what nobody could look up. */
export const GUESSES: readonly SourceKind[] = ["common-practice", "from-memory"];

/** One line for each guess, sorted, the same guess at several places of a file counted. */
export function guessLines(citations: readonly Citation[]): string[] {
  const counts = new Map<string, number>();
  for (const { source, file, at } of citations) {
    if (!GUESSES.includes(SOURCES[source].kind)) continue;
    const line = [file, source, at].filter((part) => part !== "").join(" · ");
    counts.set(line, (counts.get(line) ?? 0) + 1);
  }
  return [...counts].map(([line, count]) => (count === 1 ? line : `${line} (${count} times)`)).sort();
}

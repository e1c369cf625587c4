import { nodesOf, type SourceFile, type SyntaxNode } from "./source-tree.ts";

const FUNCTIONS = new Set(["FunctionDeclaration", "FunctionExpression", "ArrowFunctionExpression"]);

/**
 * Exported functions of a file, and methods of its exported classes, that throw, themselves or by a function of the same
 * file, and whose words above them do not say so.
 */
export function silentThrowersOf(file: SourceFile): string[] {
  const parents = new Map<SyntaxNode, SyntaxNode>();
  const throwers = new Set<SyntaxNode>();
  const calls: { owner: SyntaxNode; callee: string }[] = [];
  for (const { node, parent } of nodesOf(file)) {
    if (parent !== undefined) parents.set(node, parent);
    const callee = node.type === "CallExpression" ? (node.callee as SyntaxNode) : undefined;
    if (node.type !== "ThrowStatement" && callee?.type !== "Identifier") continue;
    const owner = outermostFunction(node, parents);
    if (owner === undefined) continue;
    if (callee === undefined) throwers.add(owner);
    else calls.push({ owner, callee: callee.name as string });
  }
  for (let known = -1; known !== throwers.size; ) {
    known = throwers.size;
    const names = new Set([...throwers].map((owner) => nameOf(owner, parents)));
    for (const { owner, callee } of calls) if (names.has(callee)) throwers.add(owner);
  }
  return [...throwers]
    .filter((owner) => isExported(owner, parents) && !saysThrows(file, start(owner, parents)))
    .map((owner) => `${file.path}: ${nameOf(owner, parents)} throws and does not say so`);
}

function outermostFunction(
  node: SyntaxNode,
  parents: ReadonlyMap<SyntaxNode, SyntaxNode>,
): SyntaxNode | undefined {
  let owner: SyntaxNode | undefined;
  for (let at: SyntaxNode | undefined = node; at; at = parents.get(at)) {
    // What another function catches is not thrown to who calls it.
    if (at.type === "TryStatement" && at.handler !== null && owner === undefined) return undefined;
    if (FUNCTIONS.has(at.type)) owner = at;
  }
  return owner;
}

function isExported(owner: SyntaxNode, parents: ReadonlyMap<SyntaxNode, SyntaxNode>): boolean {
  for (let at: SyntaxNode | undefined = owner; at; at = parents.get(at)) {
    if (at.type === "MethodDefinition" && (at.key as SyntaxNode).type === "PrivateIdentifier") return false;
    if (at.type === "ExportNamedDeclaration") return true;
  }
  return false;
}

/** Where the declaration begins that the words stand above. */
function start(owner: SyntaxNode, parents: ReadonlyMap<SyntaxNode, SyntaxNode>): number {
  let from = owner.start;
  for (let at: SyntaxNode | undefined = owner; at; at = parents.get(at)) {
    if (at.type === "MethodDefinition") return at.start;
    if (at.type === "ExportNamedDeclaration") from = at.start;
  }
  return from;
}

function saysThrows({ text }: SourceFile, at: number): boolean {
  const before = text.slice(0, at).trimEnd();
  if (!before.endsWith("*/")) return false;
  return before.slice(before.lastIndexOf("/**")).includes("@throws");
}

function nameOf(owner: SyntaxNode, parents: ReadonlyMap<SyntaxNode, SyntaxNode>): string {
  const parent = parents.get(owner);
  const id = (owner.id ?? parent?.key ?? parent?.id) as SyntaxNode | null | undefined;
  return typeof id?.name === "string" ? id.name : "(no name)";
}

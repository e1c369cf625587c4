import { readdirSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { parseSync, visitorKeys } from "oxc-parser";

/** A source file as the tests of the whole tree read it. */
export interface SourceFile {
  /** From the top of the checkout, with forward slashes: `src/units/length.ts`. */
  path: string;
  text: string;
}

/** Files of the product under `src`, tests left out. */
export function sourceFiles(): SourceFile[] {
  return readdirSync("src", { recursive: true, encoding: "utf8" })
    .map((name) => posix.join("src", name.replaceAll("\\", "/")))
    .filter((path) => /\.tsx?$/.test(path) && !/\.test\.tsx?$/.test(path))
    .sort()
    .map((path) => ({ path, text: readFileSync(join(path), "utf8") }));
}

/** A node of the syntax tree, as far as these tests look into it. */
export interface SyntaxNode {
  type: string;
  start: number;
  end: number;
  [key: string]: unknown;
}

/** Every node of a file with the node above it, outermost first. */
export function* nodesOf({ path, text }: SourceFile): Generator<{ node: SyntaxNode; parent?: SyntaxNode }> {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`invalid source ${path}: ${errors[0]?.message}`);
  const open: { node: SyntaxNode; parent?: SyntaxNode }[] = [{ node: program as unknown as SyntaxNode }];
  for (let next = open.pop(); next; next = open.pop()) {
    yield next;
    const { node } = next;
    const children = (visitorKeys[node.type] ?? []).flatMap(
      (key) => node[key] as SyntaxNode | SyntaxNode[] | null,
    );
    for (const child of children.reverse()) if (child) open.push({ node: child, parent: node });
  }
}

/** Where a file imports from, by any of the ways that the language has: `../units/index.ts`, `zod`. */
export function importsOf(file: SourceFile): string[] {
  const found: string[] = [];
  for (const { node } of nodesOf(file)) {
    const source = node.source as SyntaxNode | null | undefined;
    const imports =
      /^(?:ImportDeclaration|ExportNamedDeclaration|ExportAllDeclaration|ImportExpression|TSImportType)$/.test(
        node.type,
      );
    if (imports && typeof source?.value === "string") found.push(source.value);
  }
  return found;
}

/** Text that the program itself can say: string literals, templates and the words of its pages. */
export function textsOf(file: SourceFile): string[] {
  const found: string[] = [];
  for (const { node, parent } of nodesOf(file)) {
    const isImport = /^(?:Import|Export|TSImportType)/.test(parent?.type ?? "");
    if (isImport) continue;
    if (node.type === "Literal" && typeof node.value === "string") found.push(node.value);
    if (node.type === "JSXText" && typeof node.value === "string") found.push(node.value);
    if (node.type === "TemplateElement") found.push((node.value as { raw: string }).raw);
  }
  return found;
}

import { expect, test } from "vitest";
import { nodesOf, type SourceFile, type SyntaxNode, sourceFiles } from "./source-tree.ts";

/** Names that a file declares and exports. */
function exportedNamesOf(file: SourceFile): string[] {
  return [...nodesOf(file)].flatMap(({ node }) => {
    const declaration = node.declaration as SyntaxNode | null | undefined;
    if (node.type !== "ExportNamedDeclaration" || !declaration) return [];
    const declared = (declaration.declarations as SyntaxNode[] | undefined) ?? [declaration];
    return declared.map(({ id }) => String((id as SyntaxNode).name));
  });
}

function sharedNamesOf(files: readonly SourceFile[]): string[] {
  const pathsByName = new Map<string, Set<string>>();
  for (const file of files) {
    for (const name of exportedNamesOf(file)) {
      pathsByName.set(name, (pathsByName.get(name) ?? new Set()).add(file.path));
    }
  }
  return [...pathsByName]
    .filter(([, paths]) => paths.size > 1)
    .map(([name, paths]) => `${name}: ${[...paths].join(", ")}`);
}

test("no two files export things of one name", () => {
  expect(sharedNamesOf(sourceFiles())).toEqual([]);
});

test("two things of one name are seen, whatever they are", () => {
  const files = [
    { path: "src/plan/a.ts", text: "export interface Bar {}\nexport const one = 1, two = 2;" },
    { path: "src/plan/b.tsx", text: "export function Bar() {}\nexport async function two() {}" },
    { path: "src/plan/c.ts", text: `export { one } from "./a.ts";\nconst Bar = 1;` },
  ];
  expect(sharedNamesOf(files)).toEqual([
    "Bar: src/plan/a.ts, src/plan/b.tsx",
    "two: src/plan/a.ts, src/plan/b.tsx",
  ]);
});

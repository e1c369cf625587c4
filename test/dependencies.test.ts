import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { licencesText, packageOf } from "../scripts/bundled-licences.mjs";

const json = (path: string) => JSON.parse(readFileSync(path, "utf8"));

interface Locked {
  dev?: boolean;
  hasInstallScript?: boolean;
  license?: string;
}

const wanted = Object.keys(json("package.json").dependencies).sort();
const locked = json("package-lock.json").packages as Record<string, Locked>;

/** Rows of the table: its first cell is the package, in code. */
const rows = readFileSync("docs/dependencies.md", "utf8")
  .split("\n")
  .map((line) => line.split("|").map((cell) => cell.trim()))
  .flatMap(([, name, what, size, licence, released, instead]) => {
    const found = /^`(.+)`$/.exec(name ?? "")?.[1];
    return found === undefined ? [] : [{ name: found, what, size, licence, released, instead }];
  });

test("docs/dependencies.md lists the packages that run with Shadewright, each once and in order", () => {
  expect(rows.map(({ name }) => name)).toEqual(wanted);
});

test.each(rows)("$name: its row is filled in, with the licence that the package states", (row) => {
  expect(row.what).toMatch(/\w/);
  expect(row.instead).toMatch(/\w/);
  expect(row.size).toMatch(/^\d+\.\d MB$/);
  expect(row.released).toMatch(/^20\d\d-\d\d-\d\d$/);
  expect(row.licence).toBe(json(`node_modules/${row.name}/package.json`).license);
});

test("nothing that is installed with Shadewright runs a script of its own", () => {
  const scripted = Object.entries(locked).filter(
    ([path, one]) => path !== "" && !one.dev && one.hasInstallScript,
  );
  expect(scripted.map(([path]) => path)).toEqual([]);
});

test("licences are found by the files that are built in", () => {
  expect(packageOf("/home/node_modules/@scope/name/dist/a.js")).toBe("@scope/name");
  expect(packageOf("/home/node_modules/a/node_modules/b/index.js?commonjs")).toBe("b");
  expect(packageOf("C:\\home\\node_modules\\react\\index.js")).toBe("react");
  expect(packageOf("/home/src/web/main.tsx")).toBeUndefined();
});

test("the text that is shipped has every package's name, version and licence text", () => {
  const text = licencesText(["zod", "comlink", "@fontsource/source-sans-3"]);
  expect(text).toContain("SIL OPEN FONT LICENSE Version 1.1");
  expect(text).toContain("Apache License");
  expect(text).toContain(`zod ${json("node_modules/zod/package.json").version}\nMIT\n`);
  expect(text).toContain("Permission is hereby granted, free of charge");
  expect(text.indexOf("comlink ")).toBeLessThan(text.indexOf("zod "));
  expect(() => licencesText(["no-such-package"])).toThrow();
});

/** A size of the first shade: as it was typed, and whether it could be read. */
interface TypedSize {
  text: string;
  read: boolean;
}

/** What of the first drawing is only an example; undefined where both sizes are the maker's own. */
export function exampleWords(width: TypedSize, length: TypedSize): string | undefined {
  const sizes = [
    { name: "width", ...width },
    { name: "length", ...length },
  ];
  const missing = sizes.filter(({ read }) => !read);
  if (missing.length === 0) return undefined;
  const wrong = missing.filter(({ text }) => text.trim() !== "").map(({ name }) => name);
  if (wrong.length > 0)
    return `Drawn with an example: the ${wrong.join(" and the ")} that you typed cannot be read.`;
  return missing.length === 2
    ? "An example, until you type your own."
    : `With an example ${missing[0]?.name}, until you type your own.`;
}

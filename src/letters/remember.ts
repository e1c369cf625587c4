/** What is made of each text, remembered for so many of them; one more, and it starts anew. */
export function rememberedByText<Made>(most: number, make: (text: string) => Made): (text: string) => Made {
  const known = new Map<string, Made>();
  return (text) => {
    const found = known.get(text);
    if (found !== undefined || known.has(text)) return found as Made;
    const made = make(text);
    if (known.size >= most) known.clear();
    known.set(text, made);
    return made;
  };
}

/** Words that are remembered of a typeface: those of a few large workbooks. */
export const MOST_WORDS = 20_000;

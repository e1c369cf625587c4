/**
 * Pairs as dictionaries of both countries list them (Concise Oxford; Merriam-Webster), recalled from memory, with words
 * of this trade and of the nursery beside them. Written apart from the list of the product.
 */
export const BRITISH =
  /\b(?:cloths?|cots?|selvedges?|\w*colour\w*|neighbour\w*|labour\w*|centre[sd]?|centring|mitre[sd]?|mitring|fibres?|\w*metres?|litres?|catalogues?|programmes?|aluminium|grey\w*|draughts?|labell\w*|levell\w*|travell\w*|towards|timbers?|plasterboard|\w+isation|(?:organ|recogn|util|minim|maxim|emphas|summar|standard)is\w*|licences?|storeys?|moulds?\b|mouldings?|odours?|favour\w*|honour\w*|behaviour|analys(?:e|ed|es)|cheques?|tyres?|kerbs?|ploughs?|judgement|ticks?|ticked|offcuts?|mains)\b/gi;
export const AMERICAN =
  /\b(?:fabrics?|cribs?|selvages?|\w*color\w*|neighbor\w*|labor|labors|center(?:s|ed|ing)?|miter\w*|fibers?|(?:milli|centi)?meters?|liters?|catalogs?|programs?|aluminum|gray\w*|drafts?|labeled|leveled|toward|drywall|\w+ization|(?:organ|recogn|util|minim|maxim|emphas|summar|standard)iz\w*|moldings?|odors?|favor\w*|honor\w*|behavior)\b/gi;

/** Titles of works stay as they are. */
export const WORKS = /Physical Properties of Textile Fibres|woven drapery fabrics|woven and knitted fabrics/g;

/** Each with what stands about it. */
export function foreignIn(text: string, foreign: RegExp): string[] {
  return [...text.matchAll(foreign)].map(({ 0: word, index }) =>
    text.slice(Math.max(0, index - 30), index + word.length + 30),
  );
}

/** shared/article.ts - names of things with and without their article, so that a sentence never says "the the lance".
 *  May import: nothing. A name may have come with an article or a possessive of its own, as somebody typed it. */

const ARTICLE = /^(?:the|an?) +(?=\S)/i;
/** What stands where an article would. */
const OPENING = /^(?:(?:the|an?|his|her|its|their) +\S|\()/i;

/** "the lance" of "lance", "the lance" and "The lance"; "his sword" stays. The empty name stays empty. */
export function withArticle(name: string): string {
  const trimmed = name.trim();
  if (trimmed === "" || trimmed.startsWith("(")) return trimmed;
  return OPENING.test(trimmed) ? trimmed.charAt(0).toLowerCase() + trimmed.slice(1) : `the ${trimmed}`;
}

/** "lance" of "the lance": for a heading or a label. A name that is nothing but an article stays. */
export function withoutArticle(name: string): string {
  return name.trim().replace(ARTICLE, "");
}

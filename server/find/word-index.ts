/** server/find/word-index.ts - an index of folded words over one group of things, and which of them hold what is wanted.
 *  May import: lunr, shared/text. Text is folded whole before it is parted into words (the Arabic article is told by the
 *  word after it), so folding stands in the place of the index's own tokenizer and pipeline, and nothing is stemmed.
 *  Words of a query are given as terms, never as a query string: no sign in them is an operator. */
import lunr from "lunr";
import { maySitInside, type Wanted, wordsOfFolded } from "../../shared/text/wanted-words.ts";

/** What one thing has to be found by, folded. */
export interface IndexedWords {
  title: string;
  rest: string;
}

export interface Candidate {
  /** Place of the thing in the list the index was made of. */
  at: number;
  /** How many of the wanted words it holds exactly as they are. */
  exact: number;
  score: number;
}

export interface WordIndex {
  /** Things that hold every word wanted, in no order. Whether words stand beside each other is not looked at. */
  candidates(wanted: readonly Wanted[]): Candidate[];
}

const TITLE_BOOST = 3;
const EXACT_BOOST = 10;
const { LEADING, TRAILING, NONE } = lunr.Query.wildcard;

export function wordIndexOf(list: readonly IndexedWords[]): WordIndex {
  if (list.length === 0) return { candidates: () => [] };
  const builder = new lunr.Builder();
  builder.ref("at");
  builder.field("title", { boost: TITLE_BOOST });
  builder.field("rest");
  builder.tokenizer = tokenize as typeof lunr.tokenizer;
  list.forEach((words, at) => {
    builder.add({ at: String(at), ...words });
  });
  const index = builder.build();
  return {
    candidates(wanted) {
      if (wanted.length === 0) return [];
      const words = new Set(wanted.flatMap((one) => one.words));
      const results = index.query((query) => {
        for (const one of wanted) addTerms(query, one);
      });
      return results.map(({ ref, score, matchData }) => ({
        at: Number(ref),
        exact: Object.keys(matchData.metadata as object).filter((term) => words.has(term)).length,
        score,
      }));
    },
  };
}

function tokenize(folded: string): lunr.Token[] {
  return wordsOfFolded(folded).map((word) => new lunr.Token(word, {}));
}

function addTerms(query: lunr.Query, { words, goesOn }: Wanted): void {
  const required = { presence: lunr.Query.presence.REQUIRED, usePipeline: false };
  words.forEach((word, place) => {
    const onward = goesOn && place === words.length - 1;
    const inside = onward && words.length === 1 && maySitInside(word);
    query.term(word, { ...required, wildcard: onward ? (inside ? LEADING | TRAILING : TRAILING) : NONE });
    // The very word counts for more than one that only begins with it.
    if (onward) query.term(word, { boost: EXACT_BOOST, usePipeline: false });
  });
}

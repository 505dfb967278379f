/** server/publish/annotations/web-annotation.ts - the forms of the Web Annotation Data Model that are written here.
 *  May import: nothing. W3C Recommendation of 2017-02-23. Composite, List and Independents are not among them: the context
 *  of the standard does not know them. */

export const CONTEXT = "http://www.w3.org/ns/anno.jsonld";

/** What an annotation is made for. Of the motivations of the standard, those that its context knows too ("assessing" is
 *  called "reviewing" there). */
export type Motivation = "classifying" | "commenting" | "describing" | "identifying" | "questioning";

export interface TextualBody {
  type: "TextualBody";
  value: string;
  format: "text/plain";
  /** BCP 47; left out for words whose language nobody has said. */
  language?: string;
  purpose: "tagging" | "describing" | "commenting";
}

/** The row of the work that the annotation is about. */
export interface NamedBody {
  type: "SpecificResource";
  source: string;
  purpose: "identifying";
}

export interface TextQuoteSelector {
  type: "TextQuoteSelector";
  exact: string;
  prefix: string;
  suffix: string;
}

/** Counts code points from 0; the end is the first that is not part of it. */
export interface TextPositionSelector {
  type: "TextPositionSelector";
  start: number;
  end: number;
}

export interface FragmentSelector {
  type: "FragmentSelector";
  conformsTo: "http://www.w3.org/TR/media-frags/";
  value: string;
}

export interface SvgSelector {
  type: "SvgSelector";
  value: string;
}

export interface Target {
  type: "SpecificResource";
  source: {
    id: string;
    type: "Text" | "Image";
    format?: "text/plain";
    language?: string;
    textDirection?: "rtl" | "ltr";
  };
  selector: (TextQuoteSelector | TextPositionSelector)[] | FragmentSelector | SvgSelector;
}

export interface Annotation {
  id: string;
  type: "Annotation";
  motivation: Motivation;
  body: (TextualBody | NamedBody)[];
  target: Target[];
}

export interface AnnotationCollection {
  "@context": typeof CONTEXT;
  id: string;
  type: "AnnotationCollection";
  label: string;
  total: number;
  /** All of them on one page; left out where there are none. */
  first?: {
    id: string;
    type: "AnnotationPage";
    partOf: string;
    startIndex: 0;
    items: Annotation[];
  };
}

export * from "./citation-line.ts";
export * from "./cts-urn.ts";
export * from "./format-reference.ts";
export * from "./locus.ts";
export * from "./merge-references.ts";
export * from "./order-references.ts";
export * from "./parse-reference.ts";

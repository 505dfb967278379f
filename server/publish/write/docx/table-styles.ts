/** server/publish/write/docx/table-styles.ts - the two styles of tables and the one all paragraphs rest on, in the words of
 *  ECMA-376, since the maker of letters has none for them.
 *  May import: siblings, the room above. Thin rules, no boxes. */
import { INK, RULE } from "../print-colours.ts";
import { PLAIN_TABLE, STEP_TABLE } from "./docx-table.ts";

const rule = (side: string, size: number, colour: string): string =>
  `<w:${side} w:val="single" w:sz="${size}" w:space="0" w:color="${colour}"/>`;

const BORDERS = `<w:tblBorders>${rule("top", 6, INK)}${rule("bottom", 6, INK)}${rule("insideH", 4, RULE)}</w:tblBorders>`;
const MARGINS =
  '<w:tblCellMar><w:top w:w="60" w:type="dxa"/><w:left w:w="0" w:type="dxa"/><w:bottom w:w="60" w:type="dxa"/><w:right w:w="140" w:type="dxa"/></w:tblCellMar>';
const HEAD = `<w:tblStylePr w:type="firstRow"><w:tcPr><w:tcBorders><w:top w:val="nil"/>${rule("bottom", 6, INK)}</w:tcBorders></w:tcPr></w:tblStylePr>`;

function tableStyle(id: string, name: string): string {
  return `<w:style w:type="table" w:customStyle="1" w:styleId="${id}"><w:name w:val="${name}"/><w:qFormat/><w:tblPr>${BORDERS}${MARGINS}</w:tblPr>${HEAD}</w:style>`;
}

const NORMAL =
  '<w:style w:type="paragraph" w:default="1" w:styleId="Normal"><w:name w:val="Normal"/><w:qFormat/></w:style>';

export const MORE_STYLES = NORMAL + tableStyle(STEP_TABLE, "Step table") + tableStyle(PLAIN_TABLE, "Plain table");

/** What the maker of letters writes into each table beside its style, which would overrule it. */
export const OVERRULING_BORDERS = new RegExp(
  `(<w:tblStyle w:val="(?:${STEP_TABLE}|${PLAIN_TABLE})"/>.*?)<w:tblBorders>.*?</w:tblBorders>`,
  "g",
);

/** server/routes/attachments.ts - files that are kept in the store, by their content hash.
 *  May import: express types, server/store, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { refused } from "../errors.ts";
import { getAttachment } from "../store/index.ts";

/** Shown in the window; everything else is only ever saved, since a page or script among them must not run here. */
const SHOWN = ["image/png", "image/jpeg", "image/webp", "image/gif"];

export const sendAttachment = (desk: Desk) => (request: Request<{ hash: string }>, response: Response) => {
  const { hash } = request.params;
  const found = getAttachment(desk.store, hash);
  if (found === null) {
    return answer(
      response,
      refused("attachment_missing", `No file with the hash ${hash} is kept here. Load the page again.`),
    );
  }
  const shown = SHOWN.includes(found.mediaType);
  if (!shown) response.attachment(found.name);
  response
    .set({
      "Content-Security-Policy": "default-src 'none'; sandbox",
      "Cache-Control": "private, max-age=31536000, immutable",
      "Content-Type": found.mediaType,
    })
    .send(Buffer.from(found.bytes));
};

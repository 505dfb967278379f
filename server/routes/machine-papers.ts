/** server/routes/machine-papers.ts - a work for machines: TEI, and Web Annotations as JSON-LD.
 *  May import: express types, server/publish, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import type { Outcome } from "../errors.ts";
import { publishAnnotations } from "../publish/annotations/publish-annotations.ts";
import { publishTei } from "../publish/tei/publish-tei.ts";
import type { Store } from "../store/index.ts";

const sendMachinePaper =
  (publish: (store: Store, work: string) => Outcome<Uint8Array>, type: string) =>
  (desk: Desk) =>
  (request: Request<{ id: string }>, response: Response) => {
    const bytes = publish(desk.store, request.params.id);
    if (!bytes.ok) return answer(response, bytes);
    response.type(type).send(Buffer.from(bytes.value));
  };

/** The media type and profile the Web Annotation Protocol asks for. */
const ANNOTATIONS = 'application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"';

export const sendAnnotations = sendMachinePaper(publishAnnotations, ANNOTATIONS);
export const sendTei = sendMachinePaper(publishTei, "application/tei+xml; charset=utf-8");

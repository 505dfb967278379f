/** server/routes/index.ts - every route on one screen. A handler parses, asks the store, asks the core, answers.
 *  May import: express types, siblings. What each says and takes: schema/api.ts. */
import type { Express } from "express";
import type { Desk } from "../desk.ts";
import { sendAttachment } from "./attachments.ts";
import { sendHistory, takeChange, takeUndo } from "./changes.ts";
import { sendContents, sendHealth } from "./contents.ts";
import { sendDecisions } from "./cruxes.ts";
import {
  sendComparison,
  sendEditions,
  sendIssuedPaper,
  sendPaper,
  sendSides,
  sendSlip,
  sendSlipAgainstNow,
  takeEdition,
  takeSlip,
} from "./editions.ts";
import { sendEvents } from "./events.ts";
import { sendDrillJson, sendExercise } from "./exercises.ts";
import { sendFound } from "./find.ts";
import { acceptFile, previewFile } from "./imports.ts";
import { sendAnnotations, sendTei } from "./machine-papers.ts";
import { sendPassage, sendTexts, takeAmendment } from "./passages.ts";
import { sendPlan } from "./plans.ts";
import { sendPublishedSchema } from "./published.ts";
import { sendStyles } from "./styles.ts";
import { refuseAddress, sendWindow } from "./window.ts";
import { sendLetter, sendWork } from "./works.ts";

export function mountRoutes(app: Express, desk: Desk): void {
  app.get("/api/health", sendHealth(desk));
  app.get("/api/contents", sendContents(desk));
  app.get("/api/events", sendEvents(desk));
  app.get("/api/find", sendFound(desk));

  app.get("/api/works/:id", sendWork(desk));
  app.get("/api/works/:id/edition.tei.xml", sendTei(desk));
  app.get("/api/works/:id/annotations.jsonld", sendAnnotations(desk));
  app.get("/api/works/:id/letter", sendLetter(desk));
  app.get("/api/cruxes/:id/decisions", sendDecisions(desk));

  app.get("/api/passages/:id", sendPassage(desk));
  app.get("/api/passages/:id/texts", sendTexts(desk));
  app.post("/api/passages/:id/amend", takeAmendment(desk));

  app.get("/api/exercises/:id", sendExercise(desk));
  app.get("/api/exercises/:id/drill.json", sendDrillJson(desk));
  app.get("/api/exercises/:id/plan.svg", sendPlan(desk, "svg"));
  app.get("/api/exercises/:id/plan.png", sendPlan(desk, "png"));

  app.get("/api/paper.sides", sendSides(desk));
  app.get("/api/paper.:form", sendPaper(desk));
  app.get("/api/styles", sendStyles(desk));
  app.get("/api/works/:id/editions", sendEditions(desk));
  app.post("/api/editions", takeEdition(desk));
  app.get("/api/editions/:id/compare", sendComparison(desk));
  app.get("/api/editions/:id/paper.:form", sendIssuedPaper(desk));
  app.get("/api/editions/:id/slip.:form", sendSlipAgainstNow(desk));
  app.post("/api/slips", takeSlip(desk));
  app.get("/api/slips/:id/slip.:form", sendSlip(desk));

  app.get("/api/changes", sendHistory(desk));
  app.post("/api/changes", takeChange(desk));
  app.post("/api/changes/:id/undo", takeUndo(desk));

  app.post("/api/import/preview", previewFile());
  app.post("/api/import/accept", acceptFile(desk));

  app.get("/api/attachments/:hash", sendAttachment(desk));
  app.get("/schema/:name", sendPublishedSchema());

  app.use(["/api", "/schema"], refuseAddress);
  app.use(sendWindow());
}

/** server/app.ts - the Express app, whole and not listening: main.ts listens, tests listen on a port of their own.
 *  May import: express, siblings, server/routes. */
import express, { type Express, type NextFunction, type Request, type Response } from "express";
import { answerRefusal } from "./answer.ts";
import type { Desk } from "./desk.ts";
import { refused } from "./errors.ts";
import { mountRoutes } from "./routes/index.ts";
import { sameOriginOnly, strictHeaders } from "./same-origin.ts";

export function buildApp(desk: Desk): Express {
  const app = express();
  app.disable("x-powered-by");
  app.set("query parser", "simple");
  app.use(strictHeaders, sameOriginOnly);
  mountRoutes(app, desk);
  app.use(unexpected);
  return app;
}

/** What no handler foresaw: told in a sentence, shown in the terminal, its stack never sent. */
function unexpected(error: unknown, request: Request, response: Response, next: NextFunction): void {
  if (isBadAddress(error)) {
    const sentence = `The address ${request.originalUrl} cannot be read. Check what stands after each % in it.`;
    answerRefusal(response, refused("address_unknown", sentence).refusal);
    return;
  }
  console.error(`${request.method} ${request.path}:`, error);
  if (response.headersSent) {
    next(error);
    return;
  }
  const sentence =
    "The program made a mistake and did not finish this. Nothing was half stored; try again, and look at the terminal for what went wrong.";
  answerRefusal(response, refused("unexpected", sentence).refusal);
}

function isBadAddress(error: unknown): boolean {
  return error instanceof URIError;
}

/** server/answer.ts - an outcome as an HTTP answer: its value as JSON, or its refusal with the status of the code.
 *  May import: express types, server/errors. */
import type { Response } from "express";
import { type CodedRefusal, type Outcome, statusOf } from "./errors.ts";

export function answer<T>(response: Response, outcome: Outcome<T>): void {
  if (outcome.ok) response.json(outcome.value);
  else answerRefusal(response, outcome.refusal);
}

export function answerRefusal(response: Response, refusal: CodedRefusal): void {
  response.status(statusOf(refusal)).json(refusal);
}

/** server/routes/plans.ts - the plan of an exercise as a drawing and as a picture.
 *  May import: express types, server/publish, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { readPlanOptions } from "../publish/figures/plan-options.ts";
import { type PlanForm, publishPlan } from "../publish/figures/publish-plan.ts";

const TYPES: Readonly<Record<PlanForm, string>> = { svg: "image/svg+xml", png: "image/png" };

/** The drawing runs nothing and loads nothing, wherever it is shown. */
const DRAWING_POLICY = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'self'";

export const sendPlan = (desk: Desk, form: PlanForm) => (request: Request<{ id: string }>, response: Response) => {
  const options = readPlanOptions(request.query);
  const bytes = options.ok ? publishPlan(desk.store, request.params.id, options.value, form) : options;
  if (!bytes.ok) return answer(response, bytes);
  response.set("Content-Security-Policy", DRAWING_POLICY).type(TYPES[form]).send(Buffer.from(bytes.value));
};

/** server/routes/window.ts - the built window: its files, and its one page for every address that is no file.
 *  May import: Node's own modules, express, siblings of server. */
import { existsSync } from "node:fs";
import { join } from "node:path";
import express, { type NextFunction, type Request, type Response, Router } from "express";
import { answer } from "../answer.ts";
import { refused } from "../errors.ts";
import { distPath } from "../paths.ts";

export function sendWindow(): Router {
  const router = Router();
  // Files of the build have their content's hash in their names and may be kept; the page itself is asked for each time.
  router.use("/assets", express.static(join(distPath, "assets"), { immutable: true, maxAge: "1y", fallthrough: true }));
  router.use(express.static(distPath, { index: false, maxAge: 0 }));
  router.use((request: Request, response: Response, next: NextFunction) => {
    const isPage = (request.method === "GET" || request.method === "HEAD") && !/\.\w+$/.test(request.path);
    if (!isPage) return refuseAddress(request, response, next);
    const page = join(distPath, "index.html");
    if (!existsSync(page)) {
      const sentence = "The window is not built yet. Run `npm start`, which builds it, then load this page again.";
      return answer(response, refused("address_unknown", sentence));
    }
    response.set("Cache-Control", "no-cache").sendFile(page);
  });
  return router;
}

export function refuseAddress(request: Request, response: Response, _next: NextFunction): void {
  const asked = `${request.method} ${request.originalUrl.split("?")[0]}`;
  answer(response, refused("address_unknown", `Nothing answers at ${asked}. Check the address and the method.`));
}

/** server/listen.ts - opens a port on this machine only.
 *  May import: Node's own modules. */
import { createServer, type RequestListener, type Server } from "node:http";
import type { AddressInfo } from "node:net";

const HOST = "127.0.0.1";

export interface Listening {
  server: Server;
  /** "http://127.0.0.1:4321/" */
  address: string;
}

/** Listens at `port`, or at the next one that is free among `tries`. 0 takes any free one. Rejects when none is free. */
export async function listen(app: RequestListener, port: number, tries: number): Promise<Listening> {
  for (let attempt = 0; ; attempt += 1) {
    const server = createServer(app);
    try {
      await new Promise<void>((resolve, reject) => {
        server.once("error", reject);
        server.listen(port === 0 ? 0 : port + attempt, HOST, resolve);
      });
      return { server, address: `http://${HOST}:${(server.address() as AddressInfo).port}/` };
    } catch (error) {
      const taken = (error as NodeJS.ErrnoException).code === "EADDRINUSE";
      if (!taken || attempt + 1 >= tries) throw error;
    }
  }
}

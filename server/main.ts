/** server/main.ts - runs the server: opens the store, puts the demo into a new one, listens, and closes in good order.
 *  May import: siblings, server/store, server/demo. `npm start` builds what is missing and then runs this. */
import { buildApp } from "./app.ts";
import { issueDemoSheets } from "./demo/issued-sheets.ts";
import { loadDemo } from "./demo/load.ts";
import { deskFor } from "./desk.ts";
import { listen } from "./listen.ts";
import { startOptions } from "./start-options.ts";
import { openStore } from "./store/index.ts";

const FIRST_PORT = 4321;
const PORTS_TRIED = 50;
/** How long open requests may take to end when the server stops, in milliseconds. */
const PATIENCE_MS = 3000;

const options = startOptions(process.argv.slice(2), process.env);
if (!options.ok) stop(options.sentence, 2);
const opened = openStore(options.file);
if (!opened.ok) stop(opened.refusal.error.sentence, 1);
const store = opened.value;
const desk = deskFor(store);
const demo = loadDemo(store, desk.now());
const issued = demo?.ok ? await issueDemoSheets(store, desk.now()) : null;
for (const outcome of [demo, issued]) {
  if (outcome?.ok === false) console.error(`The invented book could not be put in. ${outcome.refusal.error.sentence}`);
}

const { server, address } = await listen(
  buildApp(desk),
  options.port ?? FIRST_PORT,
  options.port === null ? PORTS_TRIED : 1,
).catch((error: NodeJS.ErrnoException) => {
  store.close();
  const taken = error.code === "EADDRINUSE";
  return stop(taken ? `Port ${options.port ?? FIRST_PORT} is taken. Give another with --port.` : error.message, 1);
});
console.log(`Passagework is open at ${address}\nEverything is kept in ${store.path}. Control-C stops it.`);

let closing = false;
for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, close);

function close(): void {
  if (closing) return;
  closing = true;
  desk.news.close();
  const end = () => {
    store.close();
    process.exit(0);
  };
  server.close(end);
  server.closeIdleConnections();
  setTimeout(end, PATIENCE_MS).unref();
}

function stop(sentence: string, code: number): never {
  console.error(sentence);
  process.exit(code);
}

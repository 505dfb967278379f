/** client/state/no-eval.ts - has zod check values without making code at run time, which the window's policy forbids.
 *  May import: zod. Imported first of all, since zod asks for it when a schema is made. */
import { config } from "zod";

config({ jitless: true });

/** server/main.ts - the entry of the server; not written yet, it only says so. */
console.log("Passagework has no server yet.");

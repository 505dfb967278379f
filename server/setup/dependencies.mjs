/** server/setup/dependencies.mjs - installs the packages of the lock file when they are missing or out of date.
 *  May import: Node's own modules and siblings; it runs before anything is installed.
 *  What is installed is told by a stamp inside node_modules (lock file and Node's binary interface), so a second start
 *  costs two small reads. Without a stamp, npm's own record is compared with the lock file before anything is thrown away. */
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { complaintOf, runs } from "./run-command.mjs";

/** Makes sure that the packages in `root`/node_modules are those of the lock file and were built for this Node.
 *  Ends the process with a sentence when they cannot be installed. */
export function ensureDependencies(root) {
  const wanted = wantedStamp(root);
  const stampFile = join(root, "node_modules", ".passagework-stamp");
  if (readIfThere(stampFile) === wanted) return;
  if (!(matchesLock(root) && databaseComplaint(root) === null)) install(root);
  writeFileSync(stampFile, wanted);
}

function wantedStamp(root) {
  const lock = readFileSync(join(root, "package-lock.json"));
  const hash = createHash("sha256").update(lock).digest("hex");
  return `${hash} ${process.platform} ${process.arch} abi ${process.versions.modules}\n`;
}

/** True when npm's record of what it installed holds every package of the lock file in the same version. Packages that
 *  are optional (built for other machines) may be absent. */
function matchesLock(root) {
  const recordText = readIfThere(join(root, "node_modules", ".package-lock.json"));
  if (recordText === null) return false;
  const installed = JSON.parse(recordText).packages ?? {};
  const locked = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")).packages;
  return Object.entries(locked).every(([place, entry]) => {
    if (place === "") return true;
    const found = installed[place];
    return found === undefined ? entry.optional === true : found.version === entry.version;
  });
}

/** null when the database's native part loads in this Node, else what went wrong. */
function databaseComplaint(root) {
  const probe = "new (require('better-sqlite3'))(':memory:').close()";
  return complaintOf(process.execPath, ["-e", probe], { cwd: root });
}

function install(root) {
  console.log("Installing what is missing. The first time this takes a minute or two.");
  if (!npmCi(root) && !(addCompiler() && npmCi(root))) {
    console.error(
      "\nThe packages could not be installed; what npm said stands above. Two causes are usual. There is no way to the\n" +
        "package registry: check the connection or the proxy, then run the command again. Or there is no ready-made\n" +
        "binary of the database for this Node and machine, and it could not be built here: install a C++ compiler, make\n" +
        "and python3 (on Debian: apt-get install g++ make python3), or use Node 20, 22 or 24, then run the command again.",
    );
    process.exit(1);
  }
  const complaint = databaseComplaint(root);
  if (complaint === null) return;
  console.error(
    `${complaint}\n\nThe packages are installed, but the database does not load; the reason stands above. If npm is set to\n` +
      "ignore install scripts, run `npm rebuild better-sqlite3 --ignore-scripts=false`, then the command again.",
  );
  process.exit(1);
}

function npmCi(root) {
  // Development packages too, whatever NODE_ENV says: the client is built on this machine.
  const args = ["ci", "--include=dev", "--no-audit", "--no-fund", "--loglevel=error"];
  const env = nodeHeaders();
  // npm tells its scripts where it is itself; that also works where `npm` is a batch file.
  const npm = process.env.npm_execpath;
  if (npm?.endsWith("js")) return runs(process.execPath, [npm, ...args], { cwd: root, env });
  return runs("npm", args, { cwd: root, env });
}

/** Where this Node brings its C++ headers along, a native build need not download them. They go before a setting of the
 *  machine's, which may belong to another Node. */
function nodeHeaders() {
  const prefix = dirname(dirname(process.execPath));
  return existsSync(join(prefix, "include", "node", "node.h")) ? { npm_config_nodedir: prefix } : {};
}

/** On Debian as root a missing compiler can be had without asking. True when one was installed just now. */
function addCompiler() {
  if (!isRootOnDebian() || complaintOf("g++", ["--version"]) === null) return false;
  console.log("Installing a C++ compiler, because the database has to be built on this machine.");
  return aptInstall(["g++", "make", "python3"]) === null;
}

/** True for root on Debian itself; its daughters package browsers and compilers in other ways. */
export function isRootOnDebian() {
  if (process.getuid?.() !== 0) return false;
  return /^ID="?debian"?$/m.test(readIfThere("/etc/os-release") ?? "");
}

/** Installs Debian packages; null when it went well, else what apt said. Root only. */
export function aptInstall(packages) {
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  return (
    complaintOf("apt-get", ["update", "-q"], { env }) ??
    complaintOf("apt-get", ["install", "-y", "-q", "--no-install-recommends", ...packages], { env })
  );
}

/** The text of a file; null when it cannot be read. */
function readIfThere(file) {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return null;
  }
}

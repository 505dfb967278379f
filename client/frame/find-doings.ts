/** client/frame/find-doings.ts - something to do, found by its words: every room that can be gone to from here, and the
 *  shared things of the work.
 *  May import: shared/text, siblings of client. */
import { foldForSearch } from "../../shared/text/fold.ts";
import { WordFinder, wantedWords } from "../../shared/text/wanted-words.ts";
import { openShared } from "../read/shared-open.ts";
import { passage } from "../state/passage.ts";
import { go, route } from "../state/route.ts";

export interface Room {
  room: string;
  word: string;
  href: string;
}

export interface Doing {
  /** As it is offered: "Print this exercise". */
  say: string;
  run(): void;
}

/** What a room is for, as something to do; `also` are other words it is found by. */
const IN_ROOM: Readonly<Record<string, { say: string; also: string }>> = {
  read: { say: "Read on in the passage", also: "mark text words" },
  decide: { say: "Decide between readings", also: "cruxes count clashes" },
  ride: { say: "Ride this exercise", also: "plan play ground hands" },
  try: { say: "Log a trial", also: "try log" },
  print: { say: "Print this exercise", also: "save sheet paper drill json export" },
  import: { say: "Bring in a text", also: "import add open file paste translation revision" },
  history: { say: "See the history of this work", also: "changes undo log" },
};

/** Fewer letters would offer something to do for nearly any word. */
const LEAST_LETTERS = 2;

/** What can be done here that has all the words typed. `open` says that a passage is open. */
export function doingsFor(typed: string, rooms: readonly Room[]): Doing[] {
  const finder = new WordFinder(wantedWords(typed));
  const letters = finder.wanted.reduce((sum, { words }) => sum + words.join("").length, 0);
  if (letters < LEAST_LETTERS) return [];
  return offered(rooms).flatMap(({ say, also, run }) => {
    const words = foldForSearch(`${say} ${also}`);
    return finder.wanted.every((_, number) => finder.holds(words, number)) ? [{ say, run }] : [];
  });
}

function offered(rooms: readonly Room[]): (Doing & { also: string })[] {
  const inRooms = rooms
    .filter(({ room }) => room !== route.value.room)
    .map(({ room, word, href }) => {
      const { say, also } = IN_ROOM[room] ?? { say: word, also: "" };
      return { say, also, run: () => go(href) };
    });
  if (passage.value === null || route.value.room !== "read") return inRooms;
  return [
    ...inRooms,
    {
      say: "Open the objects, holds and ground",
      also: "shared things stations movements opponents",
      run: () => openShared("objects"),
    },
  ];
}

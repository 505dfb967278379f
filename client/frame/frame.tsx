/** client/frame/frame.tsx - the bar with the rooms, the room that is open, and the strip that says what was stored. */

import { DecideRoom } from "../decide/decide-room.tsx";
import { HistoryRoom } from "../history/history-room.tsx";
import { ImportRoom } from "../import/import-room.tsx";
import { PrintRoom } from "../print/print-room.tsx";
import { ReadRoom } from "../read/read-room.tsx";
import { RideRoom } from "../ride/ride-room.tsx";
import { exercise, passageId, work } from "../state/passage.ts";
import { follow, route } from "../state/route.ts";
import { ConflictDialog } from "./conflict-dialog.tsx";
import { FindBox } from "./find-box.tsx";
import { KeysSheet } from "./keys-sheet.tsx";
import { Signed } from "./signed.tsx";
import { StoredStrip } from "./stored-strip.tsx";

export function Frame() {
  const here = route.value;
  const rooms = [
    { room: "read", word: "Read", href: passageId.value ? `/read/${passageId.value}` : "/" },
    { room: "decide", word: "Decide", href: exercise.value ? `/decide/${exercise.value.id}` : "/decide" },
    { room: "ride", word: "Ride", href: exercise.value ? `/ride/${exercise.value.id}` : "/ride" },
    { room: "print", word: "Print", href: exercise.value ? `/print/${exercise.value.id}` : "/print" },
    { room: "import", word: "Bring in", href: "/import" },
    { room: "history", word: "History", href: work.value ? `/history/${work.value.id}` : "/history" },
  ];
  return (
    <>
      <a class="skip" href="#leaf">
        To the passage
      </a>
      <header class="bar">
        <a class="name" href="/" onClick={follow}>
          Passagework
        </a>
        <nav aria-label="Rooms">
          {rooms.map(({ room, word, href }) => (
            <a key={room} href={href} onClick={follow} aria-current={here.room === room ? "page" : undefined}>
              {word}
            </a>
          ))}
        </nav>
        <FindBox rooms={rooms} />
        <KeysSheet />
        <Signed />
      </header>
      {here.room === "read" && <ReadRoom passage={here.passage} />}
      {here.room === "decide" && <DecideRoom of={here.of} id={here.id} />}
      {here.room === "ride" && <RideRoom exercise={here.exercise} />}
      {here.room === "print" && <PrintRoom of={here.of} id={here.id} />}
      {here.room === "import" && <ImportRoom work={here.work} />}
      {here.room === "history" && <HistoryRoom work={here.work} />}
      <StoredStrip />
      <ConflictDialog />
    </>
  );
}

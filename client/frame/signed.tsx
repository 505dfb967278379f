/** client/frame/signed.tsx - whose name changes are signed with, and the sitting they are kept under: one is begun,
 *  chosen, or ended here. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { RecordOf } from "../../schema/record.ts";
import { passageId, work } from "../state/passage.ts";
import { all, one } from "../state/rows.ts";
import { sitting, today, who } from "../state/session.ts";
import { create, newId, write } from "../state/write.ts";

/** "4 May, with the translator": the day, and who was there. */
function sittingWords(row: RecordOf<"sittings">): string {
  return [row.on, row.who.join(", ")].filter(Boolean).join(", ");
}

export function Signed() {
  const dialog = useRef<HTMLDialogElement>(null);
  const now = one("sittings", sitting.value);
  const loaded = passageId.value !== null && work.value !== null;
  useEffect(() => {
    // A sitting belongs to one work. In another, or when it was taken away, changes are not kept under it.
    if (loaded && sitting.value !== null && now === null) sitting.value = null;
  }, [loaded, now, work.value?.id]);
  return (
    <span class="signed">
      <button
        type="button"
        class="quiet"
        aria-haspopup="dialog"
        onClick={() => dialog.current?.showModal()}
        title="Whose name changes are signed with, and the sitting they are kept under"
      >
        signed {who.value}
        {now && `, sitting of ${now.on}`}
      </button>
      <dialog ref={dialog} aria-label="Who works here, and in which sitting">
        <Who />
        <Sittings />
        <p class="says">
          <button type="button" class="quiet" onClick={() => dialog.current?.close()}>
            done
          </button>
        </p>
      </dialog>
    </span>
  );
}

function Who() {
  const typed = useSignal(who.value);
  const store = () => {
    if (typed.value.trim() !== "") who.value = typed.value.trim();
    typed.value = who.value;
  };
  return (
    <label class="field">
      <span>Changes made at this window are signed</span>
      <input
        value={typed.value}
        maxLength={200}
        onInput={(event) => (typed.value = event.currentTarget.value)}
        onBlur={store}
        onKeyDown={(event) => {
          if (event.key === "Enter") store();
        }}
      />
    </label>
  );
}

function Sittings() {
  const begun = useSignal({ who: "", place: "", note: "" });
  const open = work.value;
  if (open === null) {
    return <p class="meta">Open a passage to begin a sitting or to choose one.</p>;
  }
  const list = all("sittings")
    .filter((row) => row.work === open.id)
    .sort((a, b) => (a.on < b.on ? 1 : -1));
  const now = one("sittings", sitting.value);
  const begin = async () => {
    const { who: names, place, note } = begun.value;
    const row: RecordOf<"sittings"> = {
      id: newId(),
      work: open.id,
      on: today(),
      who: names
        .split(",")
        .map((name) => name.trim())
        .filter(Boolean),
      place: place.trim(),
      note: note.trim(),
    };
    if (await write([create("sittings", row)], `A sitting${row.who.length > 0 ? ` with ${row.who.join(", ")}` : ""}`)) {
      sitting.value = row.id;
      begun.value = { who: "", place: "", note: "" };
    }
  };
  const field = (name: "who" | "place" | "note") => ({
    value: begun.value[name],
    onInput: (event: { currentTarget: HTMLInputElement }) => {
      begun.value = { ...begun.value, [name]: event.currentTarget.value };
    },
  });
  return (
    <>
      {now ? (
        <p>
          Changes are kept under the sitting of {sittingWords(now)}.{" "}
          <button type="button" onClick={() => (sitting.value = null)}>
            End the sitting
          </button>
        </p>
      ) : (
        <p class="meta">No sitting is under way.</p>
      )}
      {list.length > 0 && (
        <label class="field">
          <span>{now ? "or go on in another" : "Go on in"}</span>
          <select value={now?.id ?? ""} onChange={(event) => (sitting.value = event.currentTarget.value || null)}>
            <option value="">no sitting</option>
            {list.map((row) => (
              <option key={row.id} value={row.id}>
                {sittingWords(row)}
              </option>
            ))}
          </select>
        </label>
      )}
      <form
        class="inset"
        onSubmit={(event) => {
          event.preventDefault();
          void begin();
        }}
      >
        <p class="label">Begin a sitting today</p>
        <label class="field">
          <span>with whom, commas between</span>
          <input {...field("who")} placeholder="the translator" />
        </label>
        <label class="field">
          <span>where</span>
          <input {...field("place")} />
        </label>
        <label class="field">
          <span>what for</span>
          <input {...field("note")} />
        </label>
        <button type="submit">Begin it</button>
      </form>
    </>
  );
}

/** client/decide/exceptions.tsx - places where a crux is read otherwise than elsewhere, each with its reason. */
import { useSignal } from "@preact/signals";
import { short } from "../read/row-names.ts";
import { storeFields } from "../read/store-fields.ts";
import { one, ranked } from "../state/rows.ts";
import { stageWords } from "./stage-words.ts";

/** `elements` are those where the crux may be read otherwise. */
export function Exceptions({ crux: id, elements }: { crux: string; elements: readonly string[] }) {
  const asking = useSignal(false);
  const crux = one("cruxes", id);
  if (crux === null) return null;
  const readings = ranked("readings").filter((reading) => reading.crux === id);
  const own = `Crux “${short(crux.title, 40)}”`;
  // A doubt about one place has no other place to be read otherwise at.
  const spans = crux.scope === "principle" || crux.exercise === null;
  const free = elements.filter((element) => !crux.exceptions.some((exception) => exception.element === element));
  return (
    <div class="exceptions">
      {crux.exceptions.map(({ element, reading, reason }) => (
        <p key={element}>
          At {stageWords(element)} it is read as “{one("readings", reading)?.title}”: {reason}{" "}
          <button
            type="button"
            class="quiet"
            onClick={() =>
              void storeFields(
                "cruxes",
                id,
                { exceptions: crux.exceptions.filter((exception) => exception.element !== element) },
                `${own}: at ${stageWords(element)} read as elsewhere again`,
              )
            }
          >
            read it as elsewhere
          </button>
        </p>
      ))}
      {!asking.value && spans && free.length > 0 && readings.length > 1 && (
        <button type="button" class="quiet" onClick={() => (asking.value = true)}>
          read it otherwise at one place…
        </button>
      )}
      {asking.value && (
        <form
          class="inset"
          onKeyDown={(event) => {
            if (event.key === "Escape") asking.value = false;
          }}
          onSubmit={(event) => {
            event.preventDefault();
            const data = new FormData(event.currentTarget);
            const [element, reading, reason] = ["element", "reading", "reason"].map((name) =>
              String(data.get(name) ?? "").trim(),
            );
            if (!element || !reading || !reason) return;
            void storeFields(
              "cruxes",
              id,
              { exceptions: [...crux.exceptions, { element, reading, reason }] },
              `${own}: at ${stageWords(element)} read as “${short(one("readings", reading)?.title ?? "", 40)}”`,
            ).then((done) => {
              if (done) asking.value = false;
            });
          }}
        >
          <label class="field">
            <span>At</span>
            <select name="element">
              {free.map((element) => (
                <option key={element} value={element}>
                  {stageWords(element)}
                </option>
              ))}
            </select>
          </label>
          <label class="field">
            <span>it is read as</span>
            <select name="reading">
              {readings.map(({ id: reading, title }) => (
                <option key={reading} value={reading}>
                  {title}
                </option>
              ))}
            </select>
          </label>
          <label class="field">
            <span>because</span>
            <input name="reason" required />
          </label>
          <div class="row">
            <button type="submit">Read it so there</button>
            <button type="button" class="quiet" onClick={() => (asking.value = false)}>
              not now
            </button>
          </div>
        </form>
      )}
    </div>
  );
}

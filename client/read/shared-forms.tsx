/** client/read/shared-forms.tsx - the forms of the shared things, one a kind. */
import { useSignal } from "@preact/signals";
import type { ComponentChildren, VNode } from "preact";
import type { RecordOf } from "../../schema/record.ts";
import { GROUND_SLOTS, HOLD_SLOTS, OBJECT_KINDS, OBJECT_SLOTS, THREAT_SLOTS } from "../../schema/riding.ts";
import type { SlotAddress } from "../../schema/slot.ts";
import { slotLabel } from "../../shared/drill/slot-labels.ts";
import { rankBetween } from "../../shared/rank.ts";
import { exercise } from "../state/passage.ts";
import { one, ranked } from "../state/rows.ts";
import { create, newId } from "../state/write.ts";
import { ActionList } from "./action-list.tsx";
import { BasisList } from "./basis-list.tsx";
import { Choice } from "./choice.tsx";
import { DraftField, LabelledField } from "./draft-field.tsx";
import { GuardEditor } from "./guard-editor.tsx";
import { short } from "./row-names.ts";
import { openShared, type SharedKind } from "./shared-open.ts";
import { SlotEditor, wantedSlot } from "./slot-editor.tsx";
import { restedOn } from "./slot-line.tsx";
import { addressKey, heldAt } from "./slot-place.ts";
import { storeEdits, storeFields } from "./store-fields.ts";
import { wordsFor } from "./support.ts";
import { TakeAway } from "./take-away.tsx";
import { WarrantChoice } from "./warrant-choice.tsx";

/** Slots that something stands in, and the words that offer the others. */
function Slots({ kind, id, slots }: { kind: SlotAddress["kind"]; id: string; slots: readonly string[] }) {
  const asked = useSignal<readonly string[]>([]);
  const addressOf = (slot: string): SlotAddress => ({ kind, id, slot });
  const shown = slots.filter((slot) => heldAt(addressOf(slot)) !== undefined || asked.value.includes(slot));
  const offered = slots.filter((slot) => !shown.includes(slot));
  return (
    <>
      {shown.map((slot) => (
        <SlotEditor
          key={slot}
          address={addressOf(slot)}
          onAway={() => {
            asked.value = asked.value.filter((other) => other !== slot);
          }}
        />
      ))}
      {offered.length > 0 && (
        <p class="says">
          <span class="meta">say:</span>
          {offered.map((slot) => (
            <button
              key={slot}
              type="button"
              class="quiet"
              onClick={() => {
                asked.value = [...asked.value, slot];
                wantedSlot.value = addressKey(addressOf(slot));
              }}
            >
              {slotLabel(slot)}
            </button>
          ))}
        </p>
      )}
    </>
  );
}

type Named = "objects" | "holds" | "movements" | "grounds" | "threats";

/** Name, what the kind has of its own, note, and taking it away. */
function NamedForm({ kind, id, children }: { kind: Named; id: string; children?: ComponentChildren }) {
  const row = one(kind, id);
  if (row === null) return null;
  const own = `“${short(row.name, 40)}”`;
  return (
    <div class="shared-form">
      <LabelledField
        row={{ kind, id }}
        name="name"
        label="Name"
        value={row.name}
        check={(text) => (text.trim() === "" ? "Expected a name." : "")}
        store={(name, base) =>
          storeFields<Named>(kind, id, { name: name.trim() }, `${own}: called “${name.trim()}”`, base)
        }
      />
      {children}
      <LabelledField
        row={{ kind, id }}
        name="note"
        label="Note"
        many
        value={row.note}
        store={(note, base) => storeFields<Named>(kind, id, { note }, `${own}: a note`, base)}
      />
      <p class="says">
        <TakeAway kind={kind} id={id} what={own} why={`${own}: taken away`} after={() => openShared(kind)} />
      </p>
    </div>
  );
}

const kinds = OBJECT_KINDS.map((value) => ({ value, words: value }));

function ObjectForm({ id }: { id: string }) {
  const object = one("objects", id);
  const list = ranked("objects");
  if (object === null) return null;
  const own = `“${short(object.name, 40)}”`;
  return (
    <NamedForm kind="objects" id={id}>
      <div class="row">
        <Choice
          label="What it is"
          value={object.is}
          options={kinds}
          take={(is) => void storeFields("objects", id, { is }, `${own} is a ${is}`)}
        />
        {list[0]?.id === id ? (
          <span class="meta">has a column of its own on sheets</span>
        ) : (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              const rank = rankBetween(null, list[0]?.rank ?? null);
              void storeFields("objects", id, { rank }, `${own} has the column of its own on sheets`);
            }}
          >
            give it the column of its own on sheets
          </button>
        )}
      </div>
      <Slots kind="objects" id={id} slots={Object.keys(OBJECT_SLOTS)} />
    </NamedForm>
  );
}

function HoldForm({ id }: { id: string }) {
  const hold = one("holds", id);
  if (hold === null) return null;
  const own = `Hold “${short(hold.name, 40)}”`;
  return (
    <NamedForm kind="holds" id={id}>
      <div class="row">
        <Choice
          label="How many hands"
          value={hold.hands}
          options={[
            { value: "one", words: "with one hand" },
            { value: "two", words: "with two hands" },
          ]}
          take={(hands) =>
            void storeFields("holds", id, { hands }, `${own}: with ${hands} hand${hands === "two" ? "s" : ""}`)
          }
        />
        <label>
          <input
            type="checkbox"
            checked={hold.strong}
            onChange={(event) => {
              const strong = event.currentTarget.checked;
              void storeFields("holds", id, { strong }, `${own}: ${strong ? "" : "not "}strong`);
            }}
          />{" "}
          <span>strong: keeps two supports</span>
        </label>
      </div>
      <fieldset class="bare row">
        <legend class="label">for</legend>
        {OBJECT_KINDS.map((kind) => (
          <label key={kind}>
            <input
              type="checkbox"
              checked={hold.for.includes(kind)}
              onChange={(event) => {
                const list = OBJECT_KINDS.filter((other) =>
                  other === kind ? event.currentTarget.checked : hold.for.includes(other),
                );
                void storeFields("holds", id, { for: list }, `${own}: for ${list.join(", ") || "nothing"}`);
              }}
            />{" "}
            <span>{kind}</span>
          </label>
        ))}
      </fieldset>
      <Slots
        kind="holds"
        id={id}
        slots={Object.keys(HOLD_SLOTS).filter(
          (slot) => hold.hands === "two" || (slot !== "secondZone" && slot !== "secondPalm"),
        )}
      />
    </NamedForm>
  );
}

function MovementForm({ id }: { id: string }) {
  const movement = one("movements", id);
  return (
    <NamedForm kind="movements" id={id}>
      <ActionList
        owner={{ ownerKind: "movements", owner: id }}
        what={`Movement “${short(movement?.name ?? "", 40)}”`}
        before={[]}
      />
    </NamedForm>
  );
}

function GroundForm({ id }: { id: string }) {
  const ground = one("grounds", id);
  const name = useSignal("");
  if (ground === null) return null;
  const own = `Ground “${short(ground.name, 40)}”`;
  const here = exercise.value;
  const stations = ranked("stations").filter((station) => station.ground === id);
  const add = async () => {
    const words = name.value.trim();
    if (words === "") return;
    const station: RecordOf<"stations"> = {
      id: newId(),
      ground: id,
      rank: rankBetween(stations.at(-1)?.rank ?? null, null),
      name: words,
      is: "point",
      partner: null,
      note: "",
    };
    if (await storeEdits([create("stations", station)], `${own}: the station “${short(words, 40)}”`)) name.value = "";
  };
  return (
    <NamedForm kind="grounds" id={id}>
      <div class="row">
        <Choice
          label="Its shape"
          value={ground.is}
          options={(["rectangular", "round-ended", "round"] as const).map((value) => ({ value, words: value }))}
          take={(is) => void storeFields("grounds", id, { is }, `${own}: ${is}`)}
        />
        {here && here.ground !== id && (
          <button
            type="button"
            class="quiet"
            onClick={() => void storeFields("exercises", here.id, { ground: id }, `${own}: ridden on it`)}
          >
            this exercise is ridden on it
          </button>
        )}
        {here?.ground === id && <span class="meta">this exercise is ridden on it</span>}
      </div>
      <Slots kind="grounds" id={id} slots={Object.keys(GROUND_SLOTS)} />
      <h4>Stations</h4>
      {stations.map((station) => (
        <div key={station.id} class="answer">
          <div class="row">
            <DraftField
              row={{ kind: "stations", id: station.id }}
              name="name"
              label="Name of the station"
              value={station.name}
              size={16}
              check={(text) => (text.trim() === "" ? "Expected a name." : "")}
              store={(text, base) =>
                storeFields("stations", station.id, { name: text.trim() }, `Station “${short(text.trim(), 40)}”`, base)
              }
            />
            <Choice
              label={`“${station.name}” is`}
              value={station.is}
              options={(["point", "line", "area"] as const).map((value) => ({ value, words: value }))}
              take={(is) =>
                void storeFields("stations", station.id, { is }, `Station “${short(station.name, 40)}”: ${is}`)
              }
            />
            <Choice
              label={`Ridden on the other rein, “${station.name}” becomes`}
              value={station.partner ?? "none"}
              options={[
                { value: "none", words: "no partner" },
                ...stations
                  .filter((other) => other.id !== station.id)
                  .map((other) => ({ value: other.id, words: `partner: ${other.name}` })),
              ]}
              take={(partner) =>
                void storeFields(
                  "stations",
                  station.id,
                  { partner: partner === "none" ? null : partner },
                  `Station “${short(station.name, 40)}”: its partner`,
                )
              }
            />
            <TakeAway
              kind="stations"
              id={station.id}
              what={`“${station.name}”`}
              why={`Station “${short(station.name, 40)}” taken away`}
            />
          </div>
          <SlotEditor address={{ kind: "stations", id: station.id, slot: "outline" }} />
        </div>
      ))}
      <form
        class="row"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <input
          aria-label="Another station"
          placeholder="a station: the well"
          size={20}
          value={name.value}
          onInput={(event) => (name.value = event.currentTarget.value)}
        />
        <button type="submit">Add</button>
      </form>
    </NamedForm>
  );
}

function ThreatForm({ id }: { id: string }) {
  return (
    <NamedForm kind="threats" id={id}>
      <Slots kind="threats" id={id} slots={Object.keys(THREAT_SLOTS)} />
    </NamedForm>
  );
}

function StandingForm({ id }: { id: string }) {
  const standing = one("standings", id);
  if (standing === null) return null;
  const own = `“${short(standing.title, 40)}”`;
  const here = exercise.value;
  return (
    <div class="shared-form">
      <LabelledField
        row={{ kind: "standings", id }}
        name="title"
        label="What it says"
        value={standing.title}
        check={(text) => (text.trim() === "" ? "Expected what it says." : "")}
        store={(title, base) =>
          storeFields("standings", id, { title: title.trim() }, `${own}: called “${title.trim()}”`, base)
        }
      />
      <div class="row">
        <Choice
          label="What it is"
          value={standing.is}
          options={[
            { value: "instruction", words: "holds throughout" },
            { value: "never mentioned", words: "is never mentioned" },
          ]}
          take={(is) => void storeFields("standings", id, { is }, `${own}: ${is}`)}
        />
        <Choice
          label="Of what"
          value={standing.exercise === null ? "work" : "exercise"}
          options={[
            { value: "work", words: "in the whole work" },
            ...(here || standing.exercise ? [{ value: "exercise", words: "in this exercise" } as const] : []),
          ]}
          take={(of) =>
            void storeFields(
              "standings",
              id,
              { exercise: of === "work" ? null : (here?.id ?? null) },
              `${own}: of the ${of}`,
            )
          }
        />
        <WarrantChoice
          label={own}
          support={standing.existence}
          marks={wordsFor("standings", id)}
          take={(existence) => void storeFields("standings", id, { existence }, `${own}: ${existence.warrant}`)}
        />
      </div>
      <GuardEditor
        guard={standing.guard}
        store={(guard, why) => void storeFields("standings", id, { guard }, `${own}: ${why}`)}
      />
      {standing.is === "instruction" && (
        <ActionList owner={{ ownerKind: "standings", owner: id }} what={`Throughout, ${own}`} before={[]} />
      )}
      <p class="label">It rests on</p>
      <BasisList
        bases={standing.existence.basis}
        row={{ kind: "standings", id }}
        label={own}
        store={(basis, also, why) =>
          storeFields("standings", id, { existence: restedOn(standing.existence, basis) }, why, undefined, also)
        }
      />
      <LabelledField
        row={{ kind: "standings", id }}
        name="note"
        label="Note"
        many
        value={standing.note}
        store={(note, base) => storeFields("standings", id, { note }, `${own}: a note`, base)}
      />
      <p class="says">
        <TakeAway
          kind="standings"
          id={id}
          what={own}
          why={`${own}: taken away`}
          after={() => openShared("standings")}
        />
      </p>
    </div>
  );
}

export const SHARED_FORMS: Record<SharedKind, (props: { id: string }) => VNode | null> = {
  objects: ObjectForm,
  holds: HoldForm,
  movements: MovementForm,
  grounds: GroundForm,
  threats: ThreatForm,
  standings: StandingForm,
};

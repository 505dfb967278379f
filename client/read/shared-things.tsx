/** client/read/shared-things.tsx - the things a work shares among its exercises, in a dialog: objects, holds, movements,
 *  grounds with their stations, opponents, instructions that stand throughout. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { work } from "../state/passage.ts";
import { all, ranked } from "../state/rows.ts";
import { create } from "../state/write.ts";
import { short } from "./row-names.ts";
import { SHARED_FORMS } from "./shared-forms.tsx";
import { newShared } from "./shared-new.ts";
import { openShared, SHARED_KINDS, type SharedKind, shared } from "./shared-open.ts";
import { storeEdits } from "./store-fields.ts";
import { StationNames } from "./value-editors.tsx";

const TITLES: Record<SharedKind, { many: string; another: string; none: string }> = {
  objects: {
    many: "objects",
    another: "Name another object",
    none: "No object is named yet: the spear, the shield, the sheath.",
  },
  holds: { many: "holds", another: "Name another hold", none: "No hold is named yet: a way of carrying an object." },
  movements: {
    many: "movements",
    another: "Name another movement",
    none: "No movement is named yet: actions that are done again and again under one name.",
  },
  grounds: { many: "grounds and stations", another: "Name another ground", none: "No riding ground is named yet." },
  threats: { many: "opponents", another: "Name another opponent", none: "No opponent is named yet." },
  standings: {
    many: "what stands throughout",
    another: "Add what holds throughout",
    none: "Nothing is said to hold throughout yet: the gait, the usual opening.",
  },
};

/** The link that opens the dialog, and the dialog. Stands once on the page. */
export function SharedThings() {
  const dialog = useRef<HTMLDialogElement>(null);
  const open = shared.value;
  useEffect(() => {
    const box = dialog.current;
    if (box === null) return;
    if (open && !box.open) box.showModal();
    if (!open && box.open) box.close();
  }, [open]);
  if (work.value === null) return null;
  return (
    <>
      <button type="button" class="quiet" onClick={() => openShared("objects")}>
        objects, holds, ground…
      </button>
      <StationNames />
      <dialog
        ref={dialog}
        class="shared"
        aria-label={`Things of ${work.value.title}`}
        onClose={() => (shared.value = null)}
        onKeyDown={(event) => event.stopPropagation()}
      >
        {open && <Open kind={open.kind} id={open.id} />}
      </dialog>
    </>
  );
}

function Open({ kind, id }: { kind: SharedKind; id: string | null }) {
  const name = useSignal("");
  const { another, none } = TITLES[kind];
  const rows = kind === "threats" ? all(kind) : ranked(kind);
  const make = async () => {
    const words = name.value.trim();
    const row = words === "" ? null : newShared(kind, words);
    if (
      row &&
      (await storeEdits([create(kind, row)], `${another.replace(/^(Name|Add) /, "")}: “${short(words, 40)}”`))
    ) {
      name.value = "";
      openShared(kind, row.id);
    }
  };
  const Form = SHARED_FORMS[kind] as (props: { id: string }) => ReturnType<(typeof SHARED_FORMS)["objects"]>;
  return (
    <>
      <header class="form-head">
        <nav aria-label="Kinds of things" class="says">
          {SHARED_KINDS.map((other) => (
            <button
              key={other}
              type="button"
              class="quiet"
              aria-current={other === kind ? "true" : undefined}
              onClick={() => openShared(other)}
            >
              {TITLES[other].many}
            </button>
          ))}
        </nav>
        <button type="button" class="quiet" onClick={() => (shared.value = null)}>
          done
        </button>
      </header>
      {rows.length === 0 && <p class="empty">{none}</p>}
      <ul class="shared-list">
        {rows.map((row) => {
          const title = "title" in row ? row.title : row.name;
          return (
            <li key={row.id}>
              <button
                type="button"
                class="gloss-title"
                aria-expanded={id === row.id}
                onClick={() => openShared(kind, id === row.id ? null : row.id)}
              >
                {title}
              </button>{" "}
              {"is" in row && id !== row.id && <span class="meta">{row.is}</span>}
              {id === row.id && <Form id={row.id} />}
            </li>
          );
        })}
      </ul>
      <form
        class="row"
        onSubmit={(event) => {
          event.preventDefault();
          void make();
        }}
      >
        <input
          aria-label={another}
          placeholder={kind === "standings" ? "the gait throughout" : "its name"}
          size={26}
          value={name.value}
          onInput={(event) => (name.value = event.currentTarget.value)}
        />
        <button type="submit">{another}</button>
      </form>
    </>
  );
}

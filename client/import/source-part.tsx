/** client/import/source-part.tsx - where the text comes from: a file, or words pasted with their references. */
import { busy, type Format, file, format, lookAt, pasted, preview, refused } from "./import-state.ts";

const EXAMPLE = "7.1\nThe words of the first passage.\n\n7.2\nThe words of the second.";

export function SourcePart() {
  const ready = (file.value !== null || pasted.value.trim() !== "") && busy.value === null;
  const take = (next: File | null) => {
    file.value = next;
    preview.value = null;
    refused.value = null;
  };
  return (
    <form
      class="source"
      onSubmit={(event) => {
        event.preventDefault();
        if (ready) void lookAt();
      }}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        const dropped = event.dataTransfer?.files[0];
        if (dropped) take(dropped);
      }}
    >
      <div class="row">
        {file.value === null ? (
          <label class="file">
            <span>A file: TEI, plain text or Markdown</span>
            <input
              type="file"
              accept=".xml,.tei,.txt,.text,.md,.markdown,text/*,application/xml"
              onChange={(event) => take(event.currentTarget.files?.[0] ?? null)}
            />
          </label>
        ) : (
          <>
            <span class="said">{file.value.name}</span>
            <button type="button" class="quiet" onClick={() => take(null)}>
              choose another
            </button>
          </>
        )}
      </div>
      {file.value === null && (
        <>
          <label class="field">
            <span>Or paste the text, each reference on a line of its own or at the head of its paragraph</span>
            <textarea
              class="said"
              rows={8}
              aria-describedby="references-read"
              placeholder={EXAMPLE}
              value={pasted.value}
              onInput={(event) => {
                pasted.value = event.currentTarget.value;
                preview.value = null;
              }}
            />
          </label>
          <p class="meta" id="references-read">
            These forms of reference are read: “7.13”, “[7.13]”, “§&nbsp;12”, “f.&nbsp;12v, ll.&nbsp;3–9”,
            “p.&nbsp;212”. Paragraphs may be numbered instead: “782.&nbsp;…”.
          </p>
        </>
      )}
      <div class="row">
        <label class="row">
          <span>read as</span>
          <select
            value={format.value}
            onChange={(event) => {
              format.value = event.currentTarget.value as Format;
              preview.value = null;
            }}
          >
            <option value="">what it looks like</option>
            <option value="tei">TEI</option>
            <option value="plain">plain text</option>
            <option value="markdown">Markdown</option>
          </select>
        </label>
        <button type="submit" class={preview.value ? "" : "chief"} disabled={!ready}>
          {preview.value ? "Look at it again" : "Look at it"}
        </button>
      </div>
    </form>
  );
}

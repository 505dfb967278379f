/** client/print/preview.tsx - the paper as it stands now, beside the choices. The one before stays until the new one is
 *  there, so that nothing flickers while one chooses. */
import { useSignal } from "@preact/signals";
import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";
import type { Refused } from "../state/api.ts";

/** Milliseconds that choices rest before the paper is asked for. */
const REST = 120;

/** `frame` is given the frame that is shown, to print it. */
export function Preview({
  address,
  title,
  frame,
}: {
  address: string;
  title: string;
  frame: RefObject<HTMLIFrameElement | null>;
}) {
  const shown = useSignal<string | null>(null);
  const coming = useSignal<string | null>(null);
  const refused = useSignal<Refused | null>(null);

  useEffect(() => {
    const stop = new AbortController();
    const timer = setTimeout(async () => {
      // Asked for first, so that a refusal is told in words; the frame then has the page from what the browser keeps.
      const answer = await fetch(address, { signal: stop.signal }).catch(() => null);
      if (stop.signal.aborted) return;
      if (answer === null) {
        refused.value = { code: "server_away", sentence: "The server does not answer. See whether it still runs." };
      } else if (answer.ok) {
        refused.value = null;
        coming.value = address;
      } else refused.value = ((await answer.json()) as { error: Refused }).error;
    }, REST);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [address]);

  const loaded = (loadedAddress: string) => {
    if (coming.value !== loadedAddress) return;
    shown.value = loadedAddress;
    coming.value = null;
  };
  const frames = [...new Set([shown.value, coming.value])].filter((one) => one !== null);
  return (
    <div class="paper-view" aria-busy={shown.value !== address && refused.value === null}>
      {refused.value && (
        <div class="notice" role="alert">
          <p>{refused.value.sentence}</p>
          {refused.value.issues && refused.value.issues.length > 1 && (
            <ul>
              {refused.value.issues.map(({ where, sentence }) => (
                <li key={`${where} ${sentence}`}>{sentence}</li>
              ))}
            </ul>
          )}
        </div>
      )}
      {frames.length === 0 && refused.value === null && <p class="meta">Setting the paper …</p>}
      {frames.map((one) => (
        <iframe
          key={one}
          ref={one === shown.value ? frame : null}
          class={one === shown.value ? "paper" : "paper coming"}
          title={one === shown.value ? title : "The paper that is being set"}
          aria-hidden={one !== shown.value}
          src={one}
          onLoad={() => loaded(one)}
        />
      ))}
    </div>
  );
}

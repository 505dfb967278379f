/** client/decide/share-line.tsx - the share of a reading when nothing is picked, as a number on a thin line: for the margin in
 *  Read. */
import { plainShares } from "./alarms.ts";
import { shareWords, wholeOf } from "./count-words.ts";

/** Nothing while it is not counted. */
export function ShareLine({ crux, reading }: { crux: string; reading: string }) {
  const share = plainShares.value.get(reading);
  if (share === undefined || share.verdict === "ruled out") return null;
  const whole = wholeOf([...plainShares.value.values()].filter((other) => other.crux === crux));
  const words = shareWords(share, whole);
  if (words === "") return null;
  const verdict = share.verdict === "possible" ? "" : `, ${share.verdict}`;
  return (
    <span class="share-line">
      {words} ways that hold{verdict}
      <span class="share-bar" style={{ width: `${(share.share ?? 0) * 100}%` }} />
    </span>
  );
}

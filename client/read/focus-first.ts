/** client/read/focus-first.ts - for the ref of a small form that appears: its first field takes the focus. */
export function focusFirst(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>("input, select, textarea")?.focus();
}

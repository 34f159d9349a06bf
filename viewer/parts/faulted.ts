/** Says at a field, or no more, what is wrong with it. */
export function faulted(text: string | undefined, row: HTMLElement, fault: HTMLElement, input: HTMLElement): void {
  fault.textContent = text ?? '';
  row.classList.toggle('faulty', text !== undefined);
  if (text === undefined) input.removeAttribute('aria-invalid'); else input.setAttribute('aria-invalid', 'true');
}

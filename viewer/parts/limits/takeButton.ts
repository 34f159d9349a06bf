import { button } from '../dom.ts';

export interface TakeButton { readonly button: HTMLButtonElement; readonly show: (taken: boolean, open: boolean) => void }

/** Takes values into the sheet. It keeps the focus when it can no more be pressed. @param about what is read out with it */
export function takeButton(words: string, about: string, take: () => void): TakeButton {
  const press = button(words, () => { if (press.getAttribute('aria-disabled') !== 'true') take(); }, { class: 'take-it' });
  return {
    button: press,
    show: (taken, open) => {
      const said = taken ? 'Taken' : words;
      if (press.textContent !== said) press.textContent = said;
      press.setAttribute('aria-label', `${said}, ${about}`);
      press.setAttribute('aria-disabled', String(taken || !open));
    },
  };
}

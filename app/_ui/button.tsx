import Link from 'next/link';
import type { ButtonHTMLAttributes, ComponentProps } from 'react';
import styles from './button.module.css';

/** `main`: the one thing to do here. `stop`: takes something away. `quiet`: beside other things. */
export type ButtonLook = 'plain' | 'main' | 'stop' | 'quiet';

function namesOf(look: ButtonLook, more: string | undefined): string {
  return [styles.button, look === 'plain' ? undefined : styles[look], more].filter(Boolean).join(' ');
}

interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  readonly look?: ButtonLook;
}

/** A button; `type` is `button` unless said otherwise. */
export function Button({ look = 'plain', className, type = 'button', ...rest }: ButtonProps) {
  return <button {...rest} type={type} className={namesOf(look, className)} />;
}

interface LinkButtonProps extends ComponentProps<typeof Link> {
  readonly look?: ButtonLook;
}

/** A link that looks like a button: it goes somewhere and changes nothing. */
export function LinkButton({ look = 'plain', className, ...rest }: LinkButtonProps) {
  return <Link {...rest} className={namesOf(look, className)} />;
}

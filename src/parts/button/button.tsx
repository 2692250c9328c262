/**
 * <Button onClick={…}>Save</Button>               a plain control with a hairline
 * <Button kind="main" size="stand">Begin</Button>  the one thing to do on a screen; 64 px high
 * <Button kind="quiet">Undo</Button>               looks like a link, for what is rarely wanted
 * <ButtonLink href={hrefOf('play')} kind="main">   the same, leading to another screen
 */
import type { ComponentChildren, JSX } from 'preact';
import styles from './button.module.css';

interface Look {
  readonly kind?: 'plain' | 'main' | 'quiet';
  /** "stand": for controls that are used while playing. */
  readonly size?: 'normal' | 'stand';
  readonly children: ComponentChildren;
}

type ButtonProps = Look & Omit<JSX.IntrinsicElements['button'], 'size' | 'class'>;
type ButtonLinkProps = Look & { readonly href: string };

const classOf = ({ kind = 'plain', size = 'normal' }: Omit<Look, 'children'>): string =>
  [styles.button, styles[kind], styles[size]].join(' ');

export function Button({ kind, size, type = 'button', ...rest }: ButtonProps) {
  return <button type={type} class={classOf(look(kind, size))} {...rest} />;
}

export function ButtonLink({ kind, size, href, children }: ButtonLinkProps) {
  return (
    <a class={classOf(look(kind, size))} href={href}>
      {children}
    </a>
  );
}

const look = (kind: Look['kind'] = 'plain', size: Look['size'] = 'normal') => ({ kind, size });

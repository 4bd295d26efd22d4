'use client';

import { useSyncExternalStore } from 'react';
import { Moon, Sun, SunMoon } from 'lucide-react';
import { Button } from './button';
import { THEME_KEY } from './theme';
import styles from './shell.module.css';

type Theme = 'system' | 'light' | 'dark';

const NEXT: Record<Theme, Theme> = { system: 'light', light: 'dark', dark: 'system' };
const WORDS: Record<Theme, string> = { system: 'as this device', light: 'light', dark: 'dark' };
const SHORT: Record<Theme, string> = { system: 'Auto', light: 'Light', dark: 'Dark' };
const CHANGED = 'benchtake-theme';

function readTheme(): Theme {
  const chosen = document.documentElement.dataset['theme'];
  return chosen === 'light' || chosen === 'dark' ? chosen : 'system';
}

function writeTheme(theme: Theme): void {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
  try {
    if (theme === 'system') localStorage.removeItem(THEME_KEY);
    else localStorage.setItem(THEME_KEY, theme);
  } catch {
    // Without storage the choice lasts as long as the page.
  }
  window.dispatchEvent(new Event(CHANGED));
}

function subscribe(onChange: () => void): () => void {
  window.addEventListener(CHANGED, onChange);
  return () => window.removeEventListener(CHANGED, onChange);
}

/** Goes round: as the device, light, dark. */
export function ThemeToggle() {
  const theme = useSyncExternalStore<Theme>(subscribe, readTheme, () => 'system');
  const Icon = theme === 'system' ? SunMoon : theme === 'light' ? Sun : Moon;
  return (
    <Button look="quiet" onClick={() => writeTheme(NEXT[theme])} title={`Colours: ${WORDS[theme]}`}>
      <Icon size={20} aria-hidden />
      <span className={styles.themeWord}>{SHORT[theme]}</span>
      <span className="visually-hidden"> colours. Change to {WORDS[NEXT[theme]]}.</span>
    </Button>
  );
}

/** Where the browser keeps the chosen theme. */
export const THEME_KEY = 'benchtake.theme';

/** Runs in the head before anything is painted, so that a chosen theme never flashes. */
export const THEME_SCRIPT = `try{var t=localStorage.getItem('${THEME_KEY}');if(t==='light'||t==='dark')document.documentElement.dataset.theme=t}catch(e){}`;

import './ui/tokens.css';
import './ui/base.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { firstWords } from './i18n/index.svelte';
import { keepPages } from './offline/worker.svelte';
import { applyTheme } from './shell/settings.svelte';

const target = document.getElementById('app');
if (!target) throw new Error('index.html has no #app');
// Before anything is drawn, so that ink and paper belong together from the first frame.
applyTheme(matchMedia('(prefers-color-scheme: dark)'));
await firstWords();
mount(App, { target });
if (import.meta.env.PROD) keepPages();

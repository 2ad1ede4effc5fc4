import './ui/tokens.css';
import './ui/base.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { keepPages } from './offline/worker.svelte';

const target = document.getElementById('app');
if (!target) throw new Error('index.html has no #app');
mount(App, { target });
if (import.meta.env.PROD) keepPages();

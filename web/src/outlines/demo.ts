import { mount } from 'svelte';
import '../ui/tokens.css';
import '../ui/base.css';
import OutlinesDemo from './OutlinesDemo.svelte';

const theme = new URLSearchParams(location.search).get('theme');
if (theme) document.documentElement.dataset['theme'] = theme;
const target = document.getElementById('outlines');
if (!target) throw new Error('no place for the demonstration');
mount(OutlinesDemo, { target });

import { mount } from 'svelte';
import '../ui/tokens.css';
import '../ui/base.css';
import StrandDemo from './StrandDemo.svelte';

const query = new URLSearchParams(location.search);
const theme = query.get('theme');
if (theme) document.documentElement.dataset['theme'] = theme;
const target = document.getElementById('strand');
if (!target) throw new Error('no place for the demonstration');
mount(StrandDemo, { target, props: { plain: query.has('plain') } });

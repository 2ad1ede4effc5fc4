export { default as Diary } from './Diary.svelte';
export { default as Home } from './Home.svelte';
export { default as NewVisit } from './NewVisit.svelte';

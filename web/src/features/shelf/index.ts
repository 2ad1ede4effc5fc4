export { default as OneShelf } from './OneShelf.svelte';
export { default as Shelves } from './Shelves.svelte';
export { typedNumber } from './book.svelte';

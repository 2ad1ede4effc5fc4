export { default as OneShelf } from './OneShelf.svelte';
export { default as Shelves } from './Shelves.svelte';
export { default as OtherShelf } from './OtherShelf.svelte';
export { typedNumber } from './book.svelte';

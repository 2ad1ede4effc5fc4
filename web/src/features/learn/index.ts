export { default as PlanFirst } from './PlanFirst.svelte';

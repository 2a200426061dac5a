export { words } from './en';

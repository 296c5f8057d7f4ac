export { type EditorTools, serveEditor } from './serve-editor.ts';

/** One file of everything behind a click: the pieces are small and belong together. */
export { ExampleList } from './controls/ExampleList.tsx';
export { KeyParts } from './controls/KeyParts.tsx';
export { ChartGuide } from './field/ChartGuide.tsx';
export { AllSettings } from './settings/AllSettings.tsx';
export { KeyTables } from './settings/KeyTables.tsx';

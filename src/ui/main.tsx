import './styles/fonts.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/type.css';
import './styles/controls.css';
import './styles/field.css';
import './styles/lane.css';
import './styles/neck.css';
import './styles/sheet.css';
import './styles/narrow.css';
import './styles/low.css';
import './styles/foot.css';
import './styles/panel.css';
import './styles/print.css';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { fetchAhead } from './behind.tsx';
import { listenForKeys } from './commands/index.ts';
import { openStudyStore, pageOf, StudyStoreContext } from './store/index.ts';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no element with the id root');
const store = openStudyStore(pageOf(window));
listenForKeys(window, store);
createRoot(root).render(
  <StudyStoreContext value={store}>
    <App />
  </StudyStoreContext>,
);
fetchAhead(window);

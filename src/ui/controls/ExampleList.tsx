import { EXAMPLES } from '#lesson';
import { useIntents } from '../store/index.ts';

/** The examples; picking one puts it on the neck and closes the list. */
export function ExampleList({ close }: { readonly close: () => void }) {
  const { loadExample } = useIntents();
  return (
    <ul className="examples">
      {EXAMPLES.map(({ title, about }, i) => (
        <li key={title}>
          <button
            type="button"
            onClick={() => {
              loadExample(i);
              close();
            }}
          >
            <b>{title}</b>
            <span>{about}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

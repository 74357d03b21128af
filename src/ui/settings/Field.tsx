import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { type FieldName, fieldError, useStudy } from '../store/index.ts';

interface FieldProps {
  readonly name: FieldName;
  readonly label: string;
  /** The value in force; what is typed goes on standing in the field when it is refused. */
  readonly value: string;
  readonly onCommit: (text: string) => void;
  readonly unit?: string;
  readonly type?: 'text' | 'number';
  readonly min?: number;
  readonly max?: number;
  readonly wide?: boolean;
  readonly children?: ReactNode;
}

/** What is typed until it is taken over: on Enter, on leaving the field, on a step of a number. */
function useDraft(value: string, onCommit: (text: string) => void) {
  const [draft, setDraft] = useState(value);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => setDraft(value), [value]);
  useEffect(() => {
    const element = input.current;
    if (element === null) return undefined;
    const commit = () => onCommit(element.value);
    element.addEventListener('change', commit);
    return () => element.removeEventListener('change', commit);
  }, [onCommit]);
  return { draft, setDraft, input };
}

/** A field whose value can be refused: the reason stands under it, the last good value stays in force. */
export function Field(props: FieldProps) {
  const id = useId();
  const { draft, setDraft, input } = useDraft(props.value, props.onCommit);
  const error = useStudy((state) => fieldError(state, props.name));
  return (
    <div className="setting">
      <label htmlFor={id}>{props.label}</label>
      <span className="setting-value">
        <input
          ref={input}
          id={id}
          className={props.wide === true ? 'wide' : undefined}
          type={props.type ?? 'text'}
          min={props.min}
          max={props.max}
          value={draft}
          autoComplete="off"
          spellCheck={false}
          aria-invalid={error !== undefined}
          aria-describedby={error === undefined ? undefined : `${id}-error`}
          onChange={({ currentTarget }) => setDraft(currentTarget.value)}
        />
        {props.unit !== undefined && <span className="unit">{props.unit}</span>}
        {props.children}
      </span>
      {error !== undefined && (
        <p className="field-error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </div>
  );
}

import {
  type KeyboardEvent,
  type ReactNode,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { ok, type Result } from '#theory';
import { type FieldName, fieldError, fieldNoticeId, useIntents, useStudy } from '../store/index.ts';
import { readNumber, stepped } from './number.ts';

interface FieldProps<T> {
  readonly name: FieldName;
  readonly label: string;
  /** The value in force; what is typed goes on standing in the field when it is refused. */
  readonly value: string;
  /** What is typed as a value, or in words why it is none. */
  readonly read: (text: string) => Result<T, string>;
  readonly onCommit: (value: T) => void;
  readonly unit?: string;
  /** What an empty field means. */
  readonly placeholder?: string;
  readonly inputMode?: 'numeric' | 'decimal';
  /** Arrow up and down step through whole numbers in this range. */
  readonly range?: Range | undefined;
  readonly wide?: boolean;
  /** Left with something refused in it, the field shows the value in force again. */
  readonly restores?: boolean;
  readonly children?: ReactNode;
}

interface Range {
  readonly min: number;
  readonly max: number;
}

/** What is typed until it is taken over: on Enter, on leaving the field, on a step of a number. */
function useDraft<T>({ value, read, onCommit }: FieldProps<T>) {
  const [draft, setDraft] = useState(value);
  const [unread, setUnread] = useState<string>();
  const input = useRef<HTMLInputElement>(null);
  const commit = useRef((_text: string): void => undefined);
  useLayoutEffect(() => {
    commit.current = (text) => {
      const result = read(text);
      setUnread(result.ok ? undefined : result.error);
      if (result.ok) onCommit(result.value);
    };
  });
  useEffect(() => {
    setDraft(value);
    setUnread(undefined);
  }, [value]);
  useEffect(() => {
    const element = input.current;
    const taken = () => commit.current(element?.value ?? '');
    element?.addEventListener('change', taken);
    return () => element?.removeEventListener('change', taken);
  }, []);
  const forget = (): void => setUnread(undefined);
  return { draft, setDraft, unread, forget, input, commit: (text: string) => commit.current(text) };
}

type Typed = Pick<ReturnType<typeof useDraft>, 'draft' | 'setDraft' | 'unread' | 'forget'>;

/** Milliseconds for which a refusal is read after its field has been left. */
const READ = 8000;

const STEPS: Readonly<Record<string, 1 | -1>> = { ArrowUp: 1, ArrowDown: -1 };

function stepOf(event: KeyboardEvent, draft: string, range: Range | undefined): string | undefined {
  const by = STEPS[event.key];
  return by === undefined || range === undefined ? undefined : stepped(draft, by, range);
}

/** What is refused, how it is let go of, and how the field shows what is in force again. */
function useRefusal<T>({ name, value, restores = false }: FieldProps<T>, typed: Typed) {
  const { draft, setDraft, unread, forget } = typed;
  const refused = useStudy((state) => fieldError(state, name));
  const { dismissNotice } = useIntents();
  const reading = useRef<ReturnType<typeof setTimeout>>(undefined);
  const error = unread ?? refused;
  const dismiss = (): void => {
    clearTimeout(reading.current);
    forget();
    dismissNotice(fieldNoticeId(name));
  };
  /** Says whether there was anything to put back. */
  const restore = (): boolean => {
    if (draft === value || !restores) return false;
    setDraft(value);
    return true;
  };
  return {
    error,
    isRefused: error !== undefined && draft !== value,
    typedAnew: () => error !== undefined && dismiss(),
    left: () => {
      if (restore()) reading.current = setTimeout(dismiss, READ);
    },
    /** Says whether the key was for this. */
    escaped: (key: string): boolean => {
      const done = key === 'Escape' && restore();
      if (done) dismiss();
      return done;
    },
  };
}

/** A field whose value can be refused: the reason stands under it, the last good value stays in force. */
export function Field<T>(props: FieldProps<T>) {
  const id = useId();
  const typed = useDraft(props);
  const { draft, setDraft, input, commit } = typed;
  const { error, isRefused, typedAnew, left, escaped } = useRefusal(props, typed);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (escaped(event.key)) event.preventDefault();
    const next = stepOf(event, draft, props.range);
    if (next === undefined) return;
    event.preventDefault();
    setDraft(next);
    commit(next);
  };
  return (
    <div className="setting">
      <label htmlFor={id}>{props.label}</label>
      <span className="setting-value">
        <input
          ref={input}
          id={id}
          className={props.wide === true ? 'wide' : undefined}
          type="text"
          inputMode={props.inputMode}
          placeholder={props.placeholder}
          value={draft}
          autoComplete="off"
          spellCheck={false}
          aria-invalid={isRefused}
          aria-describedby={error === undefined ? undefined : `${id}-error`}
          onKeyDown={onKeyDown}
          onBlur={left}
          onChange={({ currentTarget }) => {
            setDraft(currentTarget.value);
            typedAnew();
          }}
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

type TextProps = Omit<FieldProps<string>, 'read'>;

/** A field whose text is read where it is kept. */
export function TextField(props: TextProps) {
  return <Field {...props} read={ok} />;
}

interface NumberProps extends Omit<FieldProps<number>, 'read' | 'value' | 'range'> {
  readonly value: number;
  /** Whole numbers in a range; absent = any number. */
  readonly whole?: Range;
  readonly expected: string;
}

/** A field for a number. */
export function NumberField({ value, whole, expected, ...props }: NumberProps) {
  return (
    <Field
      {...props}
      value={String(value)}
      inputMode={whole === undefined ? 'decimal' : 'numeric'}
      range={whole}
      read={(text) => readNumber(text, expected)}
    />
  );
}

import {
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
  useCallback,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { ok, type Result } from '#theory';
import {
  type FieldName,
  fieldError,
  fieldNoticeId,
  useIntents,
  useStudy,
  useStudyStore,
} from '../store/index.ts';
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
  /**
   * A field among the keys of a player, who wants to be back at them: Enter that is taken and Escape
   * leave it, and left with something refused in it, it shows the value in force again.
   */
  readonly restores?: boolean;
  readonly children?: ReactNode;
}

interface Range {
  readonly min: number;
  readonly max: number;
}

/** What is typed until it is taken over: on Enter, on leaving the field, on a step of a number. */
function useDraft<T>({ name, value, read, onCommit }: FieldProps<T>) {
  const [draft, setDraft] = useState(value);
  const [unread, setUnread] = useState<string>();
  const input = useRef<HTMLInputElement>(null);
  const { cell } = useStudyStore();
  const commit = useRef((_text: string): boolean => false);
  useLayoutEffect(() => {
    commit.current = (text) => {
      const result = read(text);
      setUnread(result.ok ? undefined : result.error);
      if (result.ok) onCommit(result.value);
      return result.ok && fieldError(cell.get(), name) === undefined;
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
  const forget = useCallback((): void => setUnread(undefined), []);
  /** Takes over what is typed; says whether it was taken. */
  const take = (text: string): boolean => commit.current(text);
  return { draft, setDraft, unread, forget, input, commit: take };
}

type Typed = Pick<ReturnType<typeof useDraft>, 'draft' | 'setDraft' | 'unread' | 'forget'>;

/** Milliseconds for which a refusal is read after its field has been left. */
const READ = 8000;

const STEPS: Readonly<Record<string, 1 | -1>> = { ArrowUp: 1, ArrowDown: -1 };

function stepOf(key: string, draft: string, range: Range | undefined): string | undefined {
  const by = STEPS[key];
  return by === undefined || range === undefined ? undefined : stepped(draft, by, range);
}

/** What was said last at a field of this kind, and how that is taken away: two would stand in one place. */
let said = { name: '', hush: (): void => undefined };

/** What is refused, how it is let go of, and how the field shows what is in force again. */
function useRefusal<T>({ name, value, restores = false }: FieldProps<T>, typed: Typed) {
  const { draft, setDraft, unread, forget } = typed;
  const refused = useStudy((state) => fieldError(state, name));
  const { dismissNotice } = useIntents();
  const reading = useRef<ReturnType<typeof setTimeout>>(undefined);
  const error = unread ?? refused;
  const dismiss = useCallback((): void => {
    clearTimeout(reading.current);
    forget();
    dismissNotice(fieldNoticeId(name));
  }, [forget, dismissNotice, name]);
  useEffect(() => {
    if (error === undefined || !restores) return;
    if (said.name !== name) said.hush();
    said = { name, hush: dismiss };
  }, [error, restores, dismiss, name]);
  /** Says whether there was anything to put back. */
  const restore = (): boolean => {
    if (draft === value || !restores) return false;
    setDraft(value);
    return true;
  };
  return {
    error,
    isRefused: error !== undefined && draft !== value,
    typedAnew: () => {
      clearTimeout(reading.current);
      if (error !== undefined) dismiss();
    },
    left: () => {
      if (restore()) reading.current = setTimeout(dismiss, READ);
    },
    dropped: () => {
      restore();
      dismiss();
    },
  };
}

/** Leaves a field, but not before what stands in it has been drawn: leaving, it says that once more. */
function useLeaving(input: RefObject<HTMLElement | null>): () => void {
  const [times, setTimes] = useState(0);
  useEffect(() => {
    if (times > 0) input.current?.blur();
  }, [times, input]);
  return () => setTimes((before) => before + 1);
}

/** A field whose value can be refused: the reason stands under it, the last good value stays in force. */
export function Field<T>(props: FieldProps<T>) {
  const id = useId();
  const typed = useDraft(props);
  const { draft, setDraft, input, commit } = typed;
  const { error, isRefused, typedAnew, left, dropped } = useRefusal(props, typed);
  const steps = (key: string): boolean => {
    const next = stepOf(key, draft, props.range);
    if (next === undefined) return false;
    setDraft(next);
    commit(next);
    return true;
  };
  const leave = useLeaving(input);
  /** Enter that is taken and Escape; says whether the key was one of these. */
  const leaves = (key: string): boolean => {
    if (key === 'Escape') dropped();
    const over = key === 'Escape' || (key === 'Enter' && commit(draft));
    if (over) leave();
    return over;
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const { key } = event;
    if (steps(key) || (props.restores === true && leaves(key))) event.preventDefault();
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

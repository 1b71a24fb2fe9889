import { INTAKE_ANSWERS, INTAKE_WORDS, type IntakeAnswers, judgeIntake } from '@sheafbook/keeping';
import { Link } from '@tanstack/react-router';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { keepsStore } from '../place/queries.ts';
import { Weighing } from './weighing.tsx';
import { useIntakeText } from './words.ts';

type Question = keyof IntakeAnswers;
const QUESTIONS = Object.keys(INTAKE_ANSWERS) as Question[];
type Answered = { readonly [Asked in Question]?: string };
const START: { answers: Answered } = { answers: {} };

/** A short interview of whoever gives something, one question at a time, and then the scale. */
export function InterviewPage() {
  const t = useText();
  const words = useIntakeText();
  const house = useHouse();
  const { storehouse } = house;
  const { draft, change, reset } = useDraft(`intake.${storehouse}`, START);
  useTitle(words.begin);
  if (house.household === null && !keepsStore(house)) return <h1>{t.noHousehold}</h1>;
  const { answers } = draft;
  const open = QUESTIONS.find((question) => answers[question] === undefined);
  const back = () => {
    const last = QUESTIONS.filter((question) => answers[question] !== undefined).at(-1);
    change({ answers: Object.fromEntries(Object.entries(answers).filter(([asked]) => asked !== last)) });
  };
  return (
    <>
      <Link className="who" to="/s/$storehouse/intakes" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <h1>{words.interview}</h1>
      {open ? (
        <Asked
          key={open}
          question={open}
          onAnswer={(answer) => change({ answers: { ...answers, [open]: answer } })}
        />
      ) : (
        <Judged answers={answers as IntakeAnswers} onDone={() => reset(START)} />
      )}
      {Object.keys(answers).length === 0 ? null : (
        <button type="button" className="btn quiet" onClick={back}>
          {words.back}
        </button>
      )}
    </>
  );
}

function Asked({ question, onAnswer }: { question: Question; onAnswer: (answer: string) => void }) {
  const words = useIntakeText();
  const { ask, answers } = words.questions[question];
  const at = QUESTIONS.indexOf(question) + 1;
  return (
    <NextStep title={ask}>
      <p className="soft">{words.step(at, QUESTIONS.length)}</p>
      <div className="stack">
        {INTAKE_ANSWERS[question].map((answer) => (
          <button key={answer} type="button" className="btn" onClick={() => onAnswer(answer)}>
            {answers[answer as keyof typeof answers]}
          </button>
        ))}
      </div>
      <p className="soft">{words.unknownIsFine}</p>
    </NextStep>
  );
}

const LOOKS = { refused: 'said', 'unknown-history': 'said watch-said', known: 'said well-said' } as const;

/** What the answers come to, said before anything is weighed: refused, or taken in as known or with care. */
function Judged({ answers, onDone }: { answers: IntakeAnswers; onDone: () => void }) {
  const words = useIntakeText();
  const { format } = useHouse();
  const { verdict, reasons } = judgeIntake(answers);
  return (
    <>
      <section className={LOOKS[verdict]}>
        <h2>{words.verdicts[verdict]}</h2>
        <p>{words.verdictSays[verdict]}</p>
        <ul>
          {reasons.map((reason) => (
            <li key={reason}>{INTAKE_WORDS[reason][format.language]}</li>
          ))}
        </ul>
      </section>
      {verdict === 'refused' ? (
        <button type="button" className="btn" onClick={onDone}>
          {words.anew}
        </button>
      ) : (
        <Weighing answers={answers} onDone={onDone} />
      )}
    </>
  );
}
